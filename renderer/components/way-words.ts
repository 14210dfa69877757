/** Ways and their lengths, as people read them. */
import type { Turn } from "../../core/cube/turns";

import {
  repetitionIn,
  stretchesOf,
  WAY_SCHOOLS,
  type WaySchool,
} from "../../core/cases/way";
import { formatTurns } from "../../core/notation/format";
import {
  outerBlockTurns,
  quarterTurns,
  turnsMade,
} from "../../core/notation/metrics";
import { turnsInWords } from "../../core/notation/say-in-words";
import { capitalised } from "../../core/notation/sentence";

/** What is particular about each school's ways, in a few words. */
export const SCHOOL_NAMES: Readonly<Record<WaySchool, string>> = {
  first: "A way of its own",
  repeating: "One pattern, repeated",
  "repeating-bottom-first": "One pattern, the bottom first",
  shortest: "The fewest turns",
  easiest: "The least trouble",
};

/** What is particular about ways that several schools have in common: "The fewest turns, and the least trouble". */
export function schoolsInWords(schools: readonly WaySchool[]): string {
  return WAY_SCHOOLS.filter((school) => schools.includes(school))
    .map((school, i) => {
      const name = SCHOOL_NAMES[school];
      return i === 0 ? name : name.charAt(0).toLowerCase() + name.slice(1);
    })
    .join(", and ");
}

const TIMES = ["", "once", "twice", "three times", "four times", "five times"];

/** How many times, in words. */
export function timesInWords(times: number): string {
  return TIMES[times] ?? `${times} times`;
}

/** A length in turns as they are counted off a way: "1 turn", "4 turns". Whole-cube turns do not count. */
export function turnCount(turns: readonly Turn[]): string {
  const count = turnsMade(turns);
  return count === 1 ? "1 turn" : `${count} turns`;
}

/** A length with both metrics, where they say more: "8 turns (10 of outer layers, 12 quarters)". */
export function turnCounts(turns: readonly Turn[]): string {
  const made = turnsMade(turns);
  const outer = outerBlockTurns(turns);
  const quarters = quarterTurns(turns);
  const more = [
    ...(outer === made ? [] : [`${outer} of outer layers`]),
    ...(quarters === made ? [] : [`${quarters} quarters`]),
  ];
  return more.length === 0
    ? turnCount(turns)
    : `${turnCount(turns)} (${more.join(", ")})`;
}

/** A way on one line: its turns, repeated parts written once. */
export function wayOnOneLine(turns: readonly Turn[]): string {
  const repeated = repetitionIn(turns);
  if (repeated !== undefined) {
    const { before, part, times } = repeated;
    const first = before.length === 0 ? "" : `${formatTurns(before)}, then `;
    return `${first}${formatTurns(part)}, ${timesInWords(times)}`;
  }
  return stretchesOf(turns)
    .map(({ part, times }) =>
      times === 1
        ? formatTurns(part)
        : `(${formatTurns(part)}) ${timesInWords(times)}`,
    )
    .join(", ");
}

/** A way in words, repeated parts said once: "Turn the right side down, … Three times." */
export function wayInWords(turns: readonly Turn[]): string {
  const repeated = repetitionIn(turns);
  if (repeated !== undefined) {
    const { before, part, times } = repeated;
    return [
      before.length === 0 ? "" : `${turnsInWords(before)} Then: `,
      `${turnsInWords(part)} `,
      `${capitalised(timesInWords(times))}.`,
    ].join("");
  }
  return stretchesOf(turns)
    .map(({ part, times }) =>
      times === 1
        ? turnsInWords(part)
        : `${capitalised(timesInWords(times))}: ${turnsInWords(part)}`,
    )
    .join(" ");
}
