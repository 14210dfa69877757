import type { RandomSource } from "../../../core/random-source";
import {
  BACKUP_VERSION,
  DEEPEST_LINE,
  LONGEST_LINE,
} from "../../../core/backup/backup-line";
import { ANN, sampleLines } from "./sample-backup";

/** Values that a field is not used to. */
const ODD: readonly unknown[] = [
  null,
  true,
  -1,
  0,
  0.5,
  2 ** 53,
  1e300,
  "",
  "\u0000\u0007\u202e",
  "<script>alert(1)</script>",
  "=1+1",
  "constructor",
  ANN.id,
  "Ann-1",
  [],
  {},
  [[[[[[]]]]]],
  { __proto__: null, a: 1 },
];

const KEYS = ["__proto__", "constructor", "", "id", "more", "\u0000", "a.b"];

type Json = Record<string, unknown> | unknown[];

function isBranch(value: unknown): value is Json {
  return typeof value === "object" && value !== null;
}

/** A random object or list inside a value. */
function branchOf(random: RandomSource, value: Json): Json {
  const inner = Object.values(value).filter(isBranch);
  const next = inner[random.below(inner.length + 1)];
  return next === undefined ? value : branchOf(random, next);
}

function mutateJson(random: RandomSource, line: string): string {
  const value: unknown = JSON.parse(line);
  if (!isBranch(value)) return line;
  const branch = branchOf(random, value);
  const keys = Object.keys(branch);
  const key = keys[random.below(keys.length)] ?? "0";
  const odd = ODD[random.below(ODD.length)];
  const set = (name: string, to: unknown) =>
    Object.defineProperty(branch, name, {
      value: to,
      enumerable: true,
      configurable: true,
      writable: true,
    });
  switch (random.below(4)) {
    case 0:
      Reflect.deleteProperty(branch, key);
      break;
    case 1:
      if (!Array.isArray(branch))
        set(KEYS[random.below(KEYS.length)] ?? "", odd);
      break;
    default:
      set(key, odd);
  }
  return JSON.stringify(value);
}

function mutateText(random: RandomSource, line: string): string {
  const at = random.below(line.length + 1);
  const end = at + random.below(5);
  const letters = ['"', "{", "}", ",", "\\", "\u0000", "é", "\n", "9", " "];
  const letter = letters[random.below(letters.length)] ?? "";
  switch (random.below(4)) {
    case 0:
      return line.slice(0, at);
    case 1:
      return line.slice(0, at) + line.slice(end);
    case 2:
      return line.slice(0, at) + letter + line.slice(at);
    default:
      return line.slice(0, at) + letter + line.slice(at + 1);
  }
}

/** Writes header and end anew, so that they tell what is there. */
function recounted(lines: readonly string[]): string[] {
  const count = (kind: string) =>
    lines.filter((line) => line.startsWith(`{"${kind}":`)).length;
  const damaged = count("damaged");
  const learners = count("learner");
  const decks = count("deck");
  const reviews = count("review");
  const settings = count("settings");
  const runs = count("run") + count("damagedRun");
  const sheets = count("sheet");
  const classmates = count("classmate");
  const heard = count("heard");
  const inStore = { learners, settings, decks, reviews, damaged, runs };
  const end = { ...inStore, sheets, classmates, heard };
  return lines.map((line) => {
    if (line.startsWith('{"end":')) return JSON.stringify({ end });
    if (!line.startsWith('{"turnwise":"backup"') || !isJson(line)) return line;
    const header = JSON.parse(line) as Record<string, unknown>;
    const about = { learners, decks, reviews: reviews + damaged, runs };
    return JSON.stringify({ ...header, ...about });
  });
}

function odder(random: RandomSource, line: string): string {
  switch (random.below(6)) {
    case 0:
      return `{"deck":${"[".repeat(random.below(3 * DEEPEST_LINE))}`;
    case 1:
      return '{"photo":{"a":1}}';
    case 2:
      return line.replace('"readableFrom":2', '"version":8,"readableFrom":7');
    case 3:
      return line.replace(`"version":${BACKUP_VERSION}`, '"version":8');
    case 4:
      return line + line;
    default:
      // Seldom, because it is a megabyte.
      return random.below(20) === 0
        ? `{"deck":{"id":"${"x".repeat(LONGEST_LINE)}"}}`
        : "";
  }
}

/** The lines of a backup with one to three mistakes in them. */
export function mutatedLines(random: RandomSource): readonly string[] {
  let lines = sampleLines(true);
  const mistakes = 1 + random.below(3);
  for (let i = 0; i < mistakes; i += 1) {
    const at = random.below(lines.length);
    const line = lines[at] ?? "";
    const other = random.below(lines.length);
    switch (random.below(10)) {
      case 0:
        lines = lines.slice(0, at);
        break;
      case 1:
        lines.splice(at, 1);
        break;
      case 2:
        for (let n = 1 + random.below(6); n > 0; n -= 1)
          lines.splice(other, 0, line);
        break;
      case 3:
        lines[at] = mutateText(random, line);
        break;
      case 4:
        lines[at] = odder(random, line);
        break;
      default:
        if (isJson(line)) lines[at] = mutateJson(random, line);
    }
    if (lines.length === 0) return [];
  }
  return random.below(2) === 0 ? recounted(lines) : lines;
}

function isJson(line: string): boolean {
  try {
    JSON.parse(line);
    return true;
  } catch {
    return false;
  }
}

/** Whether every line is JSON, so that nothing is refused for its form alone. */
export function areJsonLines(lines: readonly string[]): boolean {
  return lines.length > 0 && lines.every(isJson);
}
