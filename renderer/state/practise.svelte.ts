/**
 * Practising: the round a learner is in, the case on the desk, and what came
 * of it. Whatever happens is stored before it is shown, so that a reload, a
 * crash and a closed window come back to the same position.
 */
import { confusedWith } from "../../core/answer/explanation";
import {
  type DayPlan,
  planDay,
  type PlannedCase,
  planRound,
} from "../../core/memory/day-plan";
import type {
  AnswerWay,
  Hint,
  LocalDay,
  Milliseconds,
} from "../../core/memory/review";
import {
  answerItem,
  canResume,
  currentItem,
  isRoundOver,
  resumeRound,
  type Round,
  type RoundItem,
  skipItem,
  startRound,
  withHints,
  withPosition,
} from "../../core/memory/round";
import type { PartlyKnownCubies } from "../../core/cube/cubies";
import type { ColourScheme } from "../../core/picture/colour-sets";
import type { Result } from "../../core/result";
import { now, runningTime, utcOffset } from "../platform/clock";
import { freshId, freshSeed } from "../platform/random";
import { takePracticeLock } from "../storage/locks";
import { removeRound, type RoundRow } from "../storage/rounds";
import type { StorageError } from "../storage/storage-error";
import type { LearnerState } from "./learner.svelte";
import { AnsweredCase, type Attempt } from "./practise/answered-case.svelte";
import { CaseAttempt } from "./practise/case-attempt.svelte";
import {
  coloursOf,
  type Desk,
  formatDesk,
  type StoredWalk,
} from "./practise/desk-schema";
import {
  type GivenAnswer,
  diagnosisOf,
  reviewOf,
} from "./practise/given-answer";
import { MyCubeAttempt } from "./practise/my-cube-attempt.svelte";
import type { SetUpFinder } from "./practise/my-cube-stage";
import {
  type OpenRound,
  putAside,
  roundsThatGoOn,
  roundToTakeUp,
} from "./practise/open-rounds";
import { formatPosition, positionOfItem } from "./practise/position-of-item";
import {
  afterTap,
  RESTED,
  type TurningTime,
  wantsPause,
} from "./practise/pause-advice";
import { taughtTurns } from "./practise/deck-way";
import { answerWayOf, decksToPlan, isMarked } from "./practise/deck-choices";
import { RoundKeeper } from "./practise/round-keeper";
import { isPractised, type Practised } from "./practise/practised";
import { isSkipMissed } from "./practise/skipping";

/** What the place shows. */
export type PractisePhase =
  | { readonly kind: "opening" }
  /** Another window practises as this learner. */
  | { readonly kind: "elsewhere"; readonly since: Milliseconds | undefined }
  | { readonly kind: "trouble"; readonly error: StorageError }
  /** Nothing is due and nothing is new. */
  | { readonly kind: "rest"; readonly day: DayPlan }
  | { readonly kind: "case"; readonly attempt: Attempt }
  | { readonly kind: "answered"; readonly answered: AnsweredCase }
  | {
      readonly kind: "summary";
      readonly round: Round;
      /** Whether a round that was put aside waits to go on. */
      readonly waiting: boolean;
    };

/** What practising needs from outside. */
export interface PractiseNeeds {
  readonly learner: LearnerState;
  readonly findSetUp: SetUpFinder;
  /** Whether nothing should move just now. */
  readonly still: () => boolean;
}

/** This window's own lock on its way out: leaving the place and coming back must not find it taken. */
let releasing: Promise<void> = Promise.resolve();

/** A learner's practice in this window. */
export class PractiseState {
  readonly #needs: PractiseNeeds;
  #phase: PractisePhase = $state.raw({ kind: "opening" });
  #round: Round | undefined = $state.raw();
  #of: Practised | undefined;
  /** Carried from case to case: the cube stays in the learner's hands. */
  #ownCube: PartlyKnownCubies | undefined;
  /** The colours under which that cube is followed. */
  #colours: string;
  #turningTime: TurningTime = $state.raw(RESTED);
  readonly #keeper = new RoundKeeper();
  #release: (() => void) | undefined;
  #isClosed = false;

  constructor(needs: PractiseNeeds) {
    this.#needs = needs;
    this.#colours = coloursOf(needs.learner.scheme);
  }

  get phase(): PractisePhase {
    return this.#phase;
  }

  get round(): Round | undefined {
    return this.#round;
  }

