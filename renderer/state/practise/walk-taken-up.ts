/** A walk on the learner's cube that was under way when the window closed, and whether it still leads to the case. */
import type { Position } from "../../../core/cases/position";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import { agreesWith } from "../../../core/cube/partly-known";
import type { Turn } from "../../../core/cube/turns";
import type { RoundItem } from "../../../core/memory/round";
import type { StoredWalk } from "./desk-schema";
import type { MyCubeStage } from "./my-cube-stage";
import {
  asSetUp,
  asUsuallyHeld,
  isSameWalk,
  type StepOn,
} from "./my-cube-way-on";
import { cubeOfWalk, type TurnWalk } from "./turn-walk";

/** What a stored walk is compared with. */
export interface WalkContext {
  readonly position: Position;
  /** What would come next without the walk. */
  readonly next: StepOn;
  readonly asking: RoundItem["asking"];
  /** The way that is taught, as it is played on the position. */
  readonly way: readonly Turn[];
}

/** A stored walk on the cube that it was begun on: `own` is what is known of it before the first turn. */
export function storedAsWalk(
  { kind, turns, done }: StoredWalk,
  own: PartlyKnownCubies,
  position: Position,
): TurnWalk {
  const start =
    kind === "shown" ? asSetUp(own, position) : asUsuallyHeld(own, position);
  return { start, turns, done };
}

/** Where an attempt goes on with a walk; undefined where it leads elsewhere by now. */
export function stageOfWalk(
  kind: StoredWalk["kind"],
  walk: TurnWalk,
  { position, next, asking, way }: WalkContext,
): Extract<MyCubeStage, { readonly walk: TurnWalk }> | undefined {
  switch (kind) {
    case "set-up":
      return isSetUpBy(walk, position) ? { kind, walk } : undefined;
    case "bring":
      return next.kind === kind && isSameWalk(next.walk, walk)
        ? { ...next, walk }
        : undefined;
    case "shown":
      return next.kind === "ready" &&
        asking === "shown" &&
        isSameWalk({ ...walk, turns: way }, walk)
        ? { kind, walk }
        : undefined;
  }
}

function isSetUpBy(walk: TurnWalk, position: Position): boolean {
  const end = cubeOfWalk({ ...walk, done: walk.turns.length });
  return agreesWith(end.cubies, position.cubies);
}
