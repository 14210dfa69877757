import { expect, it } from "vitest";
import { capitalised, listInWords } from "../../../core/notation/sentence";

it("words make a list as English writes it", () => {
  expect([[], ["a"], ["a", "b"], ["a", "b", "c"]].map(listInWords)).toEqual([
    "",
    "a",
    "a and b",
    "a, b and c",
  ]);
});

it("a sentence begins with a capital letter", () => {
  expect(["white on top", ""].map(capitalised)).toEqual(["White on top", ""]);
});
