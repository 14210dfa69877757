import { describe, expect, it } from "vitest";
import { corner, edge } from "../../../core/cube/pieces";
import {
  schemeWithFirstColour,
  USUAL_SCHEME,
} from "../../../core/picture/colour-sets";
import {
  placedInWords,
  promptInWords,
} from "../../../renderer/state/practise/prompt-words";

const CROSS = [edge("UR"), edge("UF"), edge("UL"), edge("UB")];

describe("the prompt", () => {
  it("names a corner by its colours, the first layer's first", () => {
    const targets = { corners: [corner("URF")], edges: [] };
    expect(promptInWords(targets, USUAL_SCHEME)).toBe(
      "Bring the white, green and red corner home.",
    );
  });

  it("names an edge in the learner's own colours", () => {
    const scheme = schemeWithFirstColour(USUAL_SCHEME, "blue");
    const targets = { corners: [], edges: [edge("UF")] };
    expect(promptInWords(targets, scheme)).toMatch(
      /^Bring the blue and (red|orange|white|yellow) edge home\.$/,
    );
  });

  it("names both corners of a task of two", () => {
    const targets = { corners: [corner("URF"), corner("UFL")], edges: [] };
    expect(promptInWords(targets, USUAL_SCHEME)).toBe(
      "Bring both home: the white, green and red corner and the white, orange and green corner.",
    );
  });
});

describe("what is already placed", () => {
  it("is said as the rest of the layer where all of it is placed", () => {
    const said = placedInWords(
      { corners: [corner("UFL"), corner("ULB"), corner("UBR")], edges: CROSS },
      { corners: [corner("URF")], edges: [] },
      USUAL_SCHEME,
    );
    expect(said).toBe(
      "Already placed: the four white edges and the other three white corners.",
    );
  });

  it("is counted where only some of it is placed", () => {
    const said = placedInWords(
      { corners: [], edges: [edge("UL"), edge("UB")] },
      { corners: [], edges: [edge("UF")] },
      USUAL_SCHEME,
    );
    expect(said).toBe("Already placed: two white edges.");
  });

  it("is said to be nothing where nothing is", () => {
    const said = placedInWords(
      { corners: [], edges: [] },
      { corners: [], edges: [edge("UF")] },
      USUAL_SCHEME,
    );
    expect(said).toBe("No other white edge is placed yet.");
  });
});
