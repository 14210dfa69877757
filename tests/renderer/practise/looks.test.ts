import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS } from "../../../core/cases/case-ids";
import { casesOfStage } from "../../../core/cases/case-table";
import { targetsOf } from "../../../core/cases/constraint";
import { startOf } from "../../../core/cases/position";
import { isSlotStage, STAGES } from "../../../core/cases/stage";
import { HOLDS } from "../../../core/cases/variant";
import { faceletFace } from "../../../core/cube/facelets";
import type { Face } from "../../../core/cube/faces";
import { showcasePosition } from "../../../renderer/state/case-showcase";
import { placeFacelets } from "../../../renderer/state/practise/case-picture";
import { LookAround } from "../../../renderer/state/practise/look-around.svelte";
import {
  homeSide,
  lookFrom,
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
        expect(faces, `${id} ${hold}`).toContain(
          sideSeen(namedLook("front", lookFrom(position)).yaw),
        );
        expect(faces).toContain(sideSeen(smallView(position, 20).yaw));
      }
  });

  it("shows both sides of a slot, and the top from higher up from the second layer on", () => {
    const usual = lookFrom(showcasePosition("E1", "up")).pitch;
    for (const stage of STAGES.slice(2)) {
      const [first] = casesOfStage(stage);
      if (first === undefined) throw new Error(`${stage} has no case`);
      const position = showcasePosition(first.id, "down");
      expect(lookFrom(position).pitch, stage).toBeGreaterThan(usual);
      expect(smallView(position, 20).pitch).toBe(lookFrom(position).pitch);
      expect(homeSide(position)).toBe(1);
      if (!isSlotStage(stage)) continue;
      const [piece] = piecesOf(targetsOf(position));
      if (piece === undefined) throw new Error("a slot has an edge");
      const faces = placeFacelets(
        startOf(position),
        piece.kind,
        piece.piece,
      ).map(faceletFace);
      expect(faces.toSorted()).toEqual(["F", "R"]);
    }
  });

  it("sees the opposite sides behind, from the same height", () => {
    const from = { side: 1, pitch: 34 } as const;
    const front = namedLook("front", from);
    const behind = namedLook("behind", from);
    expect(Math.abs(front.yaw - behind.yaw)).toBe(180);
    expect(behind.pitch).toBe(front.pitch);
    expect(namedLook("underneath", from).pitch).toBeLessThan(0);
  });

  it("comes back to the home's side after looking behind", () => {
    const looking = new LookAround({ side: -1, pitch: 25 });
    const before = looking.look;
    expect(before.yaw).toBe(-25);
    looking.from("behind", 0);
    expect(looking.look.yaw).not.toBe(before.yaw);
    looking.from("behind", 1);
    expect(looking.look).toEqual(before);
  });
});
