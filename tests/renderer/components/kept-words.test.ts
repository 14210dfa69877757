import { expect, it } from "vitest";
import { keptInWords } from "../../../renderer/components/kept-words";

it.each([
  [0, 0, "0 answers"],
  [1, 0, "1 answer"],
  [1240, 1, "1,240 answers and 1 run"],
  [0, 3, "3 runs"],
])("%d answers and %d runs are %j", (answers, runs, words) => {
  expect(keptInWords(answers, runs)).toBe(words);
});
