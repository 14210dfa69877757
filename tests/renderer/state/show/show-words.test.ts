import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../../core/cases/case-ids";
import { casesOfStage } from "../../../../core/cases/case-table";
import { type Stage, STAGES } from "../../../../core/cases/stage";
import { HOLDS } from "../../../../core/cases/variant";
import {
  COLOUR_NAMES,
  USUAL_SCHEME,
} from "../../../../core/picture/colour-sets";
import { cubeStarts } from "../../../../core/solver/class-set-up";
import { showcasePosition } from "../../../../renderer/state/case-showcase";
import { startInWords } from "../../../../renderer/state/show/show-words";

function firstOf(stage: Stage): CaseId {
  return casesOfStage(stage)[0]?.id ?? "E1";
}

describe("what a class's cubes need before a set-up", () => {
  it("is said without any colour for cubes of any make", () => {
    for (const stage of STAGES)
      for (const hold of HOLDS) {
        const position = showcasePosition(firstOf(stage), hold);
        for (const start of cubeStarts(position.case)) {
          const words = startInWords(position, start, undefined);
          expect(words).toMatch(/^Start with .+\. Hold .+\.$/);
          for (const colour of COLOUR_NAMES)
            expect(words).not.toContain(colour);
        }
      }
  });

  it("says what must be home besides, by its place", () => {
    const corner = showcasePosition("C1", "up");
    expect(startInWords(corner, "cross", undefined)).toBe(
      "Start with your cross done and the corner at the top front right home. Hold the cross on top.",
    );
    const [pair] = casesOfStage("pairs");
    expect(
      startInWords(
        showcasePosition(pair?.id ?? "C1", "up"),
        "cross",
        undefined,
      ),
    ).toBe(
      "Start with your cross done and the front right pair home. Hold the cross at the bottom.",
    );
    expect(startInWords(corner, "layer", undefined)).toBe(
      "Start with your first layer done. Hold what is done on top.",
    );
    expect(
      startInWords(showcasePosition("C1", "down"), "cross", undefined),
    ).toBe(
      "Start with your cross done and the corner at the bottom front left home. Hold the cross at the bottom.",
    );
  });

  it("names the colours on top and in front where all cubes have the same", () => {
    const corner = showcasePosition("C1", "up");
    expect(startInWords(corner, "solved", USUAL_SCHEME)).toBe(
      "Start with a solved cube. Hold it white on top and green in front.",
    );
    expect(startInWords(corner, "solved", undefined)).toBe(
      "Start with a solved cube. Hold it any way you like.",
    );
  });
});
