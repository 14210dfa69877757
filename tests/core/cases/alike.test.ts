import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { alikeCases, areAlike } from "../../../core/cases/alike";
import type { CaseId } from "../../../core/cases/case-ids";
import { caseEntry, casesOfStage } from "../../../core/cases/case-table";
import { lastLayerTradeTitle } from "../../../core/cases/last-layer-words";
import { lookAlikes } from "../../../core/cases/look-alikes";
import {
  lookColours,
  stickersThatDiffer,
} from "../../../core/cases/look-colours";
import { type Stage, STAGES } from "../../../core/cases/stage";

/** Every pair of cases of a stage that are alike, each once. */
function alikePairs(stage: Stage): readonly string[] {
  const ids = casesOfStage(stage).map(({ id }): CaseId => id);
  return ids.flatMap((a, i) =>
    ids.slice(i + 1).flatMap((b) => (areAlike(a, b) ? [`${a} ${b}`] : [])),
  );
}

/** All pairs within each of some groups. */
function pairsOf(...groups: readonly string[]): readonly string[] {
  return groups.flatMap((group) => {
    const ids = group.split(" ");
    return ids.flatMap((a, i) => ids.slice(i + 1).map((b) => `${a} ${b}`));
  });
}

/** Of a stage so large that a test would take minutes, every so many-th case. */
function someOf(stage: Stage): readonly CaseId[] {
  const all = casesOfStage(stage).map(({ id }): CaseId => id);
  const step = Math.ceil(all.length / 170);
  return all.filter((_, i) => i % step === 0);
}

function tradeTitle(id: CaseId): string | undefined {
  const entry = caseEntry(id);
  return entry.group === "last-layer"
    ? lastLayerTradeTitle(entry.shows)
    : undefined;
}

describe("alike in the first layer", () => {
  it("are edges that are twins, face otherwise in their place, or are the same seen from another side", () => {
    // Source: the table of the design's first-layer.md. Written out by hand:
    // places with both facings, twins, and what a turn of the whole cube
    // takes into one another.
    const byHand = pairsOf(
      // Facing down or front; right or front; up or flipped.
      ...["E1 E3", "E2a E4a", "E2b E4b", "E5a E6a", "E5b E6b"],
      ...["E8a E9a", "E8b E9b", "E10 E11"],
      // Twins.
      ...["E2a E2b", "E4a E4b", "E5a E5b", "E6a E6b", "E8a E8b", "E9a E9b"],
      // From another side.
      ...["E2a E4b E5a E6b", "E2b E4a E5b E6a", "E7 E8a E8b E11"],
      "E9a E9b E10",
    );
    expect(alikePairs("first-layer-edges").toSorted()).toEqual(
      [...new Set(byHand)].toSorted(),
    );
    expect(alikePairs("first-layer-edges")).toHaveLength(33);
  });

  it("are corners that are so", () => {
    const byHand = pairsOf(
      // In one place: front, sideways, down; twisted at home; in another's home.
      ...["C1 C2 C3", "C4 C5", "C6 C7 C8", "C9 C10 C11", "C12 C13 C14"],
      // Twins.
      ...["C1 C2", "C4 C5", "C6 C9", "C7 C10", "C8 C11", "C13 C14"],
      // From another side: up, to one side, to the other.
      ...["C6 C9 C12", "C4 C8 C10 C14", "C5 C7 C11 C13"],
    );
    expect(alikePairs("first-layer-corners").toSorted()).toEqual(
      [...new Set(byHand)].toSorted(),
    );
  });

  it("are all that learners really confuse", () => {
    // Source: the design's first-layer.md, "What learners really confuse"
    // (common practice): a case with its twin; facing front with facing
    // sideways; facing down with sideways.
    const confused: readonly (readonly [CaseId, CaseId])[] = [
      ["C1", "C2"],
      ["C3", "C1"],
      ["C3", "C2"],
      ["E4a", "E2a"],
      ["E4b", "E2b"],
      ["E1", "E3"],
      ["C7", "C8"],
      ["C10", "C11"],
      ["C13", "C14"],
    ];
    for (const [a, b] of confused) expect(areAlike(a, b), a + b).toBe(true);
  });

  it("have the twin first", () => {
    expect(alikeCases("E2a")[0]).toBe("E2b");
    expect(alikeCases("C1")).toEqual(["C2", "C3"]);
    expect(alikeCases("E1")).toEqual(["E3"]);
  });
});

