import { expect, it } from "vitest";
import { casesInWords } from "../../../../../renderer/places/coach/sheets/sheet-words";

it.each([
  [12, 12, "All 12 cases"],
  [3, 3, "All 3 cases"],
  [2, 2, "Both cases"],
  [1, 1, "Its one case"],
  [0, 0, "No cases"],
  [1, 2, "1 of 2 cases"],
  [0, 12, "No cases"],
])("%i of a deck's %i cases read %j", (wanted, all, words) => {
  expect(casesInWords(wanted, all)).toBe(words);
});
