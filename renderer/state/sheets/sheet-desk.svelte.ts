/** A sheet that is being made: what is chosen, what is drawn for it, its pages. */
import { SvelteSet } from "svelte/reactivity";
import type { CaseId } from "../../../core/cases/case-ids";
import type { Deck, DeckCase } from "../../../core/deck/deck";
import {
  type Opening,
  openingOf,
  OPENINGS,
} from "../../../core/memory/variant-opening";
import type { PaperName } from "../../../core/paper/paper-size";
import type { AnswerPlace } from "../../../core/paper/practice-sheet";
import {
  LARGEST_NUMBER,
  type Sheet,
  type SheetKind,
} from "../../../core/paper/sheet";
import type { KeptSheet } from "../../../core/paper/kept-sheet";
import {
  type CaseOnSheet,
  CODED_KINDS,
  type CodedSheet,
  sheetCode,
} from "../../../core/paper/sheet-code";
import type { TurnsTold } from "../../../core/paper/shown-case";
import { type CubePalette, cubePalette } from "../../../core/picture/palette";
import { dateWithYear } from "../../components/time-words";
import { usualPaper } from "../../platform/paper";
import { freshSeed } from "../../platform/random";
import type { SolverError } from "../../workers/solver-client";
import type { LearnerState } from "../learner.svelte";
import type { SetUpFinder } from "../practise/my-cube-stage";
import { findSetUp } from "../practise/set-up-service";
import { certificateNumbers } from "./certificate-numbers";
import { type DraftChoice, type Drafted, draftSheet } from "./sheet-draft";
import { sheetPages } from "./sheet-pages";

/** How a sheet shows colours: as the learner's cube has them, as greys with letters, or told apart with any common colour vision. */
export const SHEET_COLOURS = ["greys", "own", "any-vision"] as const;

/** One way of showing colours on a sheet. */
export type SheetColours = (typeof SHEET_COLOURS)[number];

/** How many positions a practice sheet may have: whole pages of six. */
export const QUESTION_COUNTS = [6, 12, 18, 24, 36] as const;

/** A number of its own for a new sheet. */
function freshNumber(): number {
  return 1 + (freshSeed() % LARGEST_NUMBER);
}

/** How far along the search for set-ups is. */
export interface DraftProgress {
  readonly done: number;
  readonly all: number;
}

/** What was drawn, and for which choice. */
interface Draft {
  readonly choice: DraftChoice;
  readonly drafted: readonly Drafted[];
}

function caseOnSheet({
  case: id,
  target,
  placed,
  home,
  lining,
}: DeckCase): CaseOnSheet {
  return {
    case: id,
    target,
    ...(placed === undefined ? {} : { placed }),
    ...(home === undefined ? {} : { home }),
    ...(lining === undefined ? {} : { lining }),
  };
}

/** The sheet on the desk. */
export class SheetDesk {
  readonly #deck: () => Deck;
  readonly #learner: LearnerState;
  readonly #find: SetUpFinder;
  readonly #leftOut = new SvelteSet<CaseId>();
  kind: SheetKind = $state("cases");
  paper: PaperName = $state(usualPaper());
  colours: SheetColours = $state("greys");
  told: TurnsTold = $state("both");
  answers: AnswerPlace = $state("end");
  count: number = $state(QUESTION_COUNTS[1]);
  #opening: Opening | undefined = $state();
  number: number = $state(freshNumber());
  #draft: Draft | undefined = $state.raw();
  progress: DraftProgress | undefined = $state.raw();
  /** Why a set-up was not found. */
  trouble: SolverError | undefined = $state.raw();

