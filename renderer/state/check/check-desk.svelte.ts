/**
 * A check under way: one case after the other, no help, and nothing said about
 * an answer before the last one was given.
 */
import type { Deck } from "../../../core/deck/deck";
import type { Milliseconds } from "../../../core/memory/review";
import {
  resumeRound,
  type Round,
  withPosition,
} from "../../../core/memory/round";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { Result } from "../../../core/result";
import { checkKey } from "../../storage/learners";
import { readSetting, saveSetting } from "../../storage/settings";
import type { StorageError } from "../../storage/storage-error";
import type { AnsweredCase, Attempt } from "../practise/answered-case.svelte";
import { answeredWords } from "../practise/answered-words";
import { attemptOfItem, type PractiseNeeds } from "../practise/attempt-of-item";
import { DeskLock } from "../practise/desk-lock";
import type { GivenAnswer } from "../practise/given-answer";
import { MyCubeAttempt } from "../practise/my-cube-attempt.svelte";
import { formatPosition, positionOfItem } from "../practise/position-of-item";
import { reviewedAnswer } from "../practise/reviewed-answer";
import { checkResult, type CheckResult } from "./check-result";
import {
  type Check,
  formatCheck,
  itemOf,
  newCheck,
  parseCheck,
} from "./stored-check";

/** What the page shows. */
export type CheckPhase =
  | { readonly kind: "opening" }
  /** Another window practises as this learner. */
  | { readonly kind: "elsewhere"; readonly since: Milliseconds | undefined }
  | { readonly kind: "trouble"; readonly error: StorageError }
  /** None is under way. */
  | { readonly kind: "ready" }
  | {
      readonly kind: "asked";
      readonly attempt: Attempt;
      /** Counted from 0. */
      readonly index: number;
    }
  /** An answer was given and could not be stored. */
  | {
      readonly kind: "unkept";
      readonly answered: AnsweredCase;
      readonly error: StorageError;
    }
  | { readonly kind: "result"; readonly result: CheckResult };

/** A learner's check in this window. */
export class CheckDesk {
  readonly #deck: () => Deck;
  readonly #needs: PractiseNeeds;
  readonly #lock = new DeskLock();
  #isClosed = false;
  #check: Check | undefined = $state.raw();
  #ownCube: PartlyKnownCubies | undefined;
  phase: CheckPhase = $state.raw({ kind: "opening" });

  constructor(deck: () => Deck, needs: PractiseNeeds) {
    this.#deck = deck;
    this.#needs = needs;
  }

