/** A case on the screen of a class: how much of it is shown, and how its cubes are brought there. */
import type { CaseId } from "../../../core/cases/case-ids";
import { shownPosition } from "../../../core/cases/known-layer";
import type { Position } from "../../../core/cases/position";
import { startOf } from "../../../core/cases/position";
import type { Turn } from "../../../core/cube/turns";
import type { Deck } from "../../../core/deck/deck";
import { setUpStart } from "../../../core/paper/set-up-start";
import {
  classSetUp,
  type CubeStart,
  cubeStarts,
} from "../../../core/solver/class-set-up";
import type { SolverError } from "../../workers/solver-client";
import { showcasePosition } from "../case-showcase";
import type { LearnerState } from "../learner.svelte";
import { taughtTurns } from "../practise/deck-way";
import type { SetUpFinder } from "../practise/my-cube-stage";
import { pictureTheme } from "../theme.svelte";
import {
  type ClassTurn,
  classTurns,
  setUpBegin,
  type ShowColours,
  showColours,
  type ShowLook,
} from "./shown-case";
import { endOfPage, type Station, stationsOf } from "./show-stations";

/** Any seed does: the same case has the same set-up every time. */
const SEED = 1;

/** What came of looking for a set-up. */
interface SetUpFound {
  readonly position: Position;
  readonly turns: readonly Turn[];
  readonly trouble: SolverError | undefined;
}

/** Whose case, and in whose order. */
export interface ShownOf {
  readonly case: CaseId;
  /** Its hold and its ways count; undefined: the learner's. */
  readonly deck: Deck | undefined;
}

/** The case that a class looks at. */
export class ShowDesk {
  readonly #of: () => ShownOf;
  readonly #learner: LearnerState;
  readonly #find: SetUpFinder;
  #found: SetUpFound | undefined = $state.raw();
  #at = $state(0);
  #chosenStart: CubeStart | undefined = $state();
  isBlank = $state(false);
  look: ShowLook = $state("any");

  readonly hold = $derived.by(
    () => this.#of().deck?.hold ?? this.#learner.settings.hold,
  );
  readonly position: Position = $derived.by(() =>
    showcasePosition(this.#of().case, this.hold),
  );
  readonly starts: readonly CubeStart[] = $derived.by(() =>
    cubeStarts(this.position.case),
  );
  /** What the class's cubes have; where the case cannot be set up from that, the least it can. */
  readonly start: CubeStart = $derived.by(
    () =>
      this.starts.find((one) => one === this.#chosenStart) ??
      this.starts[0] ??
      "solved",
  );
  readonly colours: ShowColours = $derived.by(() =>
    showColours(this.position, this.look, this.#learner, pictureTheme()),
  );
  readonly #own = $derived.by(() => classSetUp(this.position));
  readonly #searched = $derived.by(() =>
    this.#found?.position === this.position ? this.#found : undefined,
  );
  readonly #setUp: readonly Turn[] = $derived.by(
    () => this.#own ?? this.#searched?.turns ?? [],
  );
  readonly #way: readonly Turn[] = $derived.by(() => {
    const { deck } = this.#of();
    const { case: id } = this.position;
    const inDeck = deck?.cases.find((one) => one.case === id);
    return taughtTurns(this.position, {
      way: (inDeck ?? this.#learner.ownDeckCase(id))?.way,
      choice: this.#learner.wayChoice,
    });
  });
  readonly #stations: readonly Station[] = $derived.by(() =>
    stationsOf(this.#setUp.length, this.#way.length),
  );
  readonly station: Station = $derived.by(
    () => this.#stations[this.#at] ?? { kind: "case" },
  );

  constructor(of: () => ShownOf, learner: LearnerState, find: SetUpFinder) {
    this.#of = of;
    this.#learner = learner;
    this.#find = find;
  }

  /** Whether nothing is left to reveal. */
  get isAllShown(): boolean {
    return this.#at >= this.#stations.length - 1;
  }

  /** Whether nothing is revealed yet. */
  get isFresh(): boolean {
    return this.#at === 0;
  }

  /** Whether a set-up is still looked for. */
  get isSearching(): boolean {
    return this.#own === undefined && this.#searched === undefined;
  }

  /** Why there is no set-up. */
  get trouble(): SolverError | undefined {
    return this.#searched?.trouble;
  }

  /** How many turns the set-up and the way have. */
  get lengths(): { readonly setUp: number; readonly way: number } {
    return { setUp: this.#setUp.length, way: this.#way.length };
  }

  /** The turns of the station. */
  get turns(): readonly ClassTurn[] {
    const { station, position, colours } = this;
    if (station.kind === "case") return [];
    const all =
      station.kind === "set-up"
        ? classTurns(
            position,
            setUpBegin(position, this.start),
            this.#setUp,
            colours,
          )
        : classTurns(position, startOf(position), this.#way, colours);
    return all.slice(station.from, station.to);
  }

  /** Looks for a set-up where no short one is known. Returns how to stop. To be called in an effect. */
  follow(): () => void {
    const { position } = this;
    const controller = new AbortController();
    const { signal } = controller;
    if (this.#own === undefined) {
      const shown = shownPosition(position);
      void this.#find(setUpStart(shown), shown, SEED, { signal }).then(
        (found) => {
          if (signal.aborted) return;
          this.#found = found.ok
            ? { position, turns: found.value, trouble: undefined }
            : { position, turns: [], trouble: found.error };
        },
      );
    }
    return () => controller.abort();
  }

  /** Another case lies on the screen: by itself. */
  begin(): void {
    this.#at = 0;
    this.isBlank = false;
  }

  /** One step more. */
  reveal(): void {
    if (!this.isAllShown) this.#at++;
  }

  /** One step less. */
  takeBack(): void {
    if (this.#at > 0) this.#at--;
  }

  /** As many turns of the way as fit: the rest of its page, or its next page. */
  revealPage(): void {
    this.#at = endOfPage(this.#stations, this.#at);
  }

  /** The class's cubes have something else. */
  startFrom(start: CubeStart): void {
    this.#chosenStart = start;
  }
}