  // A certificate speaks of the deck: of all of it.
  #cases = $derived.by(() =>
    this.#deck().cases.filter(
      (one) => this.kind === "certificate" || !this.#leftOut.has(one.case),
    ),
  );
  #hold = $derived.by(() => this.#deck().hold ?? this.#learner.settings.hold);
  #usualOpening = $derived.by(() => this.#mostlyOpened());
  #choice: DraftChoice = $derived.by(() => ({
    kind: this.kind,
    cases: this.#cases,
    hold: this.#hold,
    number: this.number,
    count: this.count,
    opening: this.opening,
  }));
  #coded: Omit<KeptSheet, "printedAt"> | undefined = $derived.by(() => {
    const kind = CODED_KINDS.find((coded) => coded === this.kind);
    if (kind === undefined || this.#cases.length === 0) return undefined;
    const sheet: CodedSheet = {
      kind,
      cases: this.#cases.map(caseOnSheet),
      hold: this.#hold,
      number: this.number,
      count: this.count,
      opening: this.opening,
    };
    const { id: deck, name: deckName } = this.#deck();
    return { ...sheet, code: sheetCode(sheet), deck, deckName };
  });
  #palette: CubePalette = $derived.by(() => {
    const { scheme, settings } = this.#learner;
    const paints = this.colours === "own" ? settings.paints : this.colours;
    const letters =
      this.colours !== "own" || settings.letters || paints === "greys";
    return cubePalette({ scheme, theme: "print", paints, letters });
  });
  #numbers = $derived.by(() =>
    certificateNumbers(this.#learner, this.#cases, this.#hold),
  );
  #sheet: Sheet | undefined = $derived.by(() => this.#laidOut());

  constructor(
    deck: () => Deck,
    learner: LearnerState,
    find: SetUpFinder = findSetUp,
  ) {
    this.#deck = deck;
    this.#learner = learner;
    this.#find = find;
    this.told = learner.settings.notation;
  }

  /** How far most of the deck's cases are opened up by what the learner remembers. */
  #mostlyOpened(): Opening {
    const { cases } = this.#deck();
    const times = (opening: Opening) =>
      cases.filter(
        (one) =>
          openingOf(this.#learner.stateOf(one.case, this.#hold)) === opening,
      ).length;
    return OPENINGS.reduce((best, opening) =>
      times(opening) > times(best) ? opening : best,
    );
  }

  /** How far positions are opened up: as chosen, or else as what the learner remembers of the deck has it. */
  get opening(): Opening {
    return this.#opening ?? this.#usualOpening;
  }

  set opening(opening: Opening) {
    this.#opening = opening;
  }

  /** How many cases are wanted. */
  get wanted(): number {
    return this.#cases.length;
  }

  /** Whether a case of the deck is wanted on the sheet. */
  wants(id: CaseId): boolean {
    return !this.#leftOut.has(id);
  }

  /** Takes a case of the deck onto the sheet, or leaves it out. */
  want(id: CaseId, isWanted: boolean): void {
    if (isWanted) this.#leftOut.delete(id);
    else this.#leftOut.add(id);
  }

  /** Leaves all cases out, or none. */
  wantAll(isWanted: boolean): void {
    for (const one of this.#deck().cases) this.want(one.case, isWanted);
  }

  /** Takes another number: other positions, other set-ups. */
  drawAnother(): void {
    this.number = freshNumber();
  }

  /** Whether there is anything that a certificate could say. */
  get isCertifiable(): boolean {
    return this.#numbers.answers > 0;
  }

  /** The pages; undefined while set-ups are looked for, and where there is nothing to print. */
  get sheet(): Sheet | undefined {
    return this.#sheet;
  }

  /** What ticks on the sheet will belong to, once it is printed; undefined where nobody writes on it. */
  get coded(): Omit<KeptSheet, "printedAt"> | undefined {
    return this.#coded;
  }

  /** Draws what is chosen now. Returns how to stop; call it anew when `choice` changes. */
  follow(): () => void {
    const choice = this.#choice;
    const controller = new AbortController();
    void this.#drawFor(choice, controller.signal);
    return () => controller.abort();
  }

  async #drawFor(choice: DraftChoice, signal: AbortSignal): Promise<void> {
    this.trouble = undefined;
    const drawn = await draftSheet(
      choice,
      this.#find,
      signal,
      (done, all) => (this.progress = { done, all }),
    );
    if (drawn === undefined) return;
    this.progress = undefined;
    this.trouble = drawn.trouble;
    this.#draft = { choice, drafted: drawn.drafted };
  }

  #laidOut(): Sheet | undefined {
    const draft = this.#draft;
    if (draft?.choice !== this.#choice || this.#cases.length === 0)
      return undefined;
    if (this.kind === "certificate" && !this.isCertifiable) return undefined;
    const { scheme, learner, wayChoice, today } = this.#learner;
    return sheetPages({
      kind: this.kind,
      paper: this.paper,
      number: this.number,
      code: this.#coded?.code,
      told: this.told,
      answers: this.answers,
      palette: this.#palette,
      scheme,
      wayChoice,
      deck: this.#deck().name,
      hold: this.#hold,
      drafted: draft.drafted,
      learner: learner.name,
      numbers: this.#numbers,
      counted: dateWithYear(today),
    });
  }
}
