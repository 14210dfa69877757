/**
 * A log as a few arrays of numbers, to be handed to a worker: they change
 * hands without being copied, where the reviews themselves would be copied
 * one by one on the window's own thread.
 */
import type { CaseId } from "../cases/case-ids";
import { HOLDS } from "../cases/variant";
import { invariant, present } from "../invariant";
import { dayNumber } from "../memory/local-day";
import {
  ANSWER_WAYS,
  ASKINGS,
  HINTS,
  type Milliseconds,
} from "../memory/review";
import type { ProgressAnswer } from "./answer-log";

/** The columns of a log, each with one number an answer. */
export interface LogColumns {
  /** The case's number in `cases`, and that of the case it was answered as; none is `NO_CASE`. */
  readonly cases: Uint16Array<ArrayBuffer>;
  readonly answeredAs: Uint16Array<ArrayBuffer>;
  /** Everything that is one of a few, in bits. */
  readonly choices: Uint16Array<ArrayBuffer>;
  readonly corrections: Uint16Array<ArrayBuffer>;
  readonly days: Int32Array<ArrayBuffer>;
  /** Units: milliseconds; not known is not a number. */
  readonly thinking: Float64Array<ArrayBuffer>;
  readonly turning: Float64Array<ArrayBuffer>;
  readonly total: Float64Array<ArrayBuffer>;
  /** Units: seconds. */
  readonly target: Float64Array<ArrayBuffer>;
}

/** A learner's log in the order of replay, as far as progress looks at it. */
export interface PackedLog {
  readonly cases: readonly CaseId[];
  readonly columns: LogColumns;
}

const NO_CASE = 0xffff;
const MOST_CORRECTIONS = 0xffff;

/** Where in `choices` each choice begins; each has room to grow. */
const BITS = {
  hold: 0,
  asking: 1,
  answerWay: 4,
  interrupted: 8,
  missed: 9,
  hints: 10,
} as const;

const WIDTHS = { hold: 1, asking: 3, answerWay: 4, hints: 6 } as const;

function choicesOf(answer: ProgressAnswer): number {
  const hints = HINTS.reduce(
    (bits, hint, i) => bits | (answer.hints.includes(hint) ? 1 << i : 0),
    0,
  );
  return (
    (HOLDS.indexOf(answer.hold) << BITS.hold) |
    (ASKINGS.indexOf(answer.asking) << BITS.asking) |
    (ANSWER_WAYS.indexOf(answer.answerWay) << BITS.answerWay) |
    (Number(answer.interrupted) << BITS.interrupted) |
    (Number(answer.verdict === "missed") << BITS.missed) |
    (hints << BITS.hints)
  );
}

/** Packs a log answer by answer, so that the caller can take breaths. */
export interface LogPacker {
  /** The next answer of the log; as many as were announced. */
  add(answer: ProgressAnswer): void;
  finish(): PackedLog;
}

/** A packer for a log of so many answers. */
export function logPacker(count: number): LogPacker {
  const cases: CaseId[] = [];
  const numbers = new Map<CaseId, number>();
  const columns: LogColumns = {
    cases: new Uint16Array(count),
    answeredAs: new Uint16Array(count),
    choices: new Uint16Array(count),
    corrections: new Uint16Array(count),
    days: new Int32Array(count),
    thinking: new Float64Array(count),
    turning: new Float64Array(count),
    total: new Float64Array(count),
    target: new Float64Array(count),
  };
  let next = 0;
  const numberOf = (id: CaseId) => {
    const known = numbers.get(id);
    if (known !== undefined) return known;
    invariant(cases.length < NO_CASE, "there are fewer cases than numbers");
    numbers.set(id, cases.length);
    return cases.push(id) - 1;
  };
  return {
    add(answer) {
      invariant(next < count, "no more answers than were announced");
      const { answeredAs, thinking = NaN, turning = NaN } = answer;
      columns.cases[next] = numberOf(answer.case);
      columns.answeredAs[next] =
        answeredAs === undefined ? NO_CASE : numberOf(answeredAs);
      columns.choices[next] = choicesOf(answer);
      columns.corrections[next] = Math.min(
        answer.corrections,
        MOST_CORRECTIONS,
      );
      columns.days[next] = answer.localDay;
      columns.thinking[next] = thinking;
      columns.turning[next] = turning;
      columns.total[next] = answer.total;
      columns.target[next] = answer.target;
      next += 1;
    },
    finish() {
      invariant(next === count, "as many answers as were announced");
      return { cases, columns };
    },
  };
}

