/**
 * One attempt at a case on the cube in the learner's hands: it is set up one
 * turn at a time, seen, answered away from the app, and reported.
 */
import type { Position } from "../../../core/cases/position";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import type { Hint } from "../../../core/memory/review";
import type { RoundItem } from "../../../core/memory/round";
import { CubeSetUp } from "./cube-set-up.svelte";
import type { StoredWalk } from "./desk-schema";
import { FollowedCube } from "./followed-cube.svelte";
import { LookAround } from "./look-around.svelte";
import { cubeAfterReport, myCubeAnswer } from "./my-cube-answer";
import { MyCubeNotes } from "./my-cube-notes.svelte";
import type {
  AnswerStage,
  Astray,
  MyCubeStage,
  MyCubeStart,
  Report,
} from "./my-cube-stage";
import { asSetUp, asShown, cubeGoneAstray } from "./my-cube-way-on";
import { UNKNOWN_CUBE } from "./own-cube";
import {
  beginWalk,
  cubeOfWalk,
  turnAskedFor,
  type TurnWalk,
  walkBack,
  walkOn,
} from "./turn-walk";

/** An attempt while it lasts. Times given to it are of the page's running time. */
export class MyCubeAttempt {
  readonly answerWay = "my-cube";
  readonly isMarked: boolean;
  readonly isRetry: boolean;
  /** The way that is taught, as it is played on this position. */
  readonly way: readonly Turn[];
  readonly looking = new LookAround();
  readonly #start: MyCubeStart;
  readonly #own: FollowedCube;
  readonly #notes: MyCubeNotes;
  readonly #setUp: CubeSetUp;
  #item: RoundItem;
  /** Where the answer stands, once the case is set up. */
  #answer: AnswerStage = $state.raw({ kind: "see" });

  constructor(start: MyCubeStart) {
    this.#start = start;
    this.isMarked = start.isMarked;
    this.isRetry = start.isRetry;
    this.way = start.way;
    this.#item = $state.raw(start.item);
    this.#own = new FollowedCube(start.ownCube);
    this.#notes = new MyCubeNotes(start.item.hints ?? []);
    this.#setUp = new CubeSetUp(start, this.#own, () => this.#ask());
    const shown = this.#setUp.begin(start.walk);
    if (shown !== undefined) this.#answer = { kind: "shown", walk: shown };
  }

  /** What is asked. Counts as interrupted once it had to be begun again. */
  get item(): RoundItem {
    return this.#item;
  }

  /** What is set up: what the question shows, or the whole random position. */
  get position(): Position {
    return this.#setUp.position;
  }

  get stage(): MyCubeStage {
    const { stage } = this.#setUp;
    return stage.kind === "ready" ? this.#answer : stage;
  }

  /**
   * What is known of the learner's cube, before the walk where one is under
   * way; undefined: nothing. While they answer nobody sees their turns.
   */
  get ownCube(): PartlyKnownCubies | undefined {
    return this.#isAnswering ? undefined : this.#own.known;
  }

  /** Whether the place that was told last for a piece can still be told anew. */
  get canTellAnew(): boolean {
    const { stage } = this;
    const isBeforeTurn = "walk" in stage && stage.walk.done === 0;
    return (
      this.#own.wasTold &&
      (stage.kind === "find" || stage.kind === "tell" || isBeforeTurn)
    );
  }

  /** Help asked for so far. */
  get hints(): readonly Hint[] {
    return this.#notes.hints;
  }

  /** What is known of the learner's cube if it is put down now. */
  get cubeNow(): PartlyKnownCubies | undefined {
    const { stage } = this;
    return "walk" in stage ? cubeOfWalk(stage.walk).cubies : this.ownCube;
  }

  /** The walk under way, as it is stored; with `ownCube` it comes back after a reload. */
  get storedWalk(): StoredWalk | undefined {
    const { stage } = this;
    return "walk" in stage
      ? { kind: stage.kind, turns: stage.walk.turns, done: stage.walk.done }
      : undefined;
  }