  /** Whether the learner has been turning for so long that a pause is due. */
  get wantsPause(): boolean {
    return wantsPause(this.#turningTime);
  }

  /** The learner has rested, or says they have. */
  goOnAfterPause(): void {
    this.#turningTime = RESTED;
  }

  get answerWay(): AnswerWay {
    return this.#attempt?.answerWay ?? this.#needs.learner.settings.answerWay;
  }

  /** The ways in which what is on the desk may be answered; undefined: all. */
  get allowedWays(): readonly AnswerWay[] | undefined {
    return this.#attempt?.item.choice?.answerWays;
  }

  /** What is on the desk, asked or answered. */
  get #attempt(): Attempt | undefined {
    const phase = this.#phase;
    if (phase.kind === "case") return phase.attempt;
    return phase.kind === "answered" ? phase.answered.attempt : undefined;
  }

  /** Takes the learner's desk, and the round that was under way or a new one. */
  async open(of: Practised | undefined): Promise<void> {
    this.#of = of;
    const { learner } = this.#needs;
    if (this.#release === undefined) {
      await releasing;
      const lock = await takePracticeLock(
        learner.database,
        learner.learner.id,
        now(),
      );
      if (!lock.ok) {
        this.#failed(lock.error);
        return;
      }
      if (!lock.value.held) {
        this.#phase = { kind: "elsewhere", since: lock.value.since };
        return;
      }
      const { release } = lock.value;
      this.#release = () => {
        releasing = release();
      };
      if (this.#isClosed) {
        this.close();
        return;
      }
      // Another window may have practised until just now.
      const read = await learner.reload();
      if (!read.ok) {
        this.#failed(read.error);
        return;
      }
    }
    if (this.#phase.kind === "case") this.#leave(this.#phase.attempt);
    this.#phase = { kind: "opening" };
    await this.#keeper.settled();
    const open = await this.#openRounds();
    if (!open.ok) {
      this.#failed(open.error);
      return;
    }
    if (!(await this.#takeUp(open.value))) await this.start(of);
  }

  /** Leaves the desk: another window may practise. */
  close(): void {
    this.#isClosed = true;
    if (this.#phase.kind === "case") this.#leave(this.#phase.attempt);
    this.#release?.();
    this.#release = undefined;
  }

  /** Begins a new round of what was chosen, or of what is due and new. */
  async start(of: Practised | undefined): Promise<void> {
    this.#of = of;
    const { learner } = this.#needs;
    learner.refreshToday();
    const { hold, level } = learner.settings;
    const day = planDay({
      learner: learner.learner.id,
      decks: decksToPlan(learner.decks, of),
      hold,
      memories: learner.memories,
      today: learner.today,
      settings: { level },
      only: (id) => isPractised(id, of),
    });
    const planned = planRound(day, { extra: of !== undefined });
    if (planned.length === 0) {
      this.#round = undefined;
      this.#phase = { kind: "rest", day };
      return;
    }
    await this.#begin(planned);
  }

  /** Begins a round of cases that need no practice today. */
  async startExtra(day: DayPlan): Promise<void> {
    await this.#begin(planRound(day, { extra: true }));
  }

  async #begin(planned: readonly PlannedCase[]): Promise<void> {
    const { learner } = this.#needs;
    this.#round = startRound(planned, {
      id: freshId(),
      learner: learner.learner.id,
      day: learner.today,
      seed: freshSeed(),
      now: now(),
    });
    await this.#present();
  }

