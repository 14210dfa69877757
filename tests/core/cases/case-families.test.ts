import { describe, expect, it, vi } from "vitest";
import {
  caseEntry,
  casesOfStage,
  FIRST_LAYER_TABLE,
  firstLayerEntry,
} from "../../../core/cases/case-table";
import { FIRST_LAYER_STAGES, STAGES } from "../../../core/cases/stage";
import { isElsewhere, shelfFamilies } from "../../../core/cases/case-families";
import { tradeNameOf } from "../../../core/cases/last-layer-names";
import { CASES_ON_SHELF } from "../../../core/cases/shelf-counts";
import { slotCasesBeside } from "../../../core/cases/slot-cases";

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

describe("a family of cases that the trade has names for", () => {
  // Source: last-layer-names.ts, checked there against the trade's own tables.
  function namesOn(stage: "last-layer-turned" | "last-layer-placed") {
    return shelfFamilies(stage).map(({ groups }) =>
      groups.map((group) =>
        group.map((id) => {
          const entry = caseEntry(id);
          return entry.group === "last-layer"
            ? (tradeNameOf(entry.shows) ?? "")
            : "";
        }),
      ),
    );
  }

  it("has its letters in the order of the alphabet, twins side by side", () => {
    const families = namesOn("last-layer-placed");
    for (const groups of families) {
      const firsts = groups.map(([first]) => first);
      expect(firsts).toEqual(firsts.toSorted());
      for (const group of groups) expect(group).toEqual(group.toSorted());
    }
    for (const group of [
      ["Ua", "Ub"],
      ["Aa", "Ab"],
      ["Ja", "Jb"],
      ["Ra", "Rb"],
    ])
      expect(families.flat()).toContainEqual(group);
    // Of the four, Ga is seen in the mirror as Gc, and Gb as Gd.
    expect(families).toContainEqual([
      ["Ga", "Gc"],
      ["Gb", "Gd"],
    ]);
  });

  it("has its numbers ascending, by the lower number of twins", () => {
    for (const groups of namesOn("last-layer-turned")) {
      const firsts = groups.map(([first]) => Number(first));
      expect(firsts).toEqual(firsts.toSorted((a, b) => a - b));
      for (const group of groups) {
        const numbers = group.map(Number);
        expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
      }
    }
  });
});

describe("the length of a shelf", () => {
  it.each(STAGES)("of %s is what the list of shelves says", (stage) => {
    const shown = shelfFamilies(stage)
      .filter(({ family }) => !isElsewhere(family))
      .flatMap(({ groups }) => groups.flat())
      .filter((id) => id !== "S1" && id !== "S2");
    expect(shown).toHaveLength(CASES_ON_SHELF[stage]);
  });

  it("of the pairs is that of the cases left when all other slots are placed", () => {
    const shown = shelfFamilies("pairs")
      .filter(({ family }) => !isElsewhere(family))
      .flatMap(({ groups }) => groups.flat());
    const left = slotCasesBeside("pairs", [1, 2, 3]).map(({ id }) => id);
    expect(shown.toSorted()).toEqual(left.toSorted());
  });
});

describe("gathering a shelf", () => {
  /** The module as it is before anybody has asked it anything. */
  async function unasked() {
    vi.resetModules();
    return import("../../../core/cases/case-families");
  }

  it("goes on in many small steps whose progress only rises", async () => {
    const { gatherShelf } = await unasked();
    const steps = gatherShelf("last-layer-whole");
    let last = 0;
    let count = 0;
    let step = steps.next();
    for (; step.done !== true; step = steps.next(), count++) {
      expect(step.value).toBeGreaterThanOrEqual(last);
      expect(step.value).toBeLessThanOrEqual(1);
      last = step.value;
    }
    expect(count).toBeGreaterThan(150);
    expect(step.value.flatMap(({ groups }) => groups.flat())).toHaveLength(
      3915,
    );
  });

  it("answers the same list whoever asks first, in steps or at once", async () => {
    const fresh = await unasked();
    const steps = fresh.gatherShelf("last-layer-placed");
    steps.next();
    const atOnce = fresh.shelfFamilies("last-layer-placed");
    let step = steps.next();
    while (step.done !== true) step = steps.next();
    expect(step.value).toBe(atOnce);
  });
});
