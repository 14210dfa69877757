/**
 * What somebody types in from a sheet, and the answers that it makes.
 *
 * A case sheet has seven boxes a row, one a day. A practice sheet has one box
 * a row and room for three times: the first belongs to the box, the others are
 * the same position once more.
 */
import type { Asking, Milliseconds, Review } from "../memory/review";
import { err, ok, type Result } from "../result";
import type { CodedKind } from "./sheet-code";

/** How a box was filled in: ticked or crossed. */
export type Tick = Review["verdict"];

/** How many boxes and how many times a row of a sheet has. */
export const ROW_SHAPES = {
  cases: { ticks: 7, times: 0 },
  practice: { ticks: 1, times: 3 },
} as const satisfies Readonly<
  Record<CodedKind, { readonly ticks: number; readonly times: number }>
>;

/** A row as it is entered. Shape: as long as `ROW_SHAPES` says. */
export interface EnteredRow {
  readonly ticks: readonly (Tick | undefined)[];
  /** As they were typed; empty: none. */
  readonly times: readonly string[];
}

/** A row with nothing in it. */
export function emptyRow(kind: CodedKind): EnteredRow {
  const { ticks, times } = ROW_SHAPES[kind];
  return {
    ticks: new Array<undefined>(ticks).fill(undefined),
    times: new Array<string>(times).fill(""),
  };
}

/** Why a text is no time. */
export interface WrittenTimeError {
  /** `too-long` is a time of over ten minutes: somebody went away. */
  readonly code: "not-a-time" | "too-long";
}

/** Units: milliseconds. Source: as long as an answer in the app may be before it counts as left alone. */
const LONGEST = 10 * 60_000;

const WRITTEN =
  /^(?:(\d{1,2}):(?=[0-5]\d(?:\D|$)))?(\d{1,4})(?:[.,](\d{1,3}))?$/;

/** A time as children write it: "4", "4.2", "4,25", "1:05", each with or without an s. */
export function parseWrittenTime(
  text: string,
): Result<Milliseconds, WrittenTimeError> {
  const [all, minutes = "0", seconds = "", decimals = ""] =
    WRITTEN.exec(text.trim().replace(/\s*s(?:ec)?\.?$/i, "")) ?? [];
  const time =
    Number(minutes) * 60_000 +
    Number(seconds) * 1000 +
    Number(decimals.padEnd(3, "0"));
  if (all === undefined || time === 0) return err({ code: "not-a-time" });
  return time > LONGEST ? err({ code: "too-long" }) : ok(time as Milliseconds);
}

/** One answer of a row. */
export interface PaperAnswer {
  /** Which box on a case sheet, which try on a practice sheet; from 0. */
  readonly place: number;
  /** How many days after the first it was given. */
  readonly days: number;
  readonly verdict: Tick;
  readonly asking: Extract<Asking, "alone" | "again">;
  /** Undefined: nobody took the time. */
  readonly total: Milliseconds | undefined;
}

/** A time that is none, and which of the row's it is, from 0. */
export type EnteredRowError = WrittenTimeError & { readonly time: number };

/** The answers that a row makes; a time alone says that it worked. */
export function answersOfRow(
  kind: CodedKind,
  { ticks, times }: EnteredRow,
): Result<readonly PaperAnswer[], EnteredRowError> {
  if (kind === "cases")
    return ok(
      ticks.flatMap((verdict, place) =>
        verdict === undefined
          ? []
          : [
              {
                place,
                days: place,
                verdict,
                asking: "alone",
                total: undefined,
              },
            ],
      ),
    );
  const totals: (Milliseconds | undefined)[] = [];
  for (const [time, text] of times.entries()) {
    const read = text.trim() === "" ? ok(undefined) : parseWrittenTime(text);
    if (!read.ok) return err({ ...read.error, time });
    totals.push(read.value);
  }
  const [first, ...more] = totals;
  const isTimed = totals.some((total) => total !== undefined);
  const verdict = ticks[0] ?? (isTimed ? "right" : undefined);
  if (verdict === undefined) return ok([]);
  return ok([
    { place: 0, days: 0, verdict, asking: "alone", total: first },
    ...more.flatMap((total, n): readonly PaperAnswer[] =>
      total === undefined
        ? []
        : [{ place: n + 1, days: 0, verdict: "right", asking: "again", total }],
    ),
  ]);
}
