import { expect, it } from "vitest";
import { ordinal } from "../../../renderer/state/practise/ordinals";

it.each([
  [0, "first"],
  [7, "eighth"],
  [11, "twelfth"],
  [12, "13th"],
  [20, "21st"],
  [21, "22nd"],
])(
  "a place is a word up to the twelfth, then a figure: %i is %s",
  (index, said) => {
    expect(ordinal(index)).toBe(said);
  },
);
