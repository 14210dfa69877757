/**
 * One learner at this machine: their settings, their log, and what the log
 * says today. Everything but the log and the settings is computed.
 */
import type { CaseId } from "../../core/cases/case-ids";
import { stageOfCase } from "../../core/cases/case-table";
import { holdFor } from "../../core/cases/hold-in-stage";
import type { WayChoice } from "../../core/cases/way-for-position";
import {
  wholeCubeNaming,
  type WholeCubeNaming,
} from "../../core/cases/whole-cube-naming";
import type { Hold } from "../../core/cases/variant";
import type { Deck, DeckCase } from "../../core/deck/deck";
import { FIRST_COURSE } from "../../core/deck/starter-decks";
import type { Outcome } from "../../core/memory/grade";
import type { GradedReview } from "../../core/memory/grader";
import type { Learner } from "../../core/memory/learner";
import { dueDay } from "../../core/memory/due-day";
import { dayAfter, dayNumber, localDay } from "../../core/memory/local-day";
import type { LocalDay, Review } from "../../core/memory/review";
import {
  type Memory,
  memoryKey,
  memoryState,
  type MemoryState,
  type ScheduleSettings,
  WEIGHTS_VERSION,
} from "../../core/memory/schedule";
import type { ColourScheme } from "../../core/picture/colour-sets";
import { type CubePalette, cubePalette } from "../../core/picture/palette";
import { ok, type Result } from "../../core/result";
import { now, utcOffset } from "../platform/clock";
import { tellOtherWindows } from "../platform/other-windows";
import type { DamagedRow } from "../storage/damaged-row";
import type { TurnwiseDatabase } from "../storage/database";
import { learnerSettingsKey } from "../storage/learners";
import {
  type Acknowledgement,
  acknowledgeReview,
  readLog,
  type StoredLog,
} from "../storage/reviews";
import { sealReviews } from "../storage/sealing";
import { mergeSetting, readSetting } from "../storage/settings";
import type { StorageError } from "../storage/storage-error";
import type { DeckShelf } from "./decks.svelte";
import {
  EMPTY_LOG,
  type LearnerLog,
  learnerLog,
  outcomeAfter,
  rescheduled,
  withReview,
} from "./learner-log";
import {
  DEFAULT_SETTINGS,
  firstLayerScheme,
  type LearnerSettings,
  parseLearnerSettings,
} from "./learner-settings";
import { pictureTheme } from "./theme.svelte";

