import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { targetsOf } from "../../../core/cases/constraint";
import { startOf } from "../../../core/cases/position";
import { HOLDS } from "../../../core/cases/variant";
import { faceletFace } from "../../../core/cube/facelets";
import type { Face } from "../../../core/cube/faces";
import { showcasePosition } from "../../../renderer/state/case-showcase";
import { placeFacelets } from "../../../renderer/state/practise/case-picture";
import { LookAround } from "../../../renderer/state/practise/look-around.svelte";
import {
  homeSide,
  namedLook,
  smallView,
} from "../../../renderer/state/practise/looks";
import { piecesOf } from "../../../renderer/state/practise/prompt-words";

/** The side a camera sees beside the front. */
function sideSeen(yaw: number): Face {
  return yaw > 0 ? "R" : "L";
}

describe("where a case is looked at from", () => {
  it("shows the side on which a corner's home is, in both holds", () => {
    for (const hold of HOLDS)
      for (const id of FIRST_LAYER_IDS) {
        const position = showcasePosition(id, hold);
        const [piece] = piecesOf(targetsOf(position));
        if (piece?.kind !== "corner") continue;
        const faces = placeFacelets(
          startOf(position),
          "corner",
          piece.piece,
        ).map(faceletFace);
        const side = homeSide(position);
        expect(faces, `${id} ${hold}`).toContain(
          sideSeen(namedLook("front", side).yaw),
        );
        expect(faces).toContain(sideSeen(smallView(position, 20).yaw));
      }
  });

  it("comes back to the home's side after looking behind", () => {
    const looking = new LookAround(-1);
    const before = looking.look;
    expect(before.yaw).toBe(-25);
    looking.from("behind", 0);
    expect(looking.look.yaw).not.toBe(before.yaw);
    looking.from("behind", 1);
    expect(looking.look).toEqual(before);
  });
});
