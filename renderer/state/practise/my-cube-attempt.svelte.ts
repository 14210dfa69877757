/**
 * One attempt at a case on the cube in the learner's hands: it is set up one
 * turn at a time, seen, answered away from the app, and reported.
 *
 * The app follows what it knows of the cube. Whatever went wrong on the way,
 * there is always a way on: pieces it lost sight of are asked for one by one
 * and brought home.
 */
import type { AnswerEvent } from "../../../core/answer/measure";
import { caseEntry } from "../../../core/cases/case-table";
import { shownPosition } from "../../../core/cases/known-layer";
import { type Position, startOf } from "../../../core/cases/position";
import {
  isFullyKnown,
  type PartlyKnownCubies,
} from "../../../core/cube/cubies";
import { withForcedPieces } from "../../../core/cube/forced-pieces";
import type { HeldCube } from "../../../core/cube/held-cube";
import { agreesWith } from "../../../core/cube/partly-known";
import type { Turn } from "../../../core/cube/turns";
import { type Hint, HINTS } from "../../../core/memory/review";
import type { RoundItem } from "../../../core/memory/round";
import type { StoredWalk } from "./desk-schema";
import { LookAround } from "./look-around.svelte";
import { cubeAfterReport, myCubeAnswer } from "./my-cube-answer";
import type { Astray, MyCubeStage, MyCubeStart, Report } from "./my-cube-stage";
import {
  asSetUp,
  asUsuallyHeld,
  cubeGoneAstray,
  isSameWalk,
  stepOn,
} from "./my-cube-way-on";
import { onlyHome, UNKNOWN_CUBE, withPieceAt, withTurnedAt } from "./own-cube";
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
  readonly #named: Position;
  #item: RoundItem;
  #position: Position;
  #stage: MyCubeStage = $state.raw({ kind: "searching", progress: 0 });
  #ownCube: PartlyKnownCubies | undefined = $state.raw();
  #hints: readonly Hint[];
  /** What was known before each piece that was found since the last turn. */
  #knownBefore: readonly PartlyKnownCubies[] = $state.raw([]);
  #isPuttingRight = false;
  #events: readonly AnswerEvent[] = [];
  #seenAt: number | undefined;
  #searching = new AbortController();

  constructor(start: MyCubeStart) {
    this.#start = start;
    this.isMarked = start.isMarked;
    this.isRetry = start.isRetry;
    this.way = start.way;
    this.#named = shownPosition(start.position);
    this.#item = $state.raw(start.item);
    this.#hints = $state.raw(start.item.hints ?? []);
    this.#position = $state.raw(this.#named);
    this.#ownCube = start.ownCube;
    if (!this.#takeUp(start.walk)) this.#goOn();
  }

  /** What is asked. Counts as interrupted once it had to be begun again. */
  get item(): RoundItem {
    return this.#item;
  }

  /**
   * What is set up: what the question shows, by a few turns; where the whole
   * cube is known and the case is no longer new, the whole random position. In
   * the last layer there is little besides, and it would take more turns.
   */
  get position(): Position {
    return this.#position;
  }

  get stage(): MyCubeStage {
    return this.#stage;
  }

  /**
   * What is known of the learner's cube, before the walk where one is under
   * way; undefined: nothing. While they answer nobody sees their turns.
   */
  get ownCube(): PartlyKnownCubies | undefined {
    return this.#isAnswering ? undefined : this.#ownCube;
  }

  /** Whether the place that was told last for a piece can still be told anew. */
  get canTellAnew(): boolean {
    const stage = this.#stage;
    const isBeforeTurn = "walk" in stage && stage.walk.done === 0;
    return (
      this.#knownBefore.length > 0 &&
      (stage.kind === "find" || stage.kind === "tell" || isBeforeTurn)
    );
  }

  /** Help asked for so far. */
  get hints(): readonly Hint[] {
    return this.#hints;
  }

  /** What is known of the learner's cube if it is put down now. */
  get cubeNow(): PartlyKnownCubies | undefined {
    const stage = this.#stage;
    return "walk" in stage ? cubeOfWalk(stage.walk).cubies : this.ownCube;
  }

  /** The walk under way, as it is stored; with `ownCube` it comes back after a reload. */
  get storedWalk(): StoredWalk | undefined {
    const stage = this.#stage;
    return "walk" in stage
      ? { kind: stage.kind, turns: stage.walk.turns, done: stage.walk.done }
      : undefined;
  }

  /** The cube as it should look now. */
  get cube(): HeldCube<PartlyKnownCubies> {
    const stage = this.#stage;
    switch (stage.kind) {
      case "bring":
      case "set-up":
      case "shown":
        return cubeOfWalk(stage.walk);
      case "find":
      case "tell":
      case "has":
      case "searching":
      case "no-set-up":
        return asUsuallyHeld(this.#ownCube ?? onlyHome([]), this.#position);
      case "see":
      case "turning":
      case "report":
      case "ended":
        return this.#asShown;
    }
  }

  /** The attempt is left: nothing is looked for any more. */
  stop(): void {
    this.#searching.abort();
  }

  /** The learner says what their cube has now. */
  say(ownCube: PartlyKnownCubies | undefined): void {
    this.#ownCube = ownCube;
    this.#isPuttingRight = false;
    this.#knownBefore = [];
    this.#goOn();
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
    if (this.#stage.kind === "ended") return;
    const standing = cubeGoneAstray(what, this.#position);
    if (this.#isAnswering && what === "base-lost") {
      this.done(at);
      this.#end("not-done", standing, true);
      return;
    }
    if (this.#isAnswering || this.#stage.kind === "see")
      this.#item = { ...this.#item, interrupted: true };
    this.#events = [];
    this.#seenAt = undefined;
    this.say(standing);
  }

  /** Looks for a set-up once more. */
  searchAgain(): void {
    if (this.#stage.kind === "no-set-up") this.#goOn();
  }

  /** The learner found the piece that is asked for. */
  found(position: number, orientation: number): void {
    const stage = this.#stage;
    if (stage.kind !== "find") return;
    const before = this.#ownCube ?? UNKNOWN_CUBE;
    this.#knownBefore = [...this.#knownBefore, before];
    this.#isPuttingRight = true;
    this.#ownCube = withForcedPieces(
      withPieceAt(before, stage.piece, position, orientation),
    );
    this.#goOn();
    this.#start.onmoved();
  }

  /** The learner said how the piece at the place that is asked about is turned. */
  told(orientation: number): void {
    const stage = this.#stage;
    if (stage.kind !== "tell") return;
    const before = this.#ownCube ?? UNKNOWN_CUBE;
    this.#knownBefore = [...this.#knownBefore, before];
    this.#ownCube = withForcedPieces(
      withTurnedAt(before, stage.place, orientation),
    );
    this.#goOn();
    this.#start.onmoved();
  }

  /** The place that was told last was wrong: that piece is asked for again. */
  tellAnew(): void {
    if (!this.canTellAnew) return;
    this.#ownCube = this.#knownBefore.at(-1);
    this.#knownBefore = this.#knownBefore.slice(0, -1);
    this.#goOn();
    this.#start.onmoved();
  }

  /** The turn that is asked for is made. */
  turnMade(at: number): void {
    const stage = this.#stage;
    if (!("walk" in stage)) return;
    this.#knownBefore = [];
    if (stage.kind === "shown") this.#seenAt ??= at;
    const walk = walkOn(stage.walk);
    this.#stage = { ...stage, walk };
    if (turnAskedFor(walk) === undefined) this.#walked(at, walk);
    this.#start.onmoved();
  }

  /** The last turn was taken back. */
  turnBack(): void {
    const stage = this.#stage;
    if (!("walk" in stage)) return;
    this.#stage = { ...stage, walk: walkBack(stage.walk) };
    this.#start.onmoved();
  }

  /** The learner has seen the case: time counts from here. */
  seen(at: number): void {
    if (this.#stage.kind !== "see") return;
    this.#seenAt = at;
    this.#note({ kind: "seen", at: 0 });
    this.#stage = { kind: "turning", hasSaidKnown: false };
    this.#start.onmoved();
  }

  /** The learner knows what it is, and begins to turn. */
  known(at: number): void {
    const stage = this.#stage;
    if (stage.kind !== "turning" || stage.hasSaidKnown) return;
    this.#note({ kind: "know", at: this.#since(at) });
    this.#stage = { kind: "turning", hasSaidKnown: true };
  }

  /** The learner is done turning. */
  done(at: number): void {
    if (this.#stage.kind !== "turning") return;
    this.#note({ kind: "done", at: this.#since(at) });
    this.#stage = { kind: "report" };
  }

  /** The learner wants to see the way instead. */
  showMe(at: number): void {
    const { kind } = this.#stage;
    if (kind !== "see" && kind !== "turning") return;
    this.#hints = [...this.#hints, "whole-way"];
    this.#note({
      kind: "show-me",
      at: kind === "see" ? 0 : this.#since(at),
    });
    // Before the clock ran nothing was turned: the cube is as it was set up.
    this.#end("not-done", kind === "see" ? this.#ownCube : undefined);
  }

  /** Helps one step further; the last step shows the whole way, which is a miss. */
  hint(at: number): void {
    const { kind } = this.#stage;
    const next = HINTS[this.#hints.length];
    if (next === undefined || (kind !== "see" && kind !== "turning")) return;
    if (next === "whole-way") {
      this.showMe(at);
      return;
    }
    this.#hints = [...this.#hints, next];
    this.#note({
      kind: "hint",
      hint: next,
      at: kind === "see" ? 0 : this.#since(at),
    });
    this.#start.onhinted(this.#hints);
  }

  /** The learner says what the cube shows. */
  report(report: Report): void {
    if (this.#stage.kind !== "report") return;
    this.#end(report, cubeAfterReport(this.#position, report), true);
  }

  /** The learner leaves an answer they have begun: not done, and nobody knows how the cube looks. */
  leave(at: number): void {
    this.seen(at);
    this.done(at);
    if (this.#stage.kind === "report") this.#end("not-done", undefined);
  }

  /**
   * The case as it was set up. Of the last layer the picture may show more than
   * the stage sees, as far as it is known: it looks like the cube in the hands.
   */
  get #asShown(): HeldCube<PartlyKnownCubies> {
    const shown = startOf(this.#position);
    const own = this.#ownCube;
    return own !== undefined &&
      this.#isAboutLastLayer &&
      agreesWith(own, shown.cubies)
      ? { cubies: own, hold: shown.hold }
      : shown;
  }

  get #isAboutLastLayer(): boolean {
    return caseEntry(this.#position.case).group === "last-layer";
  }

  get #isAnswering(): boolean {
    return this.#stage.kind === "turning" || this.#stage.kind === "report";
  }

  #since(at: number): number {
    return at - (this.#seenAt ?? at);
  }

  #note(event: AnswerEvent): void {
    this.#events = [...this.#events, event];
  }

  #stepOn() {
    const own = this.#ownCube;
    const { position, wayChoice } = this.#start;
    this.#position =
      own !== undefined &&
      isFullyKnown(own) &&
      !this.#item.bare &&
      !this.#isAboutLastLayer
        ? position
        : this.#named;
    return stepOn(own, {
      position: this.#position,
      wayChoice,
      isPuttingRight: this.#isPuttingRight,
    });
  }

  /**
   * Goes on with a stored walk. Where it leads elsewhere by now, the turns that
   * were made still count for what is known of the cube.
   */
  #takeUp(stored: StoredWalk | undefined): boolean {
    const own = this.#ownCube;
    if (stored === undefined || own === undefined) return false;
    const { kind, turns, done } = stored;
    this.#isPuttingRight = kind === "bring";
    const next = this.#stepOn();
    const start =
      kind === "shown"
        ? asSetUp(own, this.#position)
        : asUsuallyHeld(own, this.#position);
    const walk: TurnWalk = { start, turns, done };
    if (kind === "set-up" && this.#isSetUpBy(walk))
      this.#stage = { kind, walk };
    else if (
      kind === "bring" &&
      next.kind === kind &&
      isSameWalk(next.walk, walk)
    )
      this.#stage = { ...next, walk };
    else if (
      kind === "shown" &&
      next.kind === "ready" &&
      this.#item.asking === "shown" &&
      isSameWalk({ ...walk, turns: this.way }, walk)
    )
      this.#stage = { kind, walk };
    else {
      this.#ownCube = cubeOfWalk(walk).cubies;
      return false;
    }
    return true;
  }

  #isSetUpBy(walk: TurnWalk): boolean {
    const end = cubeOfWalk({ ...walk, done: walk.turns.length });
    return agreesWith(end.cubies, this.#position.cubies);
  }

  /** Whatever is missing for the set-up comes next. */
  #goOn(): void {
    this.#searching.abort();
    const next = this.#stepOn();
    if (next.kind === "search") void this.#searchSetUp();
    else if (next.kind === "ready") this.#ready();
    else this.#stage = next;
  }

  async #searchSetUp(): Promise<void> {
    const searching = new AbortController();
    const { signal } = searching;
    this.#searching = searching;
    this.#stage = { kind: "searching", progress: 0 };
    const from = asUsuallyHeld(this.#ownCube ?? UNKNOWN_CUBE, this.#position);
    const found = await this.#start.findSetUp(
      from,
      this.#position,
      this.#item.seed,
      {
        signal,
        onprogress: (progress) => {
          if (!signal.aborted) this.#stage = { kind: "searching", progress };
        },
      },
    );
    // Whatever was said meanwhile began another search.
    if (signal.aborted) return;
    this.#stage = found.ok
      ? { kind: "set-up", walk: beginWalk(from, found.value) }
      : { kind: "no-set-up", error: found.error };
    this.#start.onmoved();
  }

  #walked(at: number, walk: TurnWalk): void {
    const { kind } = this.#stage;
    this.#ownCube = cubeOfWalk(walk).cubies;
    if (kind === "bring") this.#goOn();
    else if (kind === "set-up") this.#ready();
    else {
      this.#note({ kind: "done", at: this.#since(at) });
      this.#end("done", this.#ownCube, true);
    }
  }

  /** The case is set up. */
  #ready(): void {
    this.#start.onset();
    const cube = asSetUp(this.#ownCube ?? UNKNOWN_CUBE, this.#position);
    this.#stage =
      this.#item.asking === "shown" && this.way.length > 0
        ? { kind: "shown", walk: beginWalk(cube, this.way) }
        : { kind: "see" };
  }

  /** Ends the attempt. What is known of the cube then comes first: whoever hears of the end reads it. */
  #end(
    report: Report,
    standing: PartlyKnownCubies | undefined,
    reported = false,
  ): void {
    this.#ownCube = standing;
    this.#stage = { kind: "ended" };
    const [events, hints] = [this.#events, this.#hints];
    this.#start.onended(
      myCubeAnswer(this.#position, report, events, hints, reported),
    );
  }
}