/** A learner with everything the places show of them. */
export class LearnerState {
  readonly database: TurnwiseDatabase;
  readonly #shelf: DeckShelf;
  /** The learner's id never changes; the name may. */
  learner: Learner;
  #settings: LearnerSettings = $state.raw(DEFAULT_SETTINGS);
  #log: LearnerLog = $state.raw(EMPTY_LOG);
  /** Answers of days to come, from a clock that ran ahead: they count once their day has come. */
  #ahead: readonly Review[] = $state.raw([]);
  #reviews: readonly Review[] = $derived(
    this.#ahead.length === 0
      ? this.#log.reviews
      : [...this.#log.reviews, ...this.#ahead],
  );
  #damaged: readonly DamagedRow[] = $state.raw([]);
  #today: LocalDay = $state(dayNumber(0));
  #scheme: ColourScheme = $derived(firstLayerScheme(this.#settings));
  #palette: CubePalette = $derived(
    cubePalette({
      scheme: this.#scheme,
      theme: pictureTheme(),
      paints: this.#settings.paints,
      letters: this.#settings.letters || this.#settings.paints === "greys",
    }),
  );

  constructor(
    database: TurnwiseDatabase,
    shelf: DeckShelf,
    learner: Learner,
    settings: LearnerSettings,
    log: StoredLog,
  ) {
    this.database = database;
    this.#shelf = shelf;
    this.learner = $state.raw(learner);
    this.#settings = settings;
    this.#takeLog(log);
  }

  /** What the learner has chosen, or its default. */
  get settings(): LearnerSettings {
    return this.#settings;
  }

  /** The colouring of the learner's cube with the first layer at body U. */
  get scheme(): ColourScheme {
    return this.#scheme;
  }

  /** What the names of cases depend on. */
  get naming(): WholeCubeNaming {
    return wholeCubeNaming(this.#scheme, this.#settings.hold);
  }

  /** The ways that the learner chose: what counts where a deck says nothing else. */
  get wayChoice(): WayChoice {
    return { school: this.#settings.ways, hand: this.#settings.hand };
  }

  /** What the learner's cube is drawn with, on the window's ground. */
  get palette(): CubePalette {
    return this.#palette;
  }

  /** The whole log, oldest first. */
  get reviews(): readonly Review[] {
    return this.#reviews;
  }

  /** The whole log with what every answer was worth, oldest first. */
  get answers(): readonly GradedReview[] {
    return this.#log.answers;
  }

  /** What an answer just given is worth, before it is stored. */
  outcomeOf(review: Review): Outcome {
    return outcomeAfter(this.#log, review);
  }

  /** What the learner took so far for what an answer just given measured. Units: milliseconds; undefined: not known. */
  usualFor({
    case: id,
    answerWay,
    thinking,
  }: Pick<Review, "case" | "answerWay" | "thinking">): number | undefined {
    const { grader } = this.#log;
    const usual = grader.usualTime(this.learner.id, id, answerWay);
    return usual?.isThinking === (thinking !== undefined)
      ? usual.time
      : undefined;
  }

  /** Every memory the log makes, by `memoryKey`. */
  get memories(): ReadonlyMap<string, Memory> {
    return this.#log.memories;
  }

  /** Stored answers that could not be read. They are kept as they are. */
  get damaged(): readonly DamagedRow[] {
    return this.#damaged;
  }

  /** The learner's day. */
  get today(): LocalDay {
    return this.#today;
  }

  /** The decks that are practised, in the learner's order. */
  get decks(): readonly Deck[] {
    const chosen = this.#settings.decks;
    if (chosen === undefined) return FIRST_COURSE;
    return chosen.flatMap((id) => this.#shelf.find(id) ?? []);
  }

  /** A case as a deck wants it; undefined where the deck is gone or no longer has it. */
  deckCase(asked: {
    readonly deck: string;
    readonly case: CaseId;
  }): DeckCase | undefined {
    const deck = this.#shelf.find(asked.deck);
    return deck?.cases.find((entry) => entry.case === asked.case);
  }

  /** A case as the first of the learner's decks wants it that has it. */
  ownDeckCase(id: CaseId): DeckCase | undefined {
    const entries = this.decks.flatMap(({ cases }) => cases);
    return entries.find((entry) => entry.case === id);
  }

  /** Only the first layer is held as somebody chooses. */
  #memoryKey(id: CaseId, hold: Hold): string {
    return memoryKey(this.learner.id, id, holdFor(stageOfCase(id), hold));
  }

  /** The memory of a case under a hold, by default the learner's. */
  memoryOf(id: CaseId, hold: Hold = this.#settings.hold): Memory | undefined {
    return this.#log.memories.get(this.#memoryKey(id, hold));
  }

  /** The first deck of the learner's that asks a case in a hold. */
  #deckOf(id: CaseId, hold: Hold): Deck | undefined {
    const stage = stageOfCase(id);
    return this.decks.find(
      (one) =>
        holdFor(stage, one.hold ?? this.#settings.hold) ===
          holdFor(stage, hold) && one.cases.some((entry) => entry.case === id),
    );
  }

  /** When a case is due by its memory, or sooner where its deck wants that; undefined: not met. */
  dueOf(id: CaseId, hold: Hold = this.#settings.hold): LocalDay | undefined {
    const memory = this.memoryOf(id, hold);
    return memory === undefined
      ? undefined
      : dueDay(memory, this.#deckOf(id, hold)?.ceiling);
  }

  /** When a day's plan asks for what is known; undefined: never, as no deck of the learner's has it. */
  comesBackOn(memory: Memory): LocalDay | undefined {
    const deck = this.#deckOf(memory.case, memory.hold);
    return deck === undefined ? undefined : dueDay(memory, deck.ceiling);
  }

  /** That memory in a word. */
  stateOf(id: CaseId, hold: Hold = this.#settings.hold): MemoryState {
    return memoryState(this.memoryOf(id, hold), this.#today, this.schedule);
  }

  /** The cases that the learner keeps, each in the hold that is chosen. */
  get keptCases(): readonly CaseId[] {
    return [...this.#log.memories.values()]
      .filter(
        ({ learner, case: id, hold }) =>
          learner === this.learner.id &&
          hold === holdFor(stageOfCase(id), this.#settings.hold) &&
          this.stateOf(id) === "kept",
      )
      .map((memory) => memory.case);
  }

  /** The learner's answers to a case with what they were worth, oldest first. */
  answersTo(
    id: CaseId,
    hold: Hold = this.#settings.hold,
  ): readonly GradedReview[] {
    return this.#log.byMemory.get(this.#memoryKey(id, hold)) ?? [];
  }

  /** What of the settings the schedule goes by. */
  get schedule(): ScheduleSettings {
    const { level, fit } = this.#settings;
    const weights = fit?.weights;
    return weights === undefined ? { level } : { level, weights };
  }

  /** The number of the weights that the schedule goes by; stored with every review. */
  get weightsVersion(): number {
    return this.#settings.fit?.weightsVersion ?? WEIGHTS_VERSION;
  }

  /** Looks at the clock again: a window may stay open over night. */
  refreshToday(): void {
    const at = now();
    this.#today = localDay(at, utcOffset(at), this.#settings.turnsOverAt);
  }

  /** Changes settings and stores them; what could not be stored is undone. */
  async changeSettings(
    patch: Partial<LearnerSettings>,
  ): Promise<Result<void, StorageError>> {
    const before = this.#settings;
    const after = { ...before, ...patch };
    this.#takeSettings(after);
    const saved = await mergeSetting(
      this.database,
      learnerSettingsKey(this.learner.id),
      $state.snapshot(patch),
    );
    if (!saved.ok && this.#settings === after) this.#takeSettings(before);
    this.#tellOtherWindows();
    return saved;
  }

  /**
   * Stores an answer with the round's advance, then takes it into the log.
   * Resolves with the review's id once it is acknowledged.
   */
  async acknowledge(
    acknowledgement: Acknowledgement,
  ): Promise<Result<string, StorageError>> {
    const stored = await acknowledgeReview(this.database, acknowledgement);
    if (stored.ok) {
      this.#log = withReview(this.#log, acknowledgement.review, this.schedule);
      this.refreshToday();
      this.#tellOtherWindows();
    }
    return stored;
  }

  /** Reads settings and log again, after another window has written to them. */
  async reload(): Promise<Result<void, StorageError>> {
    const settings = await readSetting(
      this.database,
      learnerSettingsKey(this.learner.id),
    );
    if (!settings.ok) return settings;
    this.#takeSettings(parseLearnerSettings(settings.value));
    const log = await readLog(this.database, this.learner.id);
    if (!log.ok) return log;
    this.#takeLog(log.value);
    return ok(undefined);
  }

  #takeSettings(settings: LearnerSettings): void {
    const before = this.#settings;
    this.#settings = settings;
    if (
      settings.level !== before.level ||
      settings.fit?.weightsVersion !== before.fit?.weightsVersion
    )
      this.#log = rescheduled(this.#log, this.schedule);
    this.refreshToday();
  }

  #tellOtherWindows(): void {
    tellOtherWindows({ changed: "learner", id: this.learner.id });
  }

  #takeLog(log: StoredLog): void {
    this.#damaged = log.damaged;
    this.refreshToday();
    // Where the day turns over in another zone it is tomorrow already.
    const last = dayAfter(this.#today, 1);
    const hasCome = ({ localDay: day }: Review) => day <= last;
    const come = log.reviews.every(hasCome)
      ? log.reviews
      : log.reviews.filter(hasCome);
    this.#ahead = log.reviews.filter((review) => !hasCome(review));
    this.#log = learnerLog(come, this.schedule);
  }
}

/** Reads a learner's settings and log, and tidies the log up in passing. */
export async function openLearner(
  database: TurnwiseDatabase,
  shelf: DeckShelf,
  learner: Learner,
): Promise<Result<LearnerState, StorageError>> {
  const settings = await readSetting(database, learnerSettingsKey(learner.id));
  if (!settings.ok) return settings;
  // A log that cannot be sealed now is as good as a sealed one, only slower.
  await sealReviews(database, learner.id);
  const log = await readLog(database, learner.id);
  if (!log.ok) return log;
  return ok(
    new LearnerState(
      database,
      shelf,
      learner,
      parseLearnerSettings(settings.value),
      log.value,
    ),
  );
}
