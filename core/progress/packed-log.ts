/**
 * A log as a few arrays of numbers, to be handed to a worker: they change
 * hands without being copied, where the reviews themselves would be copied
 * one by one on the window's own thread.
 */
import type { CaseId } from "../cases/case-ids";
import { HOLDS } from "../cases/variant";
import { PIECE_NAMES } from "../cube/pieces";
import { Digest } from "../digest";
import { invariant, present } from "../invariant";
import { dayNumber } from "../memory/local-day";
import {
  ANSWER_WAYS,
  ASKINGS,
  type Hint,
  HINTS,
  type Milliseconds,
  type Mistook,
  type Review,
} from "../memory/review";
import {
  type AnswerList,
  committedTurns,
  type LoggedAnswer,
  type ProgressAnswer,
} from "./answer-log";

/** The columns of a log, each with one number an answer. */
export interface LogColumns {
  /** The case's number in `cases`, and that of the case it was answered as; none is `NO_CASE`. */
  readonly cases: Uint16Array<ArrayBuffer>;
  readonly answeredAs: Uint16Array<ArrayBuffer>;
  /** A piece's number times how many there are, and that of the one it was taken for; none is `NO_PIECES`. */
  readonly mistook: Uint16Array<ArrayBuffer>;
  /** Everything that is one of a few, in bits. */
  readonly choices: Uint16Array<ArrayBuffer>;
  readonly corrections: Uint16Array<ArrayBuffer>;
  readonly committedTurns: Uint16Array<ArrayBuffer>;
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

/** The columns of a packed log, to do something with each. */
export function columnsOf({
  columns,
}: Pick<PackedLog, "columns">): readonly LogColumns[keyof LogColumns][] {
  return Object.values<LogColumns[keyof LogColumns]>({ ...columns });
}

const NO_CASE = 0xffff;
const NO_PIECES = 0xffff;
/** Nobody corrects or turns so often. */
const MOST = 0xffff;

/** Where in `choices` each choice begins; each has room to grow. */
const BITS = {
  hold: 0,
  asking: 1,
  answerWay: 4,
  interrupted: 8,
  missed: 9,
  hints: 10,
  untimed: 15,
} as const;

const WIDTHS = { hold: 1, asking: 3, answerWay: 4, hints: 5 } as const;

function hintBits(hints: readonly Hint[]): number {
  let bits = 0;
  for (const hint of hints) bits |= 1 << HINTS.indexOf(hint);
  return bits;
}

function choicesOf(answer: ProgressAnswer): number {
  return (
    (HOLDS.indexOf(answer.hold) << BITS.hold) |
    (ASKINGS.indexOf(answer.asking) << BITS.asking) |
    (ANSWER_WAYS.indexOf(answer.answerWay) << BITS.answerWay) |
    (Number(answer.interrupted) << BITS.interrupted) |
    (Number(answer.verdict === "missed") << BITS.missed) |
    (hintBits(answer.hints) << BITS.hints) |
    (Number(answer.untimed === true) << BITS.untimed)
  );
}

function piecesOf(mistook: Mistook | undefined): number {
  return mistook === undefined
    ? NO_PIECES
    : PIECE_NAMES.indexOf(mistook.piece) * PIECE_NAMES.length +
        PIECE_NAMES.indexOf(mistook.for);
}

/** What of a review is packed. */
export type PackedAnswer = ProgressAnswer & Pick<Review, "turns">;

/** Packs a log answer by answer, so that the caller can take breaths. */
export interface LogPacker {
  /** The next answer of the log; as many as were announced. */
  add(answer: PackedAnswer): void;
  finish(): PackedLog;
}

/** A packer for a log of so many answers. */
export function logPacker(count: number): LogPacker {
  const cases: CaseId[] = [];
  const numbers = new Map<CaseId, number>();
  const columns: LogColumns = {
    cases: new Uint16Array(count),
    answeredAs: new Uint16Array(count),
    mistook: new Uint16Array(count),
    choices: new Uint16Array(count),
    corrections: new Uint16Array(count),
    committedTurns: new Uint16Array(count),
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
      columns.mistook[next] = piecesOf(answer.mistook);
      columns.choices[next] = choicesOf(answer);
      columns.corrections[next] = Math.min(answer.corrections, MOST);
      columns.committedTurns[next] = Math.min(committedTurns(answer), MOST);
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
export function packLog(log: readonly PackedAnswer[]): PackedLog {
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

/** Which hints some bits stand for, for all of them. */
const HINT_LISTS = Array.from({ length: 1 << HINTS.length }, (_, bits) =>
  HINTS.filter((_, i) => (bits >> i) & 1),
);

function mistookAt(pieces: number | undefined): Mistook | undefined {
  if (pieces === undefined || pieces === NO_PIECES) return undefined;
  const count = PIECE_NAMES.length;
  const piece = PIECE_NAMES[Math.floor(pieces / count)];
  const taken = PIECE_NAMES[pieces % count];
  return {
    piece: present(piece, "a packed piece is known"),
    for: present(taken, "a packed piece is known"),
  };
}

function known(time: number | undefined): number | undefined {
  return time === undefined || Number.isNaN(time) ? undefined : time;
}

/** A packed log to look at: its answers are made one by one, each time they are looked at. Hints come in rising order, each once. */
export function unpacked({ cases, columns }: PackedLog): AnswerList {
  const caseAt = (number: number | undefined) =>
    present(cases[number ?? NO_CASE], "a packed case is known");
  return {
    length: columns.choices.length,
    at(i): LoggedAnswer | undefined {
      const choices = columns.choices[i];
      if (choices === undefined) return undefined;
      const answeredAs = columns.answeredAs[i];
      return {
        case: caseAt(columns.cases[i]),
        hold: oneOf(HOLDS, choices, "hold"),
        localDay: dayNumber(columns.days[i] ?? 0),
        asking: oneOf(ASKINGS, choices, "asking"),
        answerWay: oneOf(ANSWER_WAYS, choices, "answerWay"),
        interrupted: ((choices >> BITS.interrupted) & 1) === 1,
        verdict: (choices >> BITS.missed) & 1 ? "missed" : "right",
        answeredAs: answeredAs === NO_CASE ? undefined : caseAt(answeredAs),
        mistook: mistookAt(columns.mistook[i]),
        corrections: columns.corrections[i] ?? 0,
        committedTurns: columns.committedTurns[i] ?? 0,
        hints:
          HINT_LISTS[(choices >> BITS.hints) & ((1 << WIDTHS.hints) - 1)] ?? [],
        thinking: known(columns.thinking[i]),
        turning: known(columns.turning[i]),
        total: (columns.total[i] ?? 0) as Milliseconds,
        untimed: (choices >> BITS.untimed) & 1 ? true : undefined,
        target: columns.target[i] ?? 0,
      };
    },
  };
}

/**
 * A digest of a packed log: two logs with the same one are the same but for a
 * chance of one in 2^53 or so. No protection against somebody who wants two
 * to agree, who would deceive only themselves.
 */
export function logDigest({ cases, columns }: PackedLog): string {
  const digest = new Digest();
  for (const id of cases) digest.takeText(id);
  for (const column of columnsOf({ columns })) {
    const words = new Int32Array(
      column.buffer,
      0,
      Math.floor(column.byteLength / 4),
    );
    for (let i = 0; i < words.length; i++) digest.take(words[i] ?? 0);
    // Half a word at the end.
    if (column.byteLength % 4 !== 0) digest.take(column.at(-1) ?? 0);
  }
  const hex = (word: number) => (word >>> 0).toString(16).padStart(8, "0");
  return `${columns.choices.length}-${hex(digest.forward)}${hex(digest.mixed)}`;
}
