/**
 * What the trade calls the last layer's cases: numbers for those of turning
 * it, letters for those of placing it. Laid over the orbits by their codes;
 * every other stage has no names but ours.
 *
 * Source: common practice; check-values, `last-layer.json`. The tests bind
 *         each name to its orbit by playing the listed sequence backwards.
 */
import type { LastLayerCase } from "./last-layer-cases";
import { codeOf } from "./last-layer-orbits";
import { LAST_LAYER_RULES, type LastLayerRule } from "./last-layer-stages";

/** The codes of turning the last layer, in the order of their numbers: the first is number 1. */
const CODES_BY_NUMBER: readonly string[] = [
  "1212-1111",
  "1122-1111",
  "0222-1111",
  "0111-1111",
  "0222-0011",
  "0111-0011",
  "0222-1001",
  "0111-0110",
  "0111-1100",
  "0222-1100",
  "0222-0110",
  "0111-1001",
  "0222-1010",
  "0111-0101",
  "0222-0101",
  "0111-1010",
  "0102-1111",
  "0021-1111",
  "0012-1111",
  "0000-1111",
  "1212-0000",
  "1122-0000",
  "0021-0000",
  "0012-0000",
  "0102-0000",
  "0111-0000",
  "0222-0000",
  "0000-0011",
  "0012-0110",
  "0012-1100",
  "0012-0011",
  "0012-1001",
  "0012-1010",
  "0012-0101",
  "0102-0011",
  "0102-1001",
  "0102-1100",
  "0102-0110",
  "0102-1010",
  "0102-0101",
  "0021-1100",
  "0021-0110",
  "0021-0011",
  "0021-1001",
  "0021-1010",
  "0021-0101",
  "1122-0110",
  "1122-0011",
  "1122-1001",
  "1122-1100",
  "1122-0101",
  "1122-1010",
  "1212-0011",
  "1212-0110",
  "1212-1010",
  "1212-0101",
  "0000-0101",
];

/** The codes of placing the last layer, by their letters. */
const CODES_BY_LETTERS: readonly (readonly [letters: string, code: string])[] =
  [
    ["Aa", "0132-3012"],
    ["Ab", "0132-1230"],
    ["E", "0321-1230"],
    ["F", "0132-2103"],
    ["Ga", "0132-3201"],
    ["Gb", "0132-2310"],
    ["Gc", "0132-2031"],
    ["Gd", "0132-1302"],
    ["H", "0123-2301"],
    ["Ja", "0132-0132"],
    ["Jb", "0132-3120"],
    ["Na", "0321-2103"],
    ["Nb", "0321-0321"],
    ["Ra", "0132-0213"],
    ["Rb", "0132-1023"],
    ["T", "0132-0321"],
    ["Ua", "0123-0312"],
    ["Ub", "0123-0231"],
    ["V", "0321-0132"],
    ["Y", "0321-0213"],
    ["Z", "0123-1032"],
  ];

const NUMBER_BY_CODE: ReadonlyMap<string, string> = new Map(
  CODES_BY_NUMBER.map((code, i) => [code, String(i + 1)]),
);

const LETTERS_BY_CODE: ReadonlyMap<string, string> = new Map(
  CODES_BY_LETTERS.map(([letters, code]) => [code, letters]),
);

/**
 * The trade's name for a case: a number where its stage sees how all pieces
 * are turned and nothing else, letters where all are up and it sees where they
 * are; undefined in any other stage.
 *
 * Shape: "1" … "57", or one of "Aa", "Ab", "E", … "Z".
 */
export function tradeNameOf({
  stage,
  lookAt,
}: LastLayerCase): string | undefined {
  const { done, asks }: LastLayerRule = LAST_LAYER_RULES[stage];
  const seen = [...done, ...asks];
  const seesTurning =
    seen.includes("cornerTwists") && seen.includes("edgeFlips");
  const places = (["cornerPlaces", "edgePlaces"] as const).filter((part) =>
    seen.includes(part),
  );
  if (seesTurning && places.length === 0)
    return NUMBER_BY_CODE.get(codeOf(lookAt(0), ["cornerTwists", "edgeFlips"]));
  return places.length === 2 &&
    done.includes("cornerTwists") &&
    done.includes("edgeFlips")
    ? LETTERS_BY_CODE.get(codeOf(lookAt(0), places))
    : undefined;
}
