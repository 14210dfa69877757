/** Damage to files, as bad disks, bad editors and bad people do it. */
import fc from "fast-check";

/** What one piece of damage does to a text; `a` and `b` are any two numbers that say where. */
type Damage = (text: string, a: number, b: number) => string;

const at = (text: string, n: number) => n % (text.length + 1);

function cut(text: string, a: number, b: number): [number, number] {
  const from = at(text, a);
  return [from, Math.min(text.length, from + 1 + (b % 40))];
}

/** Flips one bit of one byte, and reads the bytes again as the shell does. */
const flipBit: Damage = (text, a, b) => {
  const bytes = Buffer.from(text);
  const place = a % Math.max(1, bytes.length);
  bytes[place] = (bytes[place] ?? 0) ^ (1 << (b % 8));
  return new TextDecoder().decode(bytes);
};

const cutOut: Damage = (text, a, b) => {
  const [from, to] = cut(text, a, b);
  return text.slice(0, from) + text.slice(to);
};

const cutShort: Damage = (text, a) => text.slice(0, at(text, a));

const doubleSlice: Damage = (text, a, b) => {
  const [from, to] = cut(text, a, b);
  return text.slice(0, to) + text.slice(from);
};

const doubleLine: Damage = (text, a) => {
  const lines = text.split("\n");
  const place = a % lines.length;
  return lines.toSpliced(place, 0, lines[place] ?? "").join("\n");
};

const dropLine: Damage = (text, a) =>
  text
    .split("\n")
    .toSpliced(a % text.split("\n").length, 1)
    .join("\n");

const FIELDS = [
  ...['"__proto__": {"hold": "up"}', '"constructor": 1', '"toString": 1'],
  ...['"note": "\\u0000"', '"sound": true', '"case": "C1"', '"home": null'],
  ...['"stages": ["first-layer edges", "first-layer edges"]', '"hold": "up"'],
];

const insertField: Damage = (text, a, b) => {
  const places = tokensOf(text)
    .filter(({ text: found }) => found === "{")
    .map(({ to }) => to);
  const place = places[a % Math.max(1, places.length)] ?? 0;
  const field = FIELDS[b % FIELDS.length] ?? "";
  return `${text.slice(0, place)}${field},${text.slice(place)}`;
};

const VALUES = [
  ...["1e999", "-1e999", "1e300", "-1", "0", "0.5", "1.5", "3", "601", "2"],
  ...["null", "true", "[]", "{}", "[{}]", '""', '"  "', '"C1"', '"S1"', '"y"'],
  ...['"R U Q"', '"a\\nb"', '"\\u202e"', '"<script>"', '"2027-02-30"'],
  ...[`"${"long ".repeat(300)}"`, "[".repeat(50) + "]".repeat(50)],
  ...['"backup"', '"deck"', '["on screen","on screen"]', '"the fewest turns"'],
];

const TOKEN = /"(?:[^"\\]|\\.)*"|[{]|-?[0-9][0-9.eE+-]*|true|false|null/g;

interface Token {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

function tokensOf(text: string): readonly Token[] {
  return [...text.matchAll(TOKEN)].map(({ 0: found, index }) => ({
    from: index,
    to: index + found.length,
    text: found,
  }));
}

function spansOf(text: string): readonly [from: number, to: number][] {
  return tokensOf(text)
    .filter(({ text: found, to }) => found !== "{" && text[to] !== ":")
    .map(({ from, to }) => [from, to]);
}

const replaceValue: Damage = (text, a, b) => {
  const spans = spansOf(text);
  const [from, to] = spans[a % Math.max(1, spans.length)] ?? [0, 0];
  return (
    text.slice(0, from) + (VALUES[b % VALUES.length] ?? "") + text.slice(to)
  );
};

const swapValues: Damage = (text, a, b) => {
  const spans = spansOf(text);
  const one = spans[a % Math.max(1, spans.length)];
  const other = spans[b % Math.max(1, spans.length)];
  if (one === undefined || other === undefined) return text;
  const [first, second] = one[0] <= other[0] ? [one, other] : [other, one];
  if (first === second) return text;
  return [
    text.slice(0, first[0]),
    text.slice(...second),
    text.slice(first[1], second[0]),
    text.slice(...first),
    text.slice(second[1]),
  ].join("");
};

const DAMAGES = {
  ...{ flipBit, cutOut, cutShort, doubleSlice, doubleLine, dropLine },
  ...{ insertField, replaceValue, swapValues },
} as const satisfies Record<string, Damage>;

type DamageName = keyof typeof DAMAGES;

const ROUGH: readonly DamageName[] = [
  ...(["flipBit", "cutOut", "cutShort", "doubleSlice", "doubleLine"] as const),
  ...(["dropLine", "insertField", "swapValues", "replaceValue"] as const),
];

/** What mostly leaves JSON behind, so that more than the outermost checks are reached. */
const CAREFUL: readonly DamageName[] = [
  ...(["insertField", "swapValues", "replaceValue", "replaceValue"] as const),
];

/** Some of the texts, each damaged in one to three places: one in two roughly, the others with care. */
export function mutated(texts: readonly string[]): fc.Arbitrary<string> {
  const place = fc.nat(1_000_000);
  const damages = (names: readonly DamageName[]) =>
    fc.array(fc.tuple(fc.constantFrom(...names), place, place), {
      minLength: 1,
      maxLength: 3,
    });
  return fc
    .tuple(
      fc.constantFrom(...texts),
      fc.oneof(damages(ROUGH), damages(CAREFUL)),
    )
    .map(([text, made]) =>
      made.reduce((t, [name, a, b]) => DAMAGES[name](t, a, b), text),
    );
}
