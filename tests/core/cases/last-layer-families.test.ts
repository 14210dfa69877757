import { describe, expect, it } from "vitest";
import { lastLayerCases } from "../../../core/cases/last-layer-cases";
import {
  lastLayerFamilies,
  lastLayerFamilyOf,
  movedShape,
  upShape,
} from "../../../core/cases/last-layer-families";
import { tradeNameOf } from "../../../core/cases/last-layer-names";
import {
  LAST_LAYER_STAGES,
  type LastLayerStage,
} from "../../../core/cases/last-layer-stages";
import { LAST_LAYER_ORIENTATIONS } from "../../reference/published-values";

function namesByFamily(stage: LastLayerStage): Record<string, string> {
  return Object.fromEntries(
    lastLayerFamilies(stage).map(({ family, cases }) => [
      family.kind === "shows"
        ? family.code
        : `corners ${family.corners ?? "-"}, edges ${family.edges ?? "-"}`,
      cases.map(tradeNameOf).toSorted().join(" "),
    ]),
  );
}

describe("families of the last layer", () => {
  it.each(LAST_LAYER_STAGES)("hold every case of %s once", (stage) => {
    const sorted = lastLayerFamilies(stage).flatMap(({ cases }) => cases);
    expect(new Set(sorted)).toEqual(new Set(lastLayerCases(stage)));
    expect(sorted).toHaveLength(lastLayerCases(stage).length);
  });

  // Source: the effects of the usual sequences, read off the cube by hand:
  // common practice.
  it("of placing go by what must change places, fewest pieces first", () => {
    expect(namesByFamily("last-layer-placed")).toEqual({
      "corners none, edges three": "Ua Ub",
      "corners none, edges two-and-two-next": "Z",
      "corners none, edges two-and-two-across": "H",
      "corners three, edges none": "Aa Ab",
      "corners two-and-two-next, edges none": "E",
      "corners two-next, edges two-next": "Ja Jb Ra Rb",
      "corners two-next, edges two-across": "F T",
      "corners two-across, edges two-next": "V Y",
      "corners two-across, edges two-across": "Na Nb",
      "corners three, edges three": "Ga Gb Gc Gd",
    });
  });

  it("of turning go by the corners and edges that are up in last-layer.json", () => {
    const up = (text: string) => [...text].filter((c) => c === "0").length;
    const SIZES = { none: 0, one: 1, "two-next": 2, "two-across": 2, all: 4 };
    for (const one of lastLayerCases("last-layer-turned")) {
      const listed = LAST_LAYER_ORIENTATIONS.find(
        ({ number }) => String(number) === tradeNameOf(one),
      );
      const family = lastLayerFamilyOf(one);
      if (family.kind !== "up" || !family.corners || !family.edges)
        throw new Error("turning is sorted by what is up");
      expect(SIZES[family.corners]).toBe(up(listed?.cornerTwists ?? ""));
      expect(SIZES[family.edges]).toBe(up(listed?.edgeFlips ?? ""));
    }
  });

  // Source: common practice: with no edge up 1–4 and 17–20, with all up 21–27.
  it("of turning put together what the trade puts together by its edges", () => {
    const numbers = (edges: string) =>
      lastLayerCases("last-layer-turned")
        .filter((one) => {
          const family = lastLayerFamilyOf(one);
          return family.kind === "up" && family.edges === edges;
        })
        .map((one) => Number(tradeNameOf(one)))
        .toSorted((a, b) => a - b);
    expect(numbers("none")).toEqual([1, 2, 3, 4, 17, 18, 19, 20]);
    expect(numbers("all")).toEqual([21, 22, 23, 24, 25, 26, 27]);
  });

  it("of the two largest stages are the cases of a smaller one and its solved look: 43 and 58", () => {
    const families = lastLayerFamilies("last-layer-but-edges-turned");
    expect(families).toHaveLength(43);
    expect(lastLayerFamilies("last-layer-whole")).toHaveLength(58);
    // With the corners done, the edges alone: Ua Ub H Z (common practice).
    const solved = families.filter(
      ({ family }) => family.kind === "shows" && family.code === "0000-0123",
    );
    expect(solved[0]?.cases).toHaveLength(4);
    // All turned: the 21.
    const turned = lastLayerFamilies("last-layer-whole").find(
      ({ family }) => family.kind === "shows" && family.code === "0000-0000",
    );
    expect(turned?.cases).toHaveLength(21);
  });

  it("tell how pieces lie", () => {
    expect(
      ["1111", "0222", "0012", "1002", "0101", "0000"].map(upShape),
    ).toEqual(["none", "one", "two-next", "two-next", "two-across", "all"]);
    expect(
      ["0123", "1023", "3120", "2103", "1203", "1032", "2301", "1230"].map(
        movedShape,
      ),
    ).toEqual([
      "none",
      "two-next",
      "two-next",
      "two-across",
      "three",
      "two-and-two-next",
      "two-and-two-across",
      "four",
    ]);
  });
});
