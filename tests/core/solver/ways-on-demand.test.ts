import { describe, expect, it } from "vitest";
import type { LastLayerEntry } from "../../../core/cases/case-entry";
import { caseEntry } from "../../../core/cases/case-table";
import { answersLook } from "../../../core/cases/last-layer-goal";
import { recognise } from "../../../core/cases/recognise";
import { outerBlockTurns } from "../../../core/notation/metrics";
import { createCaseSearch } from "../../../core/solver/case-search";
import { runToEnd } from "../../../core/steps";
import { findWays } from "../../../core/solver/ways-on-demand";
import { inverseTurns } from "../../../core/notation/inverse";
import { madeOnTop } from "../cases/made-on-top";
import { turnsOf } from "../notation/turns-of";

/** The case that some turns answer. */
function answeredBy(text: string): LastLayerEntry {
  const cubies = madeOnTop(inverseTurns(turnsOf(text)));
  const shown = recognise(cubies, "last-layer-whole", 0);
  const entry = shown && caseEntry(shown.case);
  if (entry?.group !== "last-layer") throw new Error("it shows a case");
  return entry;
}

describe("ways that are looked for on demand", () => {
  const search = createCaseSearch();
  // Source: sequences.json of the design's check values: seven turns, and no
  // shorter one turns three corners (common practice).
  const three = answeredBy("R U R' U R U2 R'");

  it("are shortest ones, each answering from the look that names the case", () => {
    const { ways } = runToEnd(findWays(search, three, 7));
    expect(ways.length).toBeGreaterThan(0);
    for (const turns of ways) {
      // A slice is two faces; a turn of the layer comes before the seven.
      expect(outerBlockTurns(turns)).toBeLessThanOrEqual(8);
      expect(answersLook(three.shows, turns)).toBe(true);
    }
  });

  it("are none where each has more turns than were looked for", () => {
    expect(runToEnd(findWays(search, three, 6))).toEqual({
      ways: [],
      mostTurns: 6,
    });
  });

  it("tell their progress ascending, between 0 and 1", () => {
    const steps = findWays(search, three, 7);
    let last = 0;
    for (let step = steps.next(); step.done !== true; step = steps.next()) {
      expect(step.value).toBeGreaterThanOrEqual(last);
      expect(step.value).toBeLessThanOrEqual(1);
      last = step.value;
    }
  });
});
