import { describe, expect, it } from "vitest";
import {
  casesOfStage,
  FIRST_LAYER_TABLE,
  firstLayerEntry,
} from "../../../core/cases/case-table";
import { FIRST_LAYER_STAGES, STAGES } from "../../../core/cases/stage";
import { shelfFamilies } from "../../../core/cases/case-families";
import { lookAlikes } from "../../../core/cases/look-alikes";

describe("a shelf", () => {
  it.each(STAGES)("of %s holds every case of its stage once", (stage) => {
    const onShelf = shelfFamilies(stage).flatMap(({ groups }) => groups.flat());
    const ofStage = casesOfStage(stage);
    expect(onShelf.toSorted()).toEqual(ofStage.map(({ id }) => id).toSorted());
  });

  it("sets twins of a family side by side", () => {
    const groups = FIRST_LAYER_STAGES.flatMap((stage) =>
      shelfFamilies(stage).flatMap((family) => family.groups),
    );
    for (const { id, twin, family } of FIRST_LAYER_TABLE) {
      if (twin === id || firstLayerEntry(twin).family !== family) continue;
      expect(groups.find((group) => group.includes(id))).toContain(twin);
    }
  });
});

describe("the cases that are in one place and face another way", () => {
  it("are those that learners confuse", () => {
    // Source: the design's first-layer.md, "What learners really confuse"
    // (common practice): facing front with facing sideways, down with sideways.
    expect(lookAlikes("C1")).toEqual(["C2", "C3"]);
    expect(lookAlikes("E1")).toEqual(["E3"]);
    expect(lookAlikes("C6")).toEqual(["C7", "C8"]);
    expect(lookAlikes("E7")).toEqual([]);
  });
});
