import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import { caseEntry, casesOfStage } from "../../../core/cases/case-table";
import { lastLayerTradeTitle } from "../../../core/cases/last-layer-words";
import { lookAlikes } from "../../../core/cases/look-alikes";
import {
  lookColours,
  stickersThatDiffer,
} from "../../../core/cases/look-colours";
import {
  LAST_LAYER_STAGES,
  type LastLayerStage,
} from "../../../core/cases/last-layer-stages";

function idsLike(id: CaseId): readonly CaseId[] {
  return lookAlikes(id).map((other) => other.case);
}

function lastLayer(id: CaseId) {
  const entry = caseEntry(id);
  if (entry.group !== "last-layer") throw new Error(`${id} is not of it`);
  return entry.shows;
}

describe("the cases that are in one place and face another way", () => {
  it("are those that learners confuse", () => {
    // Source: the design's first-layer.md, "What learners really confuse"
    // (common practice): facing front with facing sideways, down with sideways.
    expect(idsLike("C1")).toEqual(["C2", "C3"]);
    expect(idsLike("E1")).toEqual(["E3"]);
    expect(idsLike("C6")).toEqual(["C7", "C8"]);
    expect(idsLike("E7")).toEqual([]);
  });

  it("are, of a slot, as many as its pieces can face otherwise", () => {
    for (const entry of casesOfStage("pairs")) {
      if (entry.group !== "slot") continue;
      const atHome =
        entry.shows.family.corner === "home" &&
        entry.shows.family.edge === "home";
      // Three ways to turn the corner, two to turn the edge, less its own;
      // with both at home one more is the solved one.
      expect(lookAlikes(entry.id), entry.id).toHaveLength(atHome ? 4 : 5);
    }
  });

  it("show, of a slot, the same places in the look that is named", () => {
    for (const entry of casesOfStage("second-layer-edges")) {
      if (entry.group !== "slot") continue;
      const [mine] = entry.shows.orbit[0] ?? [];
      for (const { case: id, look } of lookAlikes(entry.id)) {
        const other = caseEntry(id);
        const [theirs] =
          (other.group === "slot" ? other.shows.orbit[look] : undefined) ?? [];
        expect(theirs?.position).toBe(mine?.position);
        expect(theirs?.orientation).not.toBe(mine?.orientation);
      }
    }
  });
});

describe("the cases of the last layer with the fewest stickers that differ", () => {
  it("are at most four, never the case itself, the nearest first", () => {
    for (const stage of LAST_LAYER_STAGES.filter(
      (one: LastLayerStage) => one !== "last-layer-whole",
    ))
      for (const { id } of casesOfStage(stage)) {
        const one = lastLayer(id);
        const mine = lookColours(stage, one.lookAt(0));
        const alike = lookAlikes(id);
        expect(alike.length).toBeLessThanOrEqual(4);
        expect(alike.map((other) => other.case)).not.toContain(id);
        const distances = alike.map(({ case: other, look }) =>
          stickersThatDiffer(
            mine,
            lookColours(stage, lastLayer(other).lookAt(look)),
          ),
        );
        expect(distances).toEqual(distances.toSorted((a, b) => a - b));
        expect(Math.min(...distances)).toBeGreaterThan(0);
      }
  });

  it("are two edges apart where only the edges of an all-corners case are turned", () => {
    // Of OLL 20 (no edge up, all corners up) the nearest have two edges turned
    // up: two stickers on top come and two at the sides go. Computed by hand.
    const twenty = casesOfStage("last-layer-turned").find(
      ({ id }) => lastLayerTradeTitle(lastLayer(id)) === "OLL 20",
    );
    const near = lookAlikes(twenty?.id ?? "E1").map(({ case: id }) =>
      lastLayerTradeTitle(lastLayer(id)),
    );
    expect(near.slice(0, 2).toSorted()).toEqual(["OLL 28", "OLL 57"]);
  });

  it("show, in the largest stages, the same in the smaller one", () => {
    const [first] = casesOfStage("last-layer-but-edges-turned").slice(100);
    const near = lookAlikes(first?.id ?? "E1");
    expect(near).toHaveLength(4);
  });
});
