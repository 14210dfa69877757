import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import { casesOfStage } from "../../../core/cases/case-table";
import { hasHomes, isInFreeLayer } from "../../../core/cases/constraint";
import { STAGES } from "../../../core/cases/stage";
import { isVariantAllowed } from "../../../core/cases/random-variant";
import { present } from "../../../core/invariant";
import { currentItem } from "../../../core/memory/round";
import type { MemoryState } from "../../../core/memory/schedule";
import { begin, planned } from "./played-round";

describe("opening up", () => {
  const variants = (memory: MemoryState, id: CaseId) =>
    Array.from({ length: 200 }, (_, seed) =>
      present(currentItem(begin([planned(id, memory)], seed)), "an item"),
    );

  it("keeps a new case in front and lined up, beginning with the reference home", () => {
    for (const { variant, bare } of variants("new", "C1")) {
      expect(variant).toEqual({
        home: 0,
        placed: [1, 2, 3],
        turnedAway: 0,
        seenFrom: 0,
      });
      expect(bare).toBe(true);
    }
  });

  it("turns a settling or fading case away as well, in all ways and all homes", () => {
    for (const memory of ["settling", "fading"] as const) {
      const all = variants(memory, "C1");
      expect(new Set(all.map((o) => o.variant.turnedAway)).size).toBe(4);
      expect(new Set(all.map((o) => o.variant.home)).size).toBe(4);
      expect(new Set(all.map((o) => o.variant.seenFrom))).toEqual(new Set([0]));
      expect(all.every((o) => o.bare)).toBe(true);
    }
  });

  it("shows a kept case from anywhere, with all its stickers", () => {
    const all = variants("kept", "C1");
    expect(new Set(all.map((o) => o.variant.seenFrom)).size).toBe(4);
    expect(all.some((o) => o.bare)).toBe(false);
  });

  it("never turns away a piece that is not in the free layer", () => {
    for (const { variant } of variants("kept", "C4"))
      expect(variant.turnedAway).toBe(0);
  });

  it("opens a slot and a last layer up the same way, whatever colour is in front", () => {
    for (const stage of STAGES.slice(2)) {
      const [first] = casesOfStage(stage);
      const id = present(first, "every stage has cases").id;
      const kinds = (
        memory: MemoryState,
        part: "home" | "turnedAway" | "seenFrom",
      ) => new Set(variants(memory, id).map((o) => o.variant[part])).size;
      expect([kinds("new", "home"), kinds("new", "turnedAway")], stage).toEqual(
        [1, 1],
      );
      expect(kinds("settling", "home"), stage).toBe(4);
      expect(kinds("kept", "home"), stage).toBe(4);
      expect(kinds("settling", "turnedAway"), stage).toBe(
        isInFreeLayer(id) ? 4 : 1,
      );
      expect(kinds("kept", "seenFrom"), stage).toBe(hasHomes(id) ? 4 : 1);
      for (const memory of ["new", "settling", "kept"] as const)
        for (const { variant } of variants(memory, id))
          expect(isVariantAllowed(id, variant), stage).toBe(true);
    }
  });
});
