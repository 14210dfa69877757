const ORDINALS = [
  "first",
  "second",
  "third",
  "fourth",
  "fifth",
  "sixth",
  "seventh",
  "eighth",
  "ninth",
  "tenth",
  "eleventh",
  "twelfth",
];

/** The place of a turn in words: "third", "13th". Shape: `index` counts from 0. */
export function ordinal(index: number): string {
  const known = ORDINALS[index];
  if (known !== undefined) return known;
  const n = index + 1;
  const last = n % 10;
  // 13th, but 21st, 22nd and 23rd.
  const isTeen = Math.floor(n / 10) % 10 === 1;
  const ending = isTeen ? "th" : (["th", "st", "nd", "rd"][last] ?? "th");
  return `${n}${ending}`;
}
