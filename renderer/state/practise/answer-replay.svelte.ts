/**
 * What the big cube goes through after an answer: the learner's own turns or a
 * way of the case, and which way is listed beside it.
 */
import { startOf } from "../../../core/cases/position";
import { formatTurn } from "../../../core/notation/format";
import type { AnsweredCase } from "./answered-case.svelte";
import { ReplayState } from "./replay-state.svelte";
import {
  isSameWay,
  type ShownWay,
  type ShownWays,
  wentAlong,
} from "./shown-ways";

/** The replay of one answer. */
export class AnswerReplay {
  readonly #answered: AnsweredCase;
  readonly #ways: () => ShownWays;
  readonly replay: ReplayState;
  #source: "yours" | "way" = $state("way");
  #listed = $state(0);

  constructor(
    answered: AnsweredCase,
    ways: () => ShownWays,
    still: () => boolean,
  ) {
    this.#answered = answered;
    this.#ways = ways;
    const start = startOf(answered.attempt.position);
    this.replay = new ReplayState(start, this.way.turns, still);
    this.#begin();
  }

  /** Whose turns the cube goes through. */
  get source(): "yours" | "way" {
    return this.#source;
  }

  /** The way that is listed. */
  get way(): ShownWay {
    const ways = this.#ways();
    return ways[this.#listed] ?? ways[0];
  }

  /** How many ways there are besides the one that is listed. */
  get others(): number {
    return this.#ways().length - 1;
  }

  /** Whether the learner's answer went along the way that is listed. */
  get isWayUsed(): boolean {
    const { attempt, given } = this.#answered;
    return (
      given.turns.length > 0 &&
      wentAlong(attempt.position, given.turns, this.way.turns)
    );
  }

  /** The turn of the listed way that comes next on the cube; undefined: none, or it goes through other turns. */
  get step(): number | undefined {
    const { station } = this.replay;
    return this.#source === "way" && station < this.way.turns.length
      ? station
      : undefined;
  }

  /** The turns that the cube goes through, as they are written. */
  get moves(): readonly string[] {
    return this.replay.turns.map(formatTurn);
  }

  /** Shows a turn of the listed way on the cube. */
  showStep(n: number): void {
    if (this.#source !== "way") this.#takeWay();
    this.replay.go(n);
    this.replay.go(n + 1);
  }

  /** Lists another way, or the first again. */
  listNext(): void {
    this.#listed = (this.#listed + 1) % this.#ways().length;
    this.#takeWay();
  }

  /** Goes through the whole way from its beginning. */
  playWay(): void {
    this.#takeWay();
    this.replay.toggle();
  }

  #takeWay(): void {
    this.#source = "way";
    this.replay.take(this.way.turns);
  }

  /** A way that was followed or asked for is gone through, else what the learner turned. */
  #begin(): void {
    const { given, review, outcome } = this.#answered;
    const { replay } = this;
    const { turns } = this.way;
    const isOnScreen = review.answerWay === "on-screen";
    if (given.turns.length === 0 || given.shownTheWay || this.isWayUsed) {
      // On the screen's own cube the answer has just been seen: it stays as it ended.
      if (this.isWayUsed && isOnScreen)
        replay.go(turns.length - (isSameWay(given.turns, turns) ? 0 : 1));
    } else {
      this.#source = "yours";
      replay.take(given.turns);
      if (isOnScreen && outcome !== "missed") replay.go(given.turns.length);
    }
    if (review.answerWay === "write-it" && given.turns.length > 0)
      replay.toggle();
  }
}
