/**
 * Asks a round: one item after the other, each stored before it is shown,
 * until the round is over and it is said what waits.
 */
import type { LocalDay } from "../../../core/memory/review";
import {
  answerItem,
  currentItem,
  type Round,
  type RoundItem,
  withHints,
} from "../../../core/memory/round";
import type { StorageError } from "../../storage/storage-error";
import type { Attempt } from "./answered-case.svelte";
import { answeredChoice } from "./answered-choice.svelte";
import { attemptOfItem, type PractiseNeeds } from "./attempt-of-item";
import type { ChoiceAttempt, Chosen } from "./choice-attempt.svelte";
import { choiceOfItem } from "./choice-of-item";
import { answerWayOf } from "./deck-choices";
import type { StoredWalk } from "./desk-schema";
import type { GivenAnswer } from "./given-answer";
import { MyCubeAttempt } from "./my-cube-attempt.svelte";
import { type OpenRound, putAside, roundToTakeUp } from "./open-rounds";
import { extraRound, plannedRound } from "./planned-round";
import { PractiseDesk } from "./practise-desk.svelte";
import type { PractisePhase } from "./practise-phase";
import type { Practised } from "./practised";
import { reviewedAnswer } from "./reviewed-answer";

/** What a round being asked has come to. */
export class RoundAsker {
  readonly desk: PractiseDesk;
  readonly #needs: PractiseNeeds;
  readonly #onmoved: () => void;
  #isClosed = false;
  phase: PractisePhase = $state.raw({ kind: "opening" });

  /** Shape: `onmoved` hears of every tap about the cube in the learner's hands. */
  constructor(needs: PractiseNeeds, onmoved: () => void) {
    this.#needs = needs;
    this.#onmoved = onmoved;
    this.desk = new PractiseDesk(needs.learner, () => this.asked);
  }

  /** The attempt under way. */
  get asked(): Attempt | undefined {
    return this.phase.kind === "case" ? this.phase.attempt : undefined;
  }

  get isClosed(): boolean {
    return this.#isClosed;
  }

  /** Nothing more is asked. */
  close(): void {
    this.#isClosed = true;
    this.leaveAsked();
  }

  /** Leaves the attempt under way, if there is one. */
  leaveAsked(): void {
    if (this.asked !== undefined) this.desk.leave(this.asked);
  }

  /** What was to be stored or read could not be. */
  failed(error: StorageError): void {
    this.phase = { kind: "trouble", error };
  }

  /** Begins a new round of what was chosen, or of what today brings. */
  async start(of: Practised | undefined): Promise<void> {
    this.desk.of = of;
    await this.#begin(plannedRound(this.#needs.learner, of));
  }

  /** Begins a round though the minutes are over, or nothing needs practice. */
  async startExtra(): Promise<void> {
    await this.#begin(extraRound(this.#needs.learner));
  }