/** A packed log, for those who have the time to do it at once. */
export function packLog(log: readonly ProgressAnswer[]): PackedLog {
  const packer = logPacker(log.length);
  for (const answer of log) packer.add(answer);
  return packer.finish();
}

function oneOf<T>(
  values: readonly T[],
  choices: number,
  name: "hold" | "asking" | "answerWay",
): T {
  const number = (choices >> BITS[name]) & ((1 << WIDTHS[name]) - 1);
  return present(values[number], "a packed choice is known");
}

function known(time: number): Milliseconds | undefined {
  return Number.isNaN(time) ? undefined : (time as Milliseconds);
}

/** The answers of a packed log. Hints come in rising order, each once. */
export function unpackLog({
  cases,
  columns,
}: PackedLog): readonly ProgressAnswer[] {
  const hints = Array.from({ length: 1 << HINTS.length }, (_, bits) =>
    HINTS.filter((_, i) => (bits >> i) & 1),
  );
  const caseAt = (number: number | undefined) =>
    present(cases[number ?? NO_CASE], "a packed case is known");
  return Array.from(columns.choices, (choices, i): ProgressAnswer => {
    const answeredAs = columns.answeredAs[i];
    const thinking = known(columns.thinking[i] ?? NaN);
    const turning = known(columns.turning[i] ?? NaN);
    return {
      case: caseAt(columns.cases[i]),
      hold: oneOf(HOLDS, choices, "hold"),
      localDay: dayNumber(columns.days[i] ?? 0),
      asking: oneOf(ASKINGS, choices, "asking"),
      answerWay: oneOf(ANSWER_WAYS, choices, "answerWay"),
      interrupted: ((choices >> BITS.interrupted) & 1) === 1,
      verdict: (choices >> BITS.missed) & 1 ? "missed" : "right",
      ...(answeredAs === NO_CASE ? {} : { answeredAs: caseAt(answeredAs) }),
      corrections: columns.corrections[i] ?? 0,
      hints: hints[choices >> BITS.hints] ?? [],
      ...(thinking === undefined ? {} : { thinking }),
      ...(turning === undefined ? {} : { turning }),
      total: (columns.total[i] ?? 0) as Milliseconds,
      target: columns.target[i] ?? 0,
    };
  });
}

/** What FNV-1a begins with and multiplies by. Source: draft-eastlake-fnv, 32 bits. */
const FNV_START = 0x811c9dc5;
const FNV_PRIME = 0x01000193;

/**
 * A digest of a packed log: two logs with the same one are the same but for a
 * chance of one in 2^53 or so. No protection against somebody who wants two
 * to agree, who would deceive only themselves.
 */
export function logDigest({ cases, columns }: PackedLog): string {
  let forward = FNV_START;
  let mixed = ~FNV_START;
  const take = (word: number) => {
    forward = Math.imul(forward ^ word, FNV_PRIME);
    // Multiplying carries upwards only; this one turns the high bits down.
    mixed = Math.imul((mixed << 13) | (mixed >>> 19), 5) ^ word;
  };
  for (const id of cases)
    for (let i = 0; i < id.length; i++) take(id.charCodeAt(i));
  for (const column of Object.values(columns) as Iterable<
    LogColumns[keyof LogColumns]
  >) {
    const even = column.byteLength - (column.byteLength % 4);
    for (const word of new Int32Array(column.buffer, 0, even / 4)) take(word);
    if (even < column.byteLength) take(column.at(-1) ?? 0);
  }
  const hex = (word: number) => (word >>> 0).toString(16).padStart(8, "0");
  return `${columns.choices.length}-${hex(forward)}${hex(mixed)}`;
}
