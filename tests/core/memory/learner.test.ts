import { describe, expect, it } from "vitest";
import { parseLearner, parseLearnerName } from "../../../core/memory/learner";

const ANN = {
  id: "7d9f3f0e-8a1c-4b8e-9d5e-0c5f6a7b8c9d",
  name: "Ann",
  createdAt: 1,
};

describe("a learner's name", () => {
  it("has 1 to 40 letters, spaces at its ends left off", () => {
    expect(parseLearnerName("  Ann   Marie ")).toBe("Ann Marie");
    expect(parseLearnerName("   ")).toBeUndefined();
    expect(parseLearnerName("x".repeat(40))).toBe("x".repeat(40));
    expect(parseLearnerName("x".repeat(41))).toBeUndefined();
  });

  it("loses characters that no screen shows or that turn the writing round", () => {
    expect(parseLearnerName("A\u0000n\u202en\u0007")).toBe("Ann");
    expect(parseLearnerName("\u0000\u202e")).toBeUndefined();
    expect(parseLearnerName("Ann\n<b>Marie</b>")).toBe("Ann <b>Marie</b>");
  });
});

describe("a stored learner", () => {
  it("is read with the fields that this version does not know", () => {
    const later = { ...ANN, mood: "good" };
    expect(parseLearner(later)).toEqual({ ok: true, value: later });
  });

  it.each([
    ["missing-field", "name", { name: undefined }],
    ["wrong-type", "createdAt", { createdAt: "noon" }],
    ["out-of-range", "name", { name: " \u0000 " }],
    ["out-of-range", "id", { id: "ann" }],
  ])("is refused as %s at %s", (code, field, change) => {
    expect(parseLearner({ ...ANN, ...change })).toEqual({
      ok: false,
      error: { code, field },
    });
  });
});
