import { describe, expect, it } from "vitest";
import { corner } from "../../../core/cube/pieces";
import { explained, positionOf } from "./explained-answer";

describe("the explanation of turns that are no known way", () => {
  it("goes by what the turns do where they are no known way", () => {
    const position = positionOf("C1");
    // The seventh turn brings the edge down, D2 would bring it back up.
    expect(explained(position, "D2 D R' D R D L' D2 L")).toMatchObject({
      kind: "one-turn",
      evidence: "by-effect",
    });
    // The first half of the usual eight turns' twin: the edge comes home, the corner under it goes.
    const slot = positionOf("second-layer-edges:DF-F");
    expect(explained(slot, "U R U' R'")).toEqual({
      kind: "others-lost",
      lost: { corners: [corner("URF")], edges: [] },
    });
    expect(explained(position, "R D2 F2 B L D")).toEqual({
      kind: "unexplained",
    });
  });
});
