/**
 * Sets a case up on the cube in the learner's hands: pieces that the app lost
 * sight of are asked for one by one and brought home, a set-up is looked for
 * and walked through. Whatever went wrong on the way, there is a way on.
 */
import { shownPosition } from "../../../core/cases/known-layer";
import type { Position } from "../../../core/cases/position";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import type { StoredWalk } from "./desk-schema";
import type { FollowedCube } from "./followed-cube.svelte";
import type { MyCubeStart, SetUpStage } from "./my-cube-stage";
import {
  asUsuallyHeld,
  positionToSetUp,
  type StepOn,
  stepOn,
} from "./my-cube-way-on";
import { onlyHome, UNKNOWN_CUBE } from "./own-cube";
import { SetUpSearch } from "./set-up-search";
import {
  beginWalk,
  cubeOfWalk,
  turnAskedFor,
  type TurnWalk,
  walkBack,
  walkOn,
} from "./turn-walk";
import { stageOfWalk, storedAsWalk } from "./walk-taken-up";

/** A set-up while it lasts, and again whenever the cube has gone astray. */
export class CubeSetUp {
  readonly #start: MyCubeStart;
  readonly #named: Position;
  readonly #own: FollowedCube;
  readonly #onready: () => void;
  readonly #search: SetUpSearch;
  #position: Position;
  #stage: SetUpStage | { readonly kind: "ready" } = $state.raw({
    kind: "searching",
    progress: 0,
  });

  /** Shape: `onready` hears when the cube shows the case. */
  constructor(start: MyCubeStart, own: FollowedCube, onready: () => void) {
    this.#start = start;
    this.#own = own;
    this.#onready = onready;
    this.#search = new SetUpSearch(start.findSetUp);
    this.#named = shownPosition(start.position);
    this.#position = $state.raw(this.#named);
  }

  /** What is set up: what the question shows, or the whole random position. */
  get position(): Position {
    return this.#position;
  }

  /** Where the set-up stands; ready: the cube shows the case. */
  get stage(): SetUpStage | { readonly kind: "ready" } {
    return this.#stage;
  }

  /** The cube as it should look now. */
  get cube(): HeldCube<PartlyKnownCubies> {
    const stage = this.#stage;
    return "walk" in stage
      ? cubeOfWalk(stage.walk)
      : asUsuallyHeld(this.#own.known ?? onlyHome([]), this.#position);
  }

  /**
   * Begins, with a stored walk where there is one. Where it leads elsewhere by
   * now, the turns that were made still count for what is known of the cube.
   * Returns the walk through a new case's way where that was under way.
   */
  begin(stored: StoredWalk | undefined): TurnWalk | undefined {
    const own = this.#own.known;
    if (stored === undefined || own === undefined) {
      this.goOn();
      return undefined;
    }
    if (stored.kind === "bring") this.#own.goOnPuttingRight();
    const next = this.#stepOn();
    const walk = storedAsWalk(stored, own, this.#position);
    const stage = stageOfWalk(stored.kind, walk, {
      position: this.#position,
      next,
      asking: this.#start.item.asking,
      way: this.#start.way,
    });
    if (stage?.kind === "shown") {
      this.#stage = { kind: "ready" };
      return stage.walk;
    }
    if (stage === undefined) {
      this.#own.becomes(cubeOfWalk(walk).cubies);
      this.goOn();
    } else this.#stage = stage;
    return undefined;
  }

  /** Whatever is missing for the set-up comes next. */
  goOn(): void {
    this.#search.stop();
    const next = this.#stepOn();
    if (next.kind === "search") void this.#searchSetUp();
    else if (next.kind === "ready") this.#ready();
    else this.#stage = next;
  }

  /** Looks for a set-up once more. */
  searchAgain(): void {
    if (this.#stage.kind === "no-set-up") this.goOn();
  }

  /** The attempt is left: nothing is looked for any more. */
  stop(): void {
    this.#search.stop();
  }

  /** The learner found the piece that is asked for. */
  found(position: number, orientation: number): void {
    const stage = this.#stage;
    if (stage.kind !== "find") return;
    this.#own.found(stage.piece, position, orientation);
    this.goOn();
    this.#start.onmoved();
  }

  /** The learner said how the piece at the place that is asked about is turned. */
  told(orientation: number): void {
    const stage = this.#stage;
    if (stage.kind !== "tell") return;
    this.#own.told(stage.place, orientation);
    this.goOn();
    this.#start.onmoved();
  }

  /** The turn that is asked for is made. */
  turnMade(): void {
    const stage = this.#stage;
    if (!("walk" in stage)) return;
    this.#own.turned();
    const walk = walkOn(stage.walk);
    this.#stage = { ...stage, walk };
    if (turnAskedFor(walk) === undefined) {
      this.#own.becomes(cubeOfWalk(walk).cubies);
      if (stage.kind === "bring") this.goOn();
      else this.#ready();
    }
    this.#start.onmoved();
  }

  /** The last turn was taken back. */
  turnBack(): void {
    const stage = this.#stage;
    if (!("walk" in stage)) return;
    this.#stage = { ...stage, walk: walkBack(stage.walk) };
    this.#start.onmoved();
  }

  #stepOn(): StepOn {
    const own = this.#own.known;
    const { position: whole, wayChoice, item } = this.#start;
    this.#position = positionToSetUp(own, { whole, named: this.#named }, item);
    return stepOn(own, {
      position: this.#position,
      wayChoice,
      isPuttingRight: this.#own.isPuttingRight,
    });
  }

  async #searchSetUp(): Promise<void> {
    this.#stage = { kind: "searching", progress: 0 };
    const from = asUsuallyHeld(this.#own.known ?? UNKNOWN_CUBE, this.#position);
    const found = await this.#search.run(
      from,
      this.#position,
      this.#start.item.seed,
      (progress) => {
        this.#stage = { kind: "searching", progress };
      },
    );
    // Whatever was said meanwhile began another search.
    if (found === undefined) return;
    this.#stage = found.ok
      ? { kind: "set-up", walk: beginWalk(from, found.value) }
      : { kind: "no-set-up", error: found.error };
    this.#start.onmoved();
  }

  #ready(): void {
    this.#onready();
    this.#stage = { kind: "ready" };
  }
}