describe("alike in any stage", () => {
  it.each(STAGES)(
    "are in %s twins, look-alikes, and never one case",
    (stage) => {
      for (const id of someOf(stage)) {
        const alike = alikeCases(id);
        expect(alike).not.toContain(id);
        expect(new Set(alike).size).toBe(alike.length);
        const { twin } = caseEntry(id);
        if (twin !== id) expect(alike[0]).toBe(twin);
        for (const other of lookAlikes(id)) expect(alike).toContain(other.case);
        for (const other of alike) expect(caseEntry(other).stage).toBe(stage);
        expect(areAlike(id, id)).toBe(false);
      }
    },
  );

  it.each(STAGES)("are alike in %s whichever is named first", (stage) => {
    for (const id of someOf(stage))
      for (const other of alikeCases(id)) {
        expect(areAlike(id, other)).toBe(true);
        expect(areAlike(other, id), `${other} ${id}`).toBe(true);
      }
  });

  it("never cross stages", () => {
    const one = fc.constantFrom(...STAGES).chain((stage) =>
      fc.record({
        stage: fc.constant(stage),
        id: fc.constantFrom(...someOf(stage)),
      }),
    );
    fc.assert(
      fc.property(one, one, (a, b) => {
        if (a.stage !== b.stage) expect(areAlike(a.id, b.id)).toBe(false);
      }),
    );
  });
});

describe("alike of a slot", () => {
  it("are the edges that stand in the middle layer as another one does seen from elsewhere", () => {
    // Common practice: an edge in another slot, good or flipped there, is one
    // thing to see whichever slot it is. Three other slots, and with the
    // flipped one at home four; in the top layer the two are twins.
    const elsewhere = casesOfStage("second-layer-edges").filter(
      (entry) =>
        entry.group === "slot" && entry.shows.family.edge === "elsewhere",
    );
    expect(elsewhere).toHaveLength(6);
    const flippedAtHome = casesOfStage("second-layer-edges").find(
      (entry) => entry.group === "slot" && entry.shows.family.edge === "home",
    );
    const alike = alikeCases(flippedAtHome?.id ?? "E1");
    expect(alike).toHaveLength(3);
    for (const other of alike)
      expect(elsewhere.map(({ id }): CaseId => id)).toContain(other);
  });
});

describe("alike in the last layer", () => {
  it.each(["last-layer-turned", "last-layer-placed"] as const)(
    "are in %s the nearest by their stickers, after the twin",
    (stage) => {
      const colours = (id: CaseId) => {
        const entry = caseEntry(id);
        if (entry.group !== "last-layer") throw new Error("not of it");
        const { shows } = entry;
        return Array.from({ length: shows.size }, (_, i) =>
          lookColours(stage, shows.lookAt(i)),
        );
      };
      for (const { id, twin } of casesOfStage(stage)) {
        const [mine] = colours(id);
        const distances = alikeCases(id)
          .filter((other) => other !== twin)
          .map((other) =>
            Math.min(
              ...colours(other).map((theirs) =>
                stickersThatDiffer(mine ?? [], theirs),
              ),
            ),
          );
        expect(distances).toEqual(distances.toSorted((a, b) => a - b));
      }
    },
  );

  it("are the cases that only a mirror tells apart", () => {
    // Common practice: Sune and Antisune (OLL 27, 26), the two A, the two U
    // perms are taken for one another.
    const ids = (["last-layer-turned", "last-layer-placed"] as const).flatMap(
      (stage) => casesOfStage(stage).map(({ id }): CaseId => id),
    );
    const named = (title: string) => {
      const found = ids.find((id) => tradeTitle(id) === title);
      if (found === undefined) throw new Error(`no ${title}`);
      return found;
    };
    expect(areAlike(named("OLL 26"), named("OLL 27"))).toBe(true);
    expect(areAlike(named("PLL Aa"), named("PLL Ab"))).toBe(true);
    expect(areAlike(named("PLL Ua"), named("PLL Ub"))).toBe(true);
    expect(areAlike(named("PLL Ja"), named("PLL Jb"))).toBe(true);
  });
});