  async #begin(round: Round | undefined): Promise<void> {
    this.desk.round = round;
    if (round === undefined) this.phase = { kind: "today" };
    else await this.present();
  }

  /**
   * Takes up a round that waits for what is asked, or begins a new one. Who
   * comes back to no round in particular is told what today brings; who has
   * never answered anything is asked at once.
   */
  async takeUpOrStart(of: Practised | undefined): Promise<void> {
    const open = await this.desk.openRounds();
    if (!open.ok) {
      this.failed(open.error);
      return;
    }
    if (await this.#takeUp(open.value)) return;
    const { memories } = this.#needs.learner;
    if (of === undefined && memories.size > 0) await this.#begin(undefined);
    else await this.start(of);
  }

  async #takeUp(open: readonly OpenRound[]): Promise<boolean> {
    const taken = roundToTakeUp(open, this.desk.of);
    const aside = await putAside(this.#needs.learner.database, open, taken);
    if (!aside.ok) {
      this.failed(aside.error);
      return true;
    }
    if (taken === undefined) return false;
    await this.present(this.desk.takeUp(taken, taken === open[0]));
    return true;
  }

  /** The next item, or the end of the round. */
  async goOn(): Promise<void> {
    const { round } = this.desk;
    if (round === undefined) return;
    const isPast = this.desk.isPast(round);
    if (currentItem(round) !== undefined && !isPast) {
      await this.present();
      return;
    }
    const removed = await this.desk.remove(round);
    if (!removed.ok) {
      this.failed(removed.error);
      return;
    }
    if (isPast) {
      // Its day is over: what is due now was planned by nobody yet.
      await this.takeUpOrStart(this.desk.of);
      return;
    }
    const open = await this.desk.openRounds();
    if (!open.ok) this.failed(open.error);
    else {
      const waiting = roundToTakeUp(open.value, undefined) !== undefined;
      this.phase = { kind: "summary", round, waiting };
    }
  }

  /** Puts the current item on the desk, stored before it is shown. Shape: `walk` as it was stored on the learner's cube. */
  async present(walk?: StoredWalk): Promise<void> {
    const { round } = this.desk;
    const item = round === undefined ? undefined : currentItem(round);
    if (item === undefined) return this.goOn();
    if (
      item.answerWay !== undefined ||
      answerWayOf(item, this.#needs.learner.settings) !== "my-cube"
    )
      this.desk.markShown(item);
    const saved = await this.desk.save(walk);
    if (!saved.ok) {
      this.failed(saved.error);
      return;
    }
    if (this.#isClosed || this.desk.round === undefined) return;
    const stored = currentItem(this.desk.round) ?? item;
    const { answerWay } = stored;
    if (answerWay === undefined) this.show(stored, false, walk);
    else this.#ask({ ...stored, answerWay });
  }

  #ask(item: Parameters<typeof choiceOfItem>[0]): void {
    const attempt = choiceOfItem(
      item,
      this.#needs.learner,
      (asked, chosen) => void this.#chosen(asked, chosen),
    );
    this.phase = { kind: "question", attempt };
  }

  async #chosen(attempt: ChoiceAttempt, chosen: Chosen): Promise<void> {
    const { desk } = this;
    if (desk.round === undefined) return;
    const { learner } = this.#needs;
    const day = this.#dayOf(desk.round);
    const answered = answeredChoice(attempt, chosen, learner, day);
    desk.round = answerItem(desk.round, answered.review, answered.outcome);
    this.phase = { kind: "chosen", answered };
    await desk.store(answered);
  }

  /** The day for which an answer of a round counts now. */
  #dayOf(round: Round): LocalDay {
    return this.desk.isPast(round) ? this.#needs.learner.today : round.day;
  }

  /** Shows an item, in the round or once more outside it. */
  show(item: RoundItem, isRetry: boolean, walk?: StoredWalk): void {
    const { desk } = this;
    const attempt = attemptOfItem(
      item,
      this.#needs,
      { isRetry, ownCube: desk.ownCube, walk },
      {
        onhinted: (hints) => {
          if (isRetry || desk.round === undefined) return;
          desk.round = withHints(desk.round, hints);
          void desk.save();
        },
        onset: () => {
          if (!isRetry) desk.markShown(item);
        },
        onmoved: () => {
          this.#onmoved();
          void desk.save();
        },
        onended: (ended, given) => void this.#ended(ended, given),
      },
    );
    this.phase = { kind: "case", attempt };
    // A cube that shows the case already counts as set up from the start.
    if (attempt instanceof MyCubeAttempt && !isRetry) void desk.save();
  }

  async #ended(attempt: Attempt, given: GivenAnswer): Promise<void> {
    const { desk } = this;
    const { learner } = this.#needs;
    const { round } = desk;
    if (round === undefined) return;
    desk.leave(attempt);
    const day = this.#dayOf(round);
    const answered = reviewedAnswer(attempt, given, learner, day);
    const { review, outcome } = answered;
    if (!attempt.isRetry) desk.round = answerItem(round, review, outcome);
    this.phase = { kind: "answered", answered };
    if (!attempt.isRetry) await desk.store(answered);
  }
}