  /** The learner's cube got other colours: what was known of its pieces was said of others. */
  followColours(scheme: ColourScheme): void {
    const colours = coloursOf(scheme);
    if (colours === this.#colours) return;
    this.#colours = colours;
    this.#ownCube = undefined;
    const phase = this.#phase;
    if (phase.kind === "case" && phase.attempt instanceof MyCubeAttempt)
      phase.attempt.astray("looks-different", runningTime());
  }

  /** Chooses how to answer; the case on the desk begins anew that way. */
  async chooseWay(answerWay: AnswerWay): Promise<void> {
    if (answerWay === this.answerWay) return;
    if (this.allowedWays?.includes(answerWay) === false) return;
    const phase = this.#phase;
    const saved = await this.#needs.learner.changeSettings({ answerWay });
    if (!saved.ok) {
      this.#failed(saved.error);
      return;
    }
    if (phase.kind !== "case" || this.#phase !== phase) return;
    const { item, isRetry } = phase.attempt;
    this.#leave(phase.attempt);
    if (isRetry || this.#round === undefined) {
      this.#show(item, isRetry);
      return;
    }
    // What was seen before the change is no fresh question any more.
    this.#round = resumeRound(this.#round);
    await this.#present();
  }

  /**
   * Leaves the case on the desk: passed over, or missed once an answer was
   * begun. Units: `at` on the page's running time.
   */
  async skip(at: number = runningTime()): Promise<void> {
    const phase = this.#phase;
    if (phase.kind !== "case" || this.#round === undefined) return;
    if (isSkipMissed(phase.attempt)) {
      phase.attempt.leave(at);
      return;
    }
    this.#leave(phase.attempt);
    if (!phase.attempt.isRetry) this.#round = skipItem(this.#round, now());
    await this.#goOn();
  }

  /** The same position once more, outside the round: nothing of it is recorded. */
  retry(): void {
    const phase = this.#phase;
    if (phase.kind !== "answered") return;
    const { attempt } = phase.answered;
    this.#show(attempt.item, true);
  }

  /** The next case, or the end of the round. */
  async next(): Promise<void> {
    const phase = this.#phase;
    if (phase.kind !== "answered") return;
    await this.#keeper.settled();
    if (this.#phase !== phase) return;
    if (phase.answered.trouble !== undefined) {
      await this.storeAgain();
      return;
    }
    await this.#goOn();
  }

  /** Stores the answer on the desk again, after it failed. */
  async storeAgain(): Promise<void> {
    if (this.#phase.kind !== "answered") return;
    const { answered } = this.#phase;
    if (!answered.attempt.isRetry) await this.#store(answered);
  }

  /** Takes up a round that waits, if there is one for what is asked. */
  async #takeUp(open: readonly OpenRound[]): Promise<boolean> {
    const taken = roundToTakeUp(open, this.#of);
    const aside = await putAside(this.#needs.learner.database, open, taken);
    if (!aside.ok) {
      this.#failed(aside.error);
      return true;
    }
    if (taken === undefined) return false;
    const { desk } = taken;
    const isLast =
      taken === open[0] &&
      this.#ownCube === undefined &&
      desk.colours === this.#colours;
    this.#round = resumeRound(taken.round);
    this.#of = desk.of;
    if (isLast) this.#ownCube = desk.ownCube;
    await this.#present(isLast ? desk.walk : undefined);
    return true;
  }

  #openRounds(): Promise<Result<readonly OpenRound[], StorageError>> {
    const { learner } = this.#needs;
    learner.refreshToday();
    return roundsThatGoOn(
      learner.database,
      learner.learner.id,
      learner.today,
      now(),
    );
  }

  async #goOn(): Promise<void> {
    if (this.#round === undefined) return;
    const isPast = this.#isRoundPast(this.#round);
    if (currentItem(this.#round) !== undefined && !isPast) {
      await this.#present();
      return;
    }
    const removed = await removeRound(
      this.#needs.learner.database,
      this.#round.id,
    );
    if (!removed.ok) {
      this.#failed(removed.error);
      return;
    }
    const open = await this.#openRounds();
    if (!open.ok) {
      this.#failed(open.error);
      return;
    }
    if (isPast) {
      // Its day is over: what is due now was planned by nobody yet.
      if (!(await this.#takeUp(open.value))) await this.start(this.#of);
      return;
    }
    const waiting = open.value.length > 0;
    this.#phase = { kind: "summary", round: this.#round, waiting };
  }

  /** Whether a round was left open for so long that its answers would count for a day long past. */
  #isRoundPast(round: Round): boolean {
    const { learner } = this.#needs;
    learner.refreshToday();
    return !isRoundOver(round) && !canResume(round, learner.today, now());
  }

  /** The learner's day has turned over: a plan that was shown is yesterday's. */
  async dayTurned(today: LocalDay): Promise<void> {
    const phase = this.#phase;
    if (phase.kind === "rest" && phase.day.today !== today)
      await this.start(this.#of);
  }

  /** Puts the current item on the desk, stored before it is shown. */
  async #present(walk?: StoredWalk): Promise<void> {
    const round = this.#round;
    const item = round === undefined ? undefined : currentItem(round);
    if (round === undefined || item === undefined) return this.#goOn();
    if (answerWayOf(item, this.#needs.learner.settings) !== "my-cube")
      this.#markShown(item);
    const saved = await this.#save(walk);
    if (!saved.ok) {
      this.#failed(saved.error);
      return;
    }
    if (this.#isClosed || this.#round === undefined) return;
    this.#show(currentItem(this.#round) ?? item, false, walk);
  }

  /** From here the item counts as shown: coming back to it is an interruption. */
  #markShown(item: RoundItem): void {
    if (this.#round === undefined) return;
    const position = formatPosition(positionOfItem(item));
    this.#round = withPosition(this.#round, position);
  }

  #show(item: RoundItem, isRetry: boolean, walk?: StoredWalk): void {
    const { learner, still, findSetUp } = this.#needs;
    const position = positionOfItem(item);
    const start = {
      // Nobody is shown again, or helped, what they try once more.
      item: isRetry ? { ...item, asking: "alone" as const, hints: [] } : item,
      position,
      way: taughtTurns(position, {
        way: learner.deckCase(item)?.way,
        choice: learner.wayChoice,
      }),
      isMarked: isMarked(item, learner.settings),
      isRetry,
      onhinted: (hints: readonly Hint[]) => {
        if (isRetry || this.#round === undefined) return;
        this.#round = withHints(this.#round, hints);
        void this.#save();
      },
    };
    const answerWay = answerWayOf(item, this.#needs.learner.settings);
    const attempt: Attempt =
      answerWay === "my-cube"
        ? new MyCubeAttempt({
            ...start,
            wayChoice: learner.wayChoice,
            ownCube: this.#ownCube,
            walk,
            findSetUp,
            onset: () => {
              if (!isRetry) this.#markShown(item);
            },
            onmoved: () => {
              this.#turningTime = afterTap(this.#turningTime, runningTime());
              void this.#save();
            },
            onended: (given) => void this.#ended(attempt, given),
          })
        : new CaseAttempt({
            ...start,
            answerWay,
            still,
            onended: (given) => void this.#ended(attempt, given),
          });
    this.#phase = { kind: "case", attempt };
    // A cube that shows the case already counts as set up from the start.
    if (attempt instanceof MyCubeAttempt && !isRetry) void this.#save();
  }

  /** Keeps what is known of the learner's cube when an attempt is left. */
  #leave(attempt: Attempt): void {
    if (attempt instanceof MyCubeAttempt) this.#ownCube = attempt.cubeNow;
    attempt.stop();
  }

  async #ended(attempt: Attempt, given: GivenAnswer): Promise<void> {
    const { learner } = this.#needs;
    const round = this.#round;
    if (round === undefined) return;
    this.#leave(attempt);
    const at = now();
    const diagnosis = diagnosisOf(given, attempt.position, attempt.way);
    const { explanation } = diagnosis;
    const review = reviewOf(given, {
      id: freshId(),
      learner: learner.learner.id,
      item: attempt.item,
      answeredAs: explanation && confusedWith(explanation),
      position: attempt.position,
      answerWay: attempt.answerWay,
      scheme: learner.scheme,
      at,
      utcOffset: utcOffset(at),
      localDay: this.#isRoundPast(round) ? learner.today : round.day,
    });
    const { item } = attempt;
    const before = learner.memoryOf(item.case, item.hold);
    const answered = new AnsweredCase(
      attempt,
      given,
      { review, diagnosis },
      before,
    );
    if (!attempt.isRetry) this.#round = answerItem(round, review);
    this.#phase = { kind: "answered", answered };
    if (!attempt.isRetry) await this.#store(answered);
  }

  /** Stores an answer with the round's advance; what was stored before comes first. */
  #store(answered: AnsweredCase): Promise<void> {
    return this.#keeper.inTurn(async () => {
      const row = this.#row();
      if (row === undefined) return;
      const stored = await this.#needs.learner.acknowledge({
        review: answered.review,
        round: row,
      });
      answered.trouble = stored.ok ? undefined : stored.error;
      if (stored.ok) answered.acknowledged = stored.value;
    });
  }

  #save(walk?: StoredWalk): Promise<Result<unknown, StorageError>> {
    const { database } = this.#needs.learner;
    return this.#keeper.save(database, () => this.#row(walk));
  }

  #row(walk?: StoredWalk): RoundRow | undefined {
    const round = this.#round;
    if (round === undefined) return undefined;
    return {
      id: round.id,
      learner: round.learner,
      savedAt: now(),
      round,
      desk: formatDesk(this.#desk(walk)),
    };
  }

  #desk(walk?: StoredWalk): Desk {
    const phase = this.#phase;
    const attempt = phase.kind === "case" ? phase.attempt : undefined;
    const about = { of: this.#of, colours: this.#colours };
    return attempt instanceof MyCubeAttempt
      ? { ...about, ownCube: attempt.ownCube, walk: attempt.storedWalk }
      : { ...about, ownCube: this.#ownCube, walk };
  }

  #failed(error: StorageError): void {
    this.#phase = { kind: "trouble", error };
  }
}
