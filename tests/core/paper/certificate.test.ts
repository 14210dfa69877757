import { describe, expect, it } from "vitest";
import { certificateSentence } from "../../../core/paper/certificate";

describe("a certificate", () => {
  it.each([
    [0, 1, "has begun to learn the one case of D."],
    [0, 7, "has begun to learn the 7 cases of D."],
    [1, 1, "knows the one case of D by heart."],
    [3, 7, "knows 3 of the 7 cases of D by heart."],
    [7, 7, "knows all 7 cases of D by heart."],
  ])("says of %i kept of %i cases what is so", (kept, cases, said) => {
    expect(certificateSentence("D", { kept, cases })).toBe(said);
  });
});
