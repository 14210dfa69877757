/**
 * What a row from storage or a file must satisfy, and how it is refused: with
 * a code and the dotted path of the field, never with the schema library's own
 * sentences.
 */
import * as v from "valibot";
import { err, ok, type Result } from "../result";
import type { LocalDay, Milliseconds } from "./review";

/** Why a stored row cannot be read, and where. */
export interface StoredRowError {
  readonly code:
    | "missing-field"
    | "wrong-type"
    | "unknown-value"
    | "out-of-range"
    | "malformed-text"
    | "contradiction";
  /** The dotted path; empty for the row itself. */
  readonly field: string;
}

type Issue = Pick<v.BaseIssue<unknown>, "kind" | "type" | "received" | "path">;

function codeOf(issue: Issue): StoredRowError["code"] {
  if (issue.received === "undefined") return "missing-field";
  if (["picklist", "literal", "custom"].includes(issue.type))
    return "unknown-value";
  if (issue.kind === "schema") return "wrong-type";
  if (issue.type === "regex") return "malformed-text";
  return issue.type === "check" ? "contradiction" : "out-of-range";
}

function fieldOf(issue: Issue): string {
  return (issue.path ?? []).map((item) => String(item.key)).join(".");
}

/** Reads a value by a schema. Errors: the first issue, as a code and a field. */
export function readBySchema<Output>(
  schema: v.GenericSchema<unknown, Output>,
  value: unknown,
): Result<Output, StoredRowError> {
  const parsed = v.safeParse(schema, value, { abortEarly: true });
  if (parsed.success) return ok(parsed.output);
  const [issue] = parsed.issues;
  return err({ code: codeOf(issue), field: fieldOf(issue) });
}

/** A number that counts things: an integer from 0. */
export const COUNT = v.pipe(v.number(), v.integer(), v.minValue(0));

/** The last instant that a calendar has (ECMA-262, time values). Units: milliseconds. */
const LAST_INSTANT = 8.64e15;

/** A duration or an instant since the Unix epoch. */
export const MILLISECONDS = v.pipe(
  v.number(),
  v.minValue(0),
  v.maxValue(LAST_INSTANT),
  v.transform((value) => value as Milliseconds),
);

/** A learner's day: none before there were computers to keep it, none that no calendar has. */
export const LOCAL_DAY = v.pipe(
  v.number(),
  v.integer(),
  v.minValue(0),
  v.maxValue(LAST_INSTANT / 86_400_000),
  v.transform((value) => value as LocalDay),
);

/** A target in seconds. */
export const TARGET = v.pipe(v.number(), v.finite(), v.minValue(0.1));

/** 54 facelets, `?` where unknown. */
export const FACELETS = v.pipe(v.string(), v.regex(/^[URFDLB?]{54}$/));

/** A variant of a case. Whether the case allows it is another question. */
export const VARIANT = v.object({
  home: v.picklist([0, 1, 2, 3]),
  placed: v.array(v.picklist([0, 1, 2, 3])),
  turnedAway: v.picklist([0, 1, 2, 3]),
  seenFrom: v.picklist([0, 1, 2, 3]),
});