  /** The cube as it should look now. */
  get cube(): HeldCube<PartlyKnownCubies> {
    if (this.#setUp.stage.kind !== "ready") return this.#setUp.cube;
    return this.#answer.kind === "shown"
      ? cubeOfWalk(this.#answer.walk)
      : asShown(this.#own.known, this.position);
  }

  /** The attempt is left: nothing is looked for any more. */
  stop(): void {
    this.#setUp.stop();
  }

  /** The learner says what their cube has now. */
  say(ownCube: PartlyKnownCubies | undefined): void {
    this.#own.say(ownCube);
    this.#setUp.goOn();
    this.#start.onmoved();
  }

  /**
   * The learner's cube is not what the app takes it for. Who loses the base
   * while answering has lost what had to stay placed: the answer ends as not
   * done. A cube that looks different, or is solved, says nothing about the
   * answer: none is recorded, the case is set up again, and its answer counts
   * as interrupted, for it was seen before.
   */
  astray(what: Astray, at: number): void {
    const { kind } = this.stage;
    if (kind === "ended") return;
    const standing = cubeGoneAstray(what, this.position);
    if (this.#isAnswering && what === "base-lost") {
      this.done(at);
      this.#end("not-done", standing, true);
      return;
    }
    if (this.#isAnswering || kind === "see")
      this.#item = { ...this.#item, interrupted: true };
    this.#notes.startOver();
    this.say(standing);
  }

  /** Looks for a set-up once more. */
  searchAgain(): void {
    this.#setUp.searchAgain();
  }

  /** The learner found the piece that is asked for. */
  found(position: number, orientation: number): void {
    this.#setUp.found(position, orientation);
  }

  /** The learner said how the piece at the place that is asked about is turned. */
  told(orientation: number): void {
    this.#setUp.told(orientation);
  }

  /** The place that was told last was wrong: that piece is asked for again. */
  tellAnew(): void {
    if (!this.canTellAnew) return;
    this.#own.tellAnew();
    this.#setUp.goOn();
    this.#start.onmoved();
  }

  /** The turn that is asked for is made. */
  turnMade(at: number): void {
    const { stage } = this;
    if (stage.kind === "shown") this.#shownTurn(stage.walk, at);
    else this.#setUp.turnMade();
  }

  /** The last turn was taken back. */
  turnBack(): void {
    const { stage } = this;
    if (stage.kind === "shown") {
      this.#answer = { kind: "shown", walk: walkBack(stage.walk) };
      this.#start.onmoved();
    } else this.#setUp.turnBack();
  }

  /** The learner has seen the case: time counts from here. */
  seen(at: number): void {
    if (this.stage.kind !== "see") return;
    this.#notes.seen(at);
    this.#answer = { kind: "turning", hasSaidKnown: false };
    this.#start.onmoved();
  }

  /** The learner knows what it is, and begins to turn. */
  known(at: number): void {
    const { stage } = this;
    if (stage.kind !== "turning" || stage.hasSaidKnown) return;
    this.#notes.known(at);
    this.#answer = { kind: "turning", hasSaidKnown: true };
  }

  /** The learner is done turning. */
  done(at: number): void {
    if (this.stage.kind !== "turning") return;
    this.#notes.done(at);
    this.#answer = { kind: "report" };
  }

  /** The learner wants to see the way instead. */
  showMe(at: number): void {
    const { kind } = this.stage;
    if (kind !== "see" && kind !== "turning") return;
    this.#notes.shownTheWay(at);
    // Before the clock ran nothing was turned: the cube is as it was set up.
    this.#end("not-done", kind === "see" ? this.#own.known : undefined);
  }

  /** Helps one step further; the last step shows the whole way, which is a miss. */
  hint(at: number): void {
    const { kind } = this.stage;
    const next = this.#notes.nextHint;
    if (next === undefined || (kind !== "see" && kind !== "turning")) return;
    if (next === "whole-way") {
      this.showMe(at);
      return;
    }
    this.#notes.hinted(next, at);
    this.#start.onhinted(this.hints);
  }

  /** The learner says what the cube shows. */
  report(report: Report): void {
    if (this.stage.kind !== "report") return;
    this.#end(report, cubeAfterReport(this.position, report), true);
  }

  /** The learner leaves an answer they have begun: not done, and nobody knows how the cube looks. */
  leave(at: number): void {
    this.seen(at);
    this.done(at);
    if (this.stage.kind === "report") this.#end("not-done", undefined);
  }

  get #isAnswering(): boolean {
    const { kind } = this.stage;
    return kind === "turning" || kind === "report";
  }

  /** The case is set up: a new one is shown, another waits to be seen. */
  #ask(): void {
    this.#start.onset();
    const cube = asSetUp(this.#own.known ?? UNKNOWN_CUBE, this.position);
    this.#answer =
      this.#item.asking === "shown" && this.way.length > 0
        ? { kind: "shown", walk: beginWalk(cube, this.way) }
        : { kind: "see" };
  }

  #shownTurn(before: TurnWalk, at: number): void {
    this.#own.turned();
    this.#notes.shownTurn(at);
    const walk = walkOn(before);
    this.#answer = { kind: "shown", walk };
    if (turnAskedFor(walk) === undefined) {
      this.#notes.done(at);
      this.#end("done", cubeOfWalk(walk).cubies, true);
    }
    this.#start.onmoved();
  }

  /** Ends the attempt. What is known of the cube then comes first: whoever hears of the end reads it. */
  #end(
    report: Report,
    standing: PartlyKnownCubies | undefined,
    reported = false,
  ): void {
    this.#own.becomes(standing);
    this.#answer = { kind: "ended" };
    const { events, hints } = this.#notes;
    this.#start.onended(
      myCubeAnswer(this.position, report, events, hints, reported),
    );
  }
}
