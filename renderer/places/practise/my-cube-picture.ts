/** The picture beside "My cube", in any stage and at every step of an attempt. */
import { caseEntry } from "../../../core/cases/case-table";
import { targetsOf } from "../../../core/cases/constraint";
import { knownPieces } from "../../../core/cases/partly-known-position";
import { type Position, startOf } from "../../../core/cases/position";
import {
  lastLayerStickers,
  lastLayerTellingFacelets,
  slotFacelets,
} from "../../../core/cases/stickers-that-matter";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import type { CubePictureInput } from "../../../core/picture/cube-picture";
import { stageMirrors } from "../../../core/picture/mirrors-needed";
import type { CubePalette } from "../../../core/picture/palette";
import { type CubeView, highView } from "../../../core/picture/projection";
import {
  casePicture,
  type CubeOnItsWay,
  placeFacelets,
} from "../../state/practise/case-picture";
import type { MyCubeStage } from "../../state/practise/my-cube-stage";
import { turnAskedFor } from "../../state/practise/turn-walk";
import { questionMirrors } from "./question-mirrors";
import type { StageName } from "./stage-size.svelte";

/** What the picture depends on. */
export interface MyCubeShowing {
  readonly position: Position;
  readonly stage: MyCubeStage;
  /** The cube as it should look now. */
  readonly cube: HeldCube<PartlyKnownCubies>;
  /** Whether the pieces to bring home are outlined. */
  readonly isMarked: boolean;
  /** Whether their homes are marked. */
  readonly isHomeMarked: boolean;
  /** Whether a new case shows only what it names. */
  readonly isBare: boolean;
  readonly palette: CubePalette;
  readonly view: CubeView;
}

/** What a position's own stage adds: what is outlined, which mirrors tell, what is left bare. */
function ownPart({
  position,
  stage,
  cube,
  isMarked,
  isHomeMarked,
  view,
}: MyCubeShowing): Partial<CubePictureInput> {
  const entry = caseEntry(position.case);
  const isShown = ["see", "turning", "shown"].includes(stage.kind);
  switch (entry.group) {
    case "first-layer":
      return isShown
        ? { mirrors: questionMirrors(cube, targetsOf(position), view, false) }
        : {};
    case "slot": {
      const slot = slotFacelets(entry.stage, position.variant.home, cube);
      return {
        ...(isShown ? { mirrors: stageMirrors(slot.pieces.flat(), view) } : {}),
        pieces: isMarked ? slot.pieces : [],
        home: isHomeMarked ? slot.homes : [],
      };
    }
    case "last-layer": {
      if (!isShown) return {};
      const telling = lastLayerTellingFacelets(entry.stage, cube);
      return {
        mirrors: stageMirrors(telling, view),
        stickers: lastLayerStickers(entry.stage, cube),
      };
    }
  }
}

/** How large the cube of a case is beside its mirrors; the same while it is turned. */
export function sizeOf(position: Position): StageName {
  const entry = caseEntry(position.case);
  if (entry.group === "first-layer") return "miss";
  if (entry.group === "last-layer") return "myCubeHigh";
  const slot = slotFacelets(
    entry.stage,
    position.variant.home,
    startOf(position),
  );
  const { floor } = stageMirrors(slot.pieces.flat(), highView(1, "right"));
  return floor === true ? "myCubeHighWithFloor" : "myCubeHigh";
}

/** What the picture needs. */
export function myCubePicture(showing: MyCubeShowing): CubePictureInput {
  const { position, stage, cube, palette, view } = showing;
  const isFirstLayer = caseEntry(position.case).group === "first-layer";
  const targets = targetsOf(position);
  const walk = "walk" in stage ? stage.walk : undefined;
  const onItsWay: CubeOnItsWay =
    walk === undefined
      ? { start: cube, line: [], cube }
      : { start: walk.start, line: walk.turns.slice(0, walk.done), cube };
  return {
    ...casePicture(onItsWay, {
      named: showing.isBare ? knownPieces(position, "named") : undefined,
      outlined: isFirstLayer && showing.isMarked ? targets : undefined,
      homes: isFirstLayer && showing.isHomeMarked ? targets : undefined,
      palette,
      view,
      arrow: walk === undefined ? undefined : turnAskedFor(walk),
    }),
    ...ownPart(showing),
    ...(stage.kind === "tell"
      ? { pieces: [placeFacelets(cube, stage.place.kind, stage.place.piece)] }
      : {}),
  };
}
