/**
 * One attempt at a case on the screen: turning its cube, or writing turns.
 * It ends once, with an answer; what becomes of that is the round's.
 */
import { isAnswered, judge } from "../../../core/answer/judge";
import { type AnswerEvent, measureAnswer } from "../../../core/answer/measure";
import { type Position, startOf } from "../../../core/cases/position";
import { applyTurns } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import { type TurnedWay, HINTS, type Hint } from "../../../core/memory/review";
import type { RoundItem } from "../../../core/memory/round";
import { turnsMade } from "../../../core/notation/metrics";
import { parseTurns, readTypedTurns } from "../../../core/notation/parse";
import { simplifyTurns } from "../../../core/notation/simplify";
import type { GivenAnswer } from "./given-answer";
import { guideStep, type GuideStep } from "./guide";
import { LookAround } from "./look-around.svelte";
import { lookFrom } from "./looks";
import { TurnMotion } from "./turn-motion.svelte";
import {
  beginTurning,
  makeTurn,
  note,
  startOver,
  takeTurnBack,
  type TurnedAnswer,
  type TurnedStep,
} from "./turned-answer";

/** What an attempt is begun with. */
export interface AttemptStart {
  readonly item: RoundItem;
  readonly position: Position;
  readonly answerWay: Exclude<TurnedWay, "my-cube">;
  /** The way that is taught, as it is played on this position. */
  readonly way: readonly Turn[];
  /** Whether the piece and its home are marked. */
  readonly isMarked: boolean;
  /** Tried once more outside the round: nothing of it is recorded. */
  readonly isRetry: boolean;
  /** Whether nothing should move just now. */
  readonly still: () => boolean;
  /** More help was asked for; everything so far. */
  readonly onhinted: (hints: readonly Hint[]) => void;
  readonly onended: (given: GivenAnswer) => void;
}

/** Why an answer was not taken: no layer is turned in it, or what is written cannot be read. */
export type Refusal = "nothing-turned" | "unreadable";

/** An attempt while it lasts. Times given to it are of the page's running time. */
export class CaseAttempt {
  readonly item: RoundItem;
  readonly position: Position;
  readonly answerWay: Exclude<TurnedWay, "my-cube">;
  readonly isMarked: boolean;
  readonly isRetry: boolean;
  /** The way that is taught, as it is played on this position. */
  readonly way: readonly Turn[];
  readonly motion: TurnMotion;
  /** Where the learner looks from. */
  readonly looking: LookAround;
  readonly #onhinted: (hints: readonly Hint[]) => void;
  readonly #onended: (given: GivenAnswer) => void;
  #shownAt: number | undefined = $state();

  #answer: TurnedAnswer;
  #text = $state("");
  #hints: readonly Hint[];
  #hasEnded = $state(false);
  #refusal: Refusal | undefined = $state();
  /** Whether the next letter takes the wide layer. */
  wideNext = $state(false);

  constructor(start: AttemptStart) {
    this.item = start.item;
    this.position = start.position;
    this.answerWay = start.answerWay;
    this.isMarked = start.isMarked;
    this.isRetry = start.isRetry;
    this.way = start.way;
    this.motion = new TurnMotion(start.still);
    this.looking = new LookAround(lookFrom(start.position), (at) =>
      this.#note({ kind: "look", at: this.#since(at) }),
    );
    this.#hints = $state.raw(start.item.hints ?? []);
    this.#onhinted = start.onhinted;
    this.#onended = start.onended;
    this.#answer = $state.raw(beginTurning(startOf(start.position)));
  }

  /** The answer as it grows. */
  get answer(): TurnedAnswer {
    return this.#answer;
  }

  /** What is written so far. */
  get text(): string {
    return this.#text;
  }

  /** Help asked for so far, before the case was begun anew too. */
  get hints(): readonly Hint[] {
    return this.#hints;
  }

  /** When the case was shown; undefined: not yet. */
  get shownAt(): number | undefined {
    return this.#shownAt;
  }

  get hasEnded(): boolean {
    return this.#hasEnded;
  }

  /** Why the answer was not taken when the learner said they were done; until they go on. */
  get refusal(): Refusal | undefined {
    return this.#refusal;
  }

