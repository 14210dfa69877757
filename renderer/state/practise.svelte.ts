/** Practising: what a learner can do at the desk, whatever lies on it. */
import type { TurnedWay } from "../../core/memory/review";
import { resumeRound, type Round, skipItem } from "../../core/memory/round";
import type { ColourScheme } from "../../core/picture/colour-sets";
import { now, runningTime } from "../platform/clock";
import type { PractiseNeeds } from "./practise/attempt-of-item";
import { DeskLock } from "./practise/desk-lock";
import { MyCubeAttempt } from "./practise/my-cube-attempt.svelte";
import {
  afterTap,
  RESTED,
  type TurningTime,
  wantsPause,
} from "./practise/pause-advice";
import {
  answeredIn,
  attemptIn,
  type PractisePhase,
} from "./practise/practise-phase";
import type { Practised } from "./practise/practised";
import { RoundAsker } from "./practise/round-asker.svelte";
import { isSkipMissed } from "./practise/skipping";

/** A learner's practice in this window. */
export class PractiseState {
  readonly #needs: PractiseNeeds;
  readonly #lock = new DeskLock();
  readonly #asker: RoundAsker;
  /** When the last opening is done. */
  #opened: Promise<void> = Promise.resolve();
  #turningTime: TurningTime = $state.raw(RESTED);

  constructor(needs: PractiseNeeds) {
    this.#needs = needs;
    this.#asker = new RoundAsker(needs, () => {
      this.#turningTime = afterTap(this.#turningTime, runningTime());
    });
  }

  get phase(): PractisePhase {
    return this.#asker.phase;
  }

  get round(): Round | undefined {
    return this.#asker.desk.round;
  }

  /** Whether the learner has been turning for so long that a pause is due. */
  get wantsPause(): boolean {
    return wantsPause(this.#turningTime);
  }

  /** The learner has rested, or says they have. */
  goOnAfterPause(): void {
    this.#turningTime = RESTED;
  }

  get answerWay(): TurnedWay {
    const { settings } = this.#needs.learner;
    return attemptIn(this.phase)?.answerWay ?? settings.answerWay;
  }

  /** The ways in which what is on the desk may be answered; undefined: all. */
  get allowedWays(): readonly TurnedWay[] | undefined {
    return attemptIn(this.phase)?.item.choice?.answerWays;
  }

  /**
   * Takes the learner's desk, and the round that was under way or a new one.
   * One after the other: what is asked for last is what lies there in the end.
   */
  open(of: Practised | undefined): Promise<void> {
    const opening = () => this.#open(of);
    this.#opened = this.#opened.then(opening, opening);
    return this.#opened;
  }

  async #open(of: Practised | undefined): Promise<void> {
    const asker = this.#asker;
    if (asker.isClosed) return;
    asker.desk.of = of;
    if (!this.#lock.isHeld && !(await this.#takeDesk())) return;
    asker.leaveAsked();
    asker.phase = { kind: "opening" };
    await asker.desk.settled();
    await asker.takeUpOrStart(of);
  }

  /** Takes the desk, unless another window has it. Resolves with whether practice can go on here. */
  async #takeDesk(): Promise<boolean> {
    const { learner } = this.#needs;
    const lock = await this.#lock.take(learner);
    if (!lock.ok) {
      this.#asker.failed(lock.error);
      return false;
    }
    if (!lock.value.held) {
      this.#asker.phase = { kind: "elsewhere", since: lock.value.since };
      return false;
    }
    if (this.#asker.isClosed) {
      this.close();
      return false;
    }
    // Another window may have practised until just now.
    const read = await learner.reload();
    if (!read.ok) this.#asker.failed(read.error);
    return read.ok;
  }

  /** Leaves the desk: another window may practise. */
  close(): void {
    this.#asker.close();
    this.#lock.release();
  }

  /** Begins a new round of what was chosen, or of what is due and new. */
  start(of: Practised | undefined): Promise<void> {
    return this.#asker.start(of);
  }

  /** Begins a round though the minutes are over, or nothing needs practice. */
  startExtra(): Promise<void> {
    return this.#asker.startExtra();
  }

  /** The learner's cube got other colours: what was known of its pieces was said of others. */
  followColours(scheme: ColourScheme): void {
    if (!this.#asker.desk.followColours(scheme)) return;
    const { asked } = this.#asker;
    if (asked instanceof MyCubeAttempt)
      asked.astray("looks-different", runningTime());
  }

  /** Chooses how to answer; the case on the desk begins anew that way. */
  async chooseWay(answerWay: TurnedWay): Promise<void> {
    if (answerWay === this.answerWay) return;
    if (this.allowedWays?.includes(answerWay) === false) return;
    const { phase } = this;
    const saved = await this.#needs.learner.changeSettings({ answerWay });
    if (!saved.ok) {
      this.#asker.failed(saved.error);
      return;
    }
    if (phase.kind !== "case" || this.phase !== phase) return;
    const { item, isRetry } = phase.attempt;
    const { desk } = this.#asker;
    desk.leave(phase.attempt);
    if (isRetry || desk.round === undefined) {
      this.#asker.show(item, isRetry);
      return;
    }
    // What was seen before the change is no fresh question any more.
    desk.round = resumeRound(desk.round);
    await this.#asker.present();
  }

  /**
   * Leaves the case on the desk: passed over, or missed once an answer was
   * begun. Units: `at` on the page's running time.
   */
  async skip(at: number = runningTime()): Promise<void> {
    const { asked, desk } = this.#asker;
    if (this.phase.kind === "question" && desk.round !== undefined) {
      desk.round = skipItem(desk.round, now());
      await this.#asker.goOn();
      return;
    }
    if (asked === undefined || desk.round === undefined) return;
    if (isSkipMissed(asked)) {
      asked.leave(at);
      return;
    }
    desk.leave(asked);
    if (!asked.isRetry) desk.round = skipItem(desk.round, now());
    await this.#asker.goOn();
  }

  /** The same position once more, outside the round: nothing of it is recorded. */
  retry(): void {
    const { phase } = this;
    if (phase.kind === "answered")
      this.#asker.show(phase.answered.attempt.item, true);
  }

  /** The next case, or the end of the round. */
  async next(): Promise<void> {
    const { phase } = this;
    const answered = answeredIn(phase);
    if (answered === undefined) return;
    await this.#asker.desk.settled();
    if (this.phase !== phase) return;
    if (answered.trouble !== undefined) await this.storeAgain();
    else await this.#asker.goOn();
  }

  /** Stores the answer on the desk again, after it failed. */
  async storeAgain(): Promise<void> {
    const { phase } = this;
    const answered = answeredIn(phase);
    if (answered === undefined) return;
    if (phase.kind === "answered" && phase.answered.attempt.isRetry) return;
    await this.#asker.desk.store(answered);
  }
}
