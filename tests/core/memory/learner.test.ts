import { describe, expect, it } from "vitest";
import {
  initialOf,
  parseLearner,
  parseLearnerName,
  tagOf,
  TAGS,
} from "../../../core/memory/learner";

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
    // The Arabic letter mark turns the writing around it as well.
    expect(parseLearnerName("A\u061cn\u00adn\ud800")).toBe("Ann");
    expect(parseLearnerName("Ann\n<b>Marie</b>")).toBe("Ann <b>Marie</b>");
  });

  it("is refused where nothing of it would be seen", () => {
    // A space of no width, a filler that is a letter, an empty Braille cell, an accent alone.
    for (const unseen of ["\u200b", "\u3164", "\u2800", "\u200d", "\u0301"])
      expect(parseLearnerName(unseen)).toBeUndefined();
  });

  it("keeps the joiners that languages and pictures need, and the tags of flags", () => {
    for (const name of [
      "Mehr\u200cdad",
      "👩\u200d🔬",
      "🏴\u{e0067}\u{e0062}\u{e0077}\u{e006c}\u{e0073}\u{e007f}",
      "李",
      "7",
    ])
      expect(parseLearnerName(name)).toBe(name);
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

describe("a learner's colour", () => {
  it("is the one they chose", () => {
    expect(tagOf({ ...ANN, tag: "iris" })).toBe("iris");
  });

  it("is theirs by their id where they chose none, or one that is not known here", () => {
    const own = tagOf(ANN);
    expect(TAGS).toContain(own);
    expect(tagOf({ ...ANN, tag: "of-a-newer-version" })).toBe(own);
  });

  it("differs between learners: each of the eight comes up among their first eight digits", () => {
    const drawn = TAGS.map((_, n) =>
      tagOf({ id: `0000000${n}-8a1c-4b8e-9d5e-0c5f6a7b8c9d` }),
    );
    expect(new Set(drawn)).toEqual(new Set(TAGS));
  });
});

describe("the first letter of a name", () => {
  it("is what a person counts as one, in upper case", () => {
    expect(initialOf("ada")).toBe("A");
    // Source: Unicode Standard Annex 29: a letter with what combines with it is one grapheme.
    expect(initialOf("e\u0301lodie")).toBe("E\u0301");
    expect(initialOf("👩‍🚀 Mia")).toBe("👩‍🚀");
  });
});