  // A method, because it may come true while something else is waited for.
  #hasLeft(): boolean {
    return this.#isClosed;
  }

  /** How many cases the check asks. */
  get length(): number {
    return this.#check?.rounds.length ?? 0;
  }

  /** Takes the learner's desk, and the check that was under way or over. */
  async open(): Promise<void> {
    const { learner } = this.#needs;
    if (this.#hasLeft()) return;
    if (!this.#lock.isHeld) {
      const lock = await this.#lock.take(learner);
      if (!lock.ok) {
        this.#failed(lock.error);
        return;
      }
      if (!lock.value.held) {
        this.phase = { kind: "elsewhere", since: lock.value.since };
        return;
      }
    }
    if (this.#hasLeft()) {
      this.close();
      return;
    }
    // Another window may have practised until just now.
    const read = await learner.reload();
    if (!read.ok) {
      this.#failed(read.error);
      return;
    }
    const stored = await readSetting(
      learner.database,
      checkKey(learner.learner.id),
    );
    if (!stored.ok) {
      this.#failed(stored.error);
      return;
    }
    if (this.#hasLeft()) {
      this.close();
      return;
    }
    this.#check = parseCheck(stored.value);
    if (!this.#isOfToday) this.phase = { kind: "ready" };
    else await this.#resume();
  }

  /** Leaves the desk: another window may practise. */
  close(): void {
    this.#isClosed = true;
    this.#leaveAsked();
    this.#lock.release();
  }

  /** Draws a new check and begins it. */
  async begin(): Promise<void> {
    const { learner } = this.#needs;
    learner.refreshToday();
    const drawn = newCheck(this.#deck(), learner, this.#check);
    if (drawn === undefined) return;
    this.#check = drawn;
    await this.#ask();
  }

  /** The learner does not know this one: what was turned is judged as it stands. A case that is not set up yet is left out. */
  async giveUp(at: number): Promise<void> {
    const { phase } = this;
    if (phase.kind !== "asked") return;
    const { attempt } = phase;
    attempt.leave(at);
    if (hasEnded(attempt) || this.#check === undefined) return;
    const round = this.#check.rounds[phase.index];
    if (round === undefined) return;
    this.#leaveAsked();
    this.#check = {
      ...this.#check,
      leftOut: [...this.#check.leftOut, round.id],
    };
    await this.#ask();
  }

  /** Stores the answer again, after it failed. */
  async storeAgain(): Promise<void> {
    const { phase } = this;
    if (phase.kind === "unkept") await this.#store(phase.answered);
  }

  get #isOfToday(): boolean {
    const check = this.#check;
    return (
      check?.deck === this.#deck().id &&
      check.rounds.every(({ day }) => day === this.#needs.learner.today)
    );
  }

  /** Goes on with the check that was stored: what had been shown when the window closed counts as interrupted. */
  async #resume(): Promise<void> {
    const next = this.#next();
    const check = this.#check;
    if (check !== undefined && next !== undefined)
      this.#check = withRound(check, next, resumeRound);
    await this.#ask();
  }

  /** The index of the first case that is not answered. */
  #next(): number | undefined {
    const check = this.#check;
    if (check === undefined) return undefined;
    const { reviews } = this.#needs.learner;
    const at = check.rounds.findIndex(
      ({ id }) =>
        !check.leftOut.includes(id) &&
        !reviews.some((review) => review.id === id),
    );
    return at < 0 ? undefined : at;
  }

  async #ask(): Promise<void> {
    const index = this.#next();
    const round = index === undefined ? undefined : this.#check?.rounds[index];
    if (index === undefined || round === undefined) return this.#end();
    const item = itemOf(round);
    const attempt = attemptOfItem(
      item,
      this.#needs,
      {
        isRetry: false,
        ownCube: this.#ownCube,
        isPlain: true,
        walk: undefined,
      },
      {
        // Nobody is helped.
        onhinted: () => undefined,
        onset: () => void this.#markShown(index),
        onmoved: () => undefined,
        onended: (ended, given) => void this.#ended(ended, given, round),
      },
    );
    // Stored before it is shown: coming back to it is an interruption.
    const saved =
      attempt instanceof MyCubeAttempt
        ? await this.#save()
        : await this.#markShown(index);
    if (!saved.ok) this.#failed(saved.error);
    else if (this.#hasLeft()) attempt.stop();
    else this.phase = { kind: "asked", attempt, index };
  }

  async #markShown(index: number): Promise<Result<void, StorageError>> {
    if (this.#check !== undefined)
      this.#check = withRound(this.#check, index, (round) =>
        withPosition(round, formatPosition(positionOfItem(itemOf(round)))),
      );
    return this.#save();
  }

  async #ended(
    attempt: Attempt,
    given: GivenAnswer,
    { id }: Round,
  ): Promise<void> {
    const { learner } = this.#needs;
    if (attempt instanceof MyCubeAttempt) this.#ownCube = attempt.cubeNow;
    attempt.stop();
    learner.refreshToday();
    await this.#store(
      reviewedAnswer(attempt, given, learner, learner.today, id),
    );
  }

  async #store(answered: AnsweredCase): Promise<void> {
    const { learner } = this.#needs;
    const { review } = answered;
    const stored = await learner.acknowledge({ review });
    if (!stored.ok) {
      this.phase = { kind: "unkept", answered, error: stored.error };
      return;
    }
    if (review.verdict === "missed" && this.#check !== undefined) {
      const { sentence } =
        review.turns.length === 0 && !review.reported
          ? { sentence: "Not known." }
          : answeredWords(answered, {
              scheme: learner.scheme,
              withNotation: learner.settings.notation === "both",
            });
      this.#check = {
        ...this.#check,
        said: { ...this.#check.said, [review.id]: sentence },
      };
    }
    if (!this.#hasLeft()) await this.#ask();
  }

  async #end(): Promise<void> {
    const check = this.#check;
    if (check === undefined) return;
    const saved = await this.#save();
    if (!saved.ok) {
      this.#failed(saved.error);
      return;
    }
    const result = checkResult(check, this.#needs.learner.answers);
    this.phase = { kind: "result", result };
  }

  #save(): Promise<Result<void, StorageError>> {
    const { learner } = this.#needs;
    const value = this.#check && formatCheck(this.#check);
    return saveSetting(learner.database, checkKey(learner.learner.id), value);
  }

  #leaveAsked(): void {
    const { phase } = this;
    if (phase.kind !== "asked") return;
    const { attempt } = phase;
    if (attempt instanceof MyCubeAttempt) this.#ownCube = attempt.cubeNow;
    attempt.stop();
  }

  #failed(error: StorageError): void {
    this.phase = { kind: "trouble", error };
  }
}

function hasEnded(attempt: Attempt): boolean {
  return attempt instanceof MyCubeAttempt
    ? attempt.stage.kind === "ended"
    : attempt.hasEnded;
}

function withRound(
  check: Check,
  index: number,
  change: (round: Round) => Round,
): Check {
  return {
    ...check,
    rounds: check.rounds.map((round, n) =>
      n === index ? change(round) : round,
    ),
  };
}