  /** Whether no hint is left but the whole way, which is a miss. */
  get isHintedOut(): boolean {
    return HINTS[this.#hints.length] === "whole-way";
  }

  /** Whether the learner is told each turn: a case that is new to them. */
  get isShown(): boolean {
    return this.item.asking === "shown";
  }

  /**
   * Whether leaving now would leave an answer that was begun: a turn that
   * commits, or help. Looking and lining up are searching.
   */
  get hasBegun(): boolean {
    const { start, events } = this.#answer;
    return (
      this.#hints.length > 0 ||
      measureAnswer(events, { hold: start.hold }).thinking !== undefined
    );
  }

  /** The turn that leads on along the way, from wherever the learner has got to. */
  get guide(): GuideStep | undefined {
    return guideStep(this.way, this.#answer.line);
  }

  /** The frame after the picture was in the page: from here time counts. */
  caseShown(at: number): void {
    this.#shownAt ??= at;
  }

  /** Turns a layer, or the whole cube. */
  turn(turn: Turn, at: number): void {
    if (this.#hasEnded) return;
    this.wideNext = false;
    this.#step(makeTurn(this.#answer, turn, this.#since(at)));
    if (isAnswered(this.position, this.#answer.cube)) this.#end();
  }

  /** Makes the turn that is told. */
  turnAsTold(at: number): void {
    const told = this.guide?.turn;
    if (told !== undefined) this.turn(told, at);
  }

  /** The attempt is left: nothing moves any more. */
  stop(): void {
    this.motion.stop();
  }

  takeBack(at: number): void {
    if (this.#hasEnded) return;
    this.wideNext = false;
    this.#step(takeTurnBack(this.#answer, this.#since(at)));
  }

  startOver(at: number): void {
    if (this.#hasEnded) return;
    this.motion.stop();
    this.#refusal = undefined;
    this.#answer = startOver(this.#answer, this.#since(at));
  }

  /** Writes; the whole text as it now stands. */
  write(text: string, at: number): void {
    if (this.#hasEnded) return;
    this.#text = text;
    this.#refusal = undefined;
    const { turns } = readTypedTurns(text);
    this.#note({ kind: "typed", turns, at: this.#since(at) });
  }

  /** Helps one step further; the whole way is shown by `showMe` alone. */
  hint(at: number): void {
    const next = HINTS[this.#hints.length];
    if (next === undefined || next === "whole-way" || this.#hasEnded) return;
    this.#hints = [...this.#hints, next];
    this.#note({ kind: "hint", hint: next, at: this.#since(at) });
    this.#onhinted(this.#hints);
  }

  /** The learner gives up, which is a miss, and wants to see the way. */
  showMe(at: number): void {
    if (this.#hasEnded) return;
    this.#hints = [...this.#hints, "whole-way"];
    this.#note({ kind: "show-me", at: this.#since(at) });
    this.#end();
  }

  /** The learner says they are done: judged as it stands, or refused. */
  done(at: number): void {
    if (this.#hasEnded) return;
    this.#refusal = this.#refusalNow();
    if (this.#refusal === undefined) this.leave(at);
  }

  #refusalNow(): Refusal | undefined {
    let { line } = this.#answer;
    if (this.answerWay === "write-it") {
      const read = parseTurns(this.#text);
      if (!read.ok) return "unreadable";
      line = read.value;
    }
    // Turns of the whole cube alone are no answer either.
    const turned = turnsMade(simplifyTurns(line));
    return turned === 0 ? "nothing-turned" : undefined;
  }

  /** The learner leaves an answer they have begun: judged as it stands, what cannot be read left out. */
  leave(at: number): void {
    if (this.#hasEnded) return;
    if (this.answerWay === "write-it" && !this.isShown) {
      const line = readTypedTurns(this.#text).turns;
      const cube = applyTurns(this.#answer.start, line);
      this.#answer = { ...this.#answer, cube, line };
    }
    this.#note({ kind: "done", at: this.#since(at) });
    this.#end();
  }

  #since(at: number): number {
    return Math.max(0, at - (this.#shownAt ?? at));
  }

  #note(event: AnswerEvent): void {
    if (!this.#hasEnded) this.#answer = note(this.#answer, event);
  }

  #step(step: TurnedStep): void {
    const before = this.#answer;
    this.#refusal = undefined;
    this.#answer = step.answer;
    if (step.shown !== undefined) this.motion.show(before, step.shown);
  }

  #end(): void {
    this.#hasEnded = true;
    const { start, cube, line, events } = this.#answer;
    this.#onended({
      verdict: judge(this.position, cube),
      measured: measureAnswer(events, { hold: start.hold }),
      hints: this.#hints,
      turns: simplifyTurns(line),
      reported: false,
      shownTheWay: this.#hints.includes("whole-way"),
    });
  }
}
