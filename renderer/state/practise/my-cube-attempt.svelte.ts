/**
 * One attempt at a case on the cube in the learner's hands: it is set up one
 * turn at a time, seen, answered away from the app, and reported.
 *
 * The app follows what it knows of the cube. Whatever went wrong on the way,
 * there is always a way on: pieces it lost sight of are asked for one by one
 * and brought home.
 */
import type { Verdict } from "../../../core/answer/judge";
import { type AnswerEvent, measureAnswer } from "../../../core/answer/measure";
import { markedOf, targetsOf } from "../../../core/cases/constraint";
import {
  knownPieces,
  partlyKnownPosition,
} from "../../../core/cases/partly-known-position";
import { type Position, startOf } from "../../../core/cases/position";
import { homeOfCorner, homeOfEdge } from "../../../core/cases/stage";
import { holdOfVariant } from "../../../core/cases/variant";
import {
  turnsForPosition,
  turnsToAnswer,
} from "../../../core/cases/way-for-position";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import { agreesWith } from "../../../core/cube/partly-known";
import type { Turn } from "../../../core/cube/turns";
import { present } from "../../../core/invariant";
import { type Hint, HINTS } from "../../../core/memory/review";
import type { RoundItem } from "../../../core/memory/round";
import { formatTurns } from "../../../core/notation/format";
import type { StoredWalk } from "./desk-schema";
import { LookAround } from "./look-around.svelte";
import {
  type CubePiece,
  isHome,
  isKnown,
  onlyHome,
  withPieceAt,
} from "./own-cube";
import type { MyCubeStage, MyCubeStart, Report } from "./my-cube-stage";
import { piecesOf } from "./prompt-words";
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
  readonly item: RoundItem;
  readonly position: Position;
  readonly isRetry: boolean;
  /** The way that is taught, as it is played on this position. */
  readonly way: readonly Turn[];
  readonly looking = new LookAround();
  readonly #start: MyCubeStart;
  #stage: MyCubeStage = $state.raw({ kind: "searching", progress: 0 });
  #ownCube: PartlyKnownCubies | undefined = $state.raw();
  #hints: readonly Hint[] = $state.raw([]);
  #events: readonly AnswerEvent[] = [];
  #seenAt = 0;
  /** Counts searches: a result that comes after another search began is dropped. */
  #search = 0;

  constructor(start: MyCubeStart) {
    this.#start = start;
    this.item = start.item;
    this.isRetry = start.isRetry;
    this.position = partlyKnownPosition(start.position, "named");
    this.way = turnsForPosition(start.position, start.wayChoice);
    this.#ownCube = start.ownCube;
    if (!this.#takeUp(start.walk)) this.#goOn();
  }

  get stage(): MyCubeStage {
    return this.#stage;
  }

  /** What is known of the learner's cube now; undefined: nothing was said yet. */
  get ownCube(): PartlyKnownCubies | undefined {
    return this.#ownCube;
  }

  /** Help asked for so far. */
  get hints(): readonly Hint[] {
    return this.#hints;
  }

  /** What is known of the learner's cube if it is put down now. */
  get cubeNow(): PartlyKnownCubies | undefined {
    const stage = this.#stage;
    if (stage.kind === "turning" || stage.kind === "report") return undefined;
    return "walk" in stage ? cubeOfWalk(stage.walk).cubies : this.#ownCube;
  }

  /** The walk under way, as it is stored; with `ownCube` it comes back after a reload. */
  get storedWalk(): StoredWalk | undefined {
    const stage = this.#stage;
    return stage.kind === "set-up" || stage.kind === "bring"
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
      case "has":
      case "searching":
      case "no-set-up":
        return {
          cubies: this.#ownCube ?? onlyHome([]),
          hold: this.#usualHold,
        };
      case "see":
      case "turning":
      case "report":
      case "ended":
        return startOf(this.position);
    }
  }

  /** The learner says what their cube has now, or that it does not look as shown. */
  say(ownCube: PartlyKnownCubies | undefined): void {
    this.#ownCube = ownCube;
    this.#goOn();
    this.#start.onmoved();
  }

  /** The learner found the piece that is asked for. */
  found(position: number, orientation: number): void {
    const stage = this.#stage;
    if (stage.kind !== "find") return;
    this.#ownCube = withPieceAt(
      this.#ownCube ?? onlyHome([]),
      stage.piece,
      position,
      orientation,
    );
    this.#goOn();
    this.#start.onmoved();
  }

  /** The turn that is asked for is made. */
  turnMade(at: number): void {
    const stage = this.#stage;
    if (
      stage.kind !== "set-up" &&
      stage.kind !== "bring" &&
      stage.kind !== "shown"
    )
      return;
    const walk = walkOn(stage.walk);
    this.#stage = { ...stage, walk };
    if (turnAskedFor(walk) === undefined) this.#walked(at, walk);
    this.#start.onmoved();
  }

  /** The last turn was taken back. */
  turnBack(): void {
    const stage = this.#stage;
    if (
      stage.kind !== "set-up" &&
      stage.kind !== "bring" &&
      stage.kind !== "shown"
    )
      return;
    this.#stage = { ...stage, walk: walkBack(stage.walk) };
    this.#start.onmoved();
  }

  /** The learner has seen the case: time counts from here. */
  seen(at: number): void {
    if (this.#stage.kind !== "see") return;
    this.#seenAt = at;
    this.#note({ kind: "seen", at: 0 });
    this.#stage = { kind: "turning", hasSaidKnown: false };
  }

  /** The learner knows what it is, and begins to turn. */
  known(at: number): void {
    const stage = this.#stage;
    if (stage.kind !== "turning" || stage.hasSaidKnown) return;
    this.#note({ kind: "know", at: at - this.#seenAt });
    this.#stage = { kind: "turning", hasSaidKnown: true };
  }

  /** The learner is done turning. */
  done(at: number): void {
    if (this.#stage.kind !== "turning") return;
    this.#note({ kind: "done", at: at - this.#seenAt });
    this.#stage = { kind: "report" };
  }

  /** The learner wants to see the way instead. */
  showMe(at: number): void {
    const { kind } = this.#stage;
    if (kind !== "see" && kind !== "turning") return;
    this.#hints = [...this.#hints, "whole-way"];
    this.#note({
      kind: "show-me",
      at: kind === "see" ? 0 : at - this.#seenAt,
    });
    // Before the clock ran nothing was turned: the cube is as it was set up.
    const standing = kind === "see" ? this.#ownCube : undefined;
    this.#end("not-done");
    this.#ownCube = standing;
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
      at: kind === "see" ? 0 : at - this.#seenAt,
    });
  }

  /** The learner says what the cube shows. */
  report(report: Report): void {
    if (this.#stage.kind === "report") this.#end(report);
  }

  get #usualHold() {
    return holdOfVariant({ home: 0, seenFrom: 0 }, this.item.hold);
  }

  #note(event: AnswerEvent): void {
    this.#events = [...this.#events, event];
  }

  /** Goes on with a stored walk, if it still leads where it should. */
  #takeUp(stored: StoredWalk | undefined): boolean {
    const own = this.#ownCube;
    if (stored === undefined || own === undefined) return false;
    const walk: TurnWalk = {
      start: { cubies: own, hold: this.#usualHold },
      turns: stored.turns,
      done: stored.done,
    };
    if (stored.kind === "set-up") {
      const end = cubeOfWalk({ ...walk, done: walk.turns.length });
      if (!agreesWith(end.cubies, this.position.cubies)) return false;
      this.#stage = { kind: "set-up", walk };
      return true;
    }
    this.#goOn();
    const stage = this.#stage;
    if (
      stage.kind === "bring" &&
      formatTurns(stage.walk.turns) === formatTurns(stored.turns)
    )
      this.#stage = { ...stage, walk };
    return true;
  }

  /** Whatever is missing for the set-up comes next: what the cube has, a lost piece, the set-up itself. */
  #goOn(): void {
    const own = this.#ownCube;
    this.#search += 1;
    if (own === undefined) {
      this.#stage = { kind: "has" };
      return;
    }
    const needed = piecesOf(knownPieces(this.position, "named"));
    for (const piece of needed) {
      if (!isKnown(own, piece)) {
        this.#stage = { kind: "find", piece };
        return;
      }
      if (isHome(own, piece)) continue;
      const walk = this.#wayHome(own, piece);
      if (walk === undefined) continue;
      this.#stage = { kind: "bring", piece, walk };
      return;
    }
    void this.#searchSetUp(own);
  }

  #wayHome(own: PartlyKnownCubies, piece: CubePiece): TurnWalk | undefined {
    const cube = { cubies: own, hold: this.#usualHold };
    const home =
      piece.kind === "edge"
        ? homeOfEdge(piece.piece)
        : homeOfCorner(piece.piece);
    const stage =
      piece.kind === "edge" ? "first-layer-edges" : "first-layer-corners";
    const turns = turnsToAnswer(
      cube,
      stage,
      present(home, "positions name pieces of the first layer"),
      this.item.hold,
      this.#start.wayChoice,
    );
    return turns === undefined ? undefined : beginWalk(cube, turns);
  }

  async #searchSetUp(own: PartlyKnownCubies): Promise<void> {
    const search = this.#search;
    this.#stage = { kind: "searching", progress: 0 };
    const from = { cubies: own, hold: this.#usualHold };
    const turns = await this.#start.findSetUp(
      from,
      this.position,
      this.item.seed,
      {
        onprogress: (progress) => {
          if (search === this.#search)
            this.#stage = { kind: "searching", progress };
        },
      },
    );
    // Whatever was said meanwhile began another search.
    if (search !== this.#search) return;
    if (turns === undefined) {
      this.#stage = { kind: "no-set-up" };
      return;
    }
    this.#stage = { kind: "set-up", walk: beginWalk(from, turns) };
    this.#start.onmoved();
  }

  #walked(at: number, walk: TurnWalk): void {
    const stage = this.#stage;
    this.#ownCube = cubeOfWalk(walk).cubies;
    if (stage.kind === "bring") this.#goOn();
    else if (stage.kind === "shown") {
      this.#note({ kind: "done", at: at - this.#seenAt });
      this.#end("done");
    } else {
      this.#start.onset();
      this.#seenAt = at;
      this.#stage =
        this.item.asking === "shown"
          ? { kind: "shown", walk: beginWalk(cubeOfWalk(walk), this.way) }
          : { kind: "see" };
    }
  }

  #end(report: Report): void {
    const targets = targetsOf(this.position);
    const marked = markedOf(this.position);
    const isRight = report !== "not-done";
    const verdict: Verdict = isRight
      ? { right: true }
      : {
          right: false,
          pieceState: "elsewhere",
          lost: { corners: [], edges: [] },
          missing: targets,
        };
    // What was asked for is home; how the rest was turned nobody saw.
    this.#ownCube = isRight
      ? onlyHome([...piecesOf(marked), ...piecesOf(targets)])
      : undefined;
    const measured = measureAnswer(this.#events, {
      hold: startOf(this.position).hold,
    });
    this.#stage = { kind: "ended" };
    this.#start.onended({
      verdict,
      measured: {
        ...measured,
        corrections: measured.corrections + (report === "corrected" ? 1 : 0),
      },
      hints: this.#hints,
      turns: [],
      reported: true,
      shownTheWay: this.#hints.includes("whole-way"),
    });
  }
}
