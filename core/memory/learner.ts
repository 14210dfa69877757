/** Somebody who practises on this machine, as a row or a file has them. */
import * as v from "valibot";
import type { Result } from "../result";
import { readBySchema, type StoredRowError } from "./stored-row";

/** The longest name a learner may have. Units: UTF-16 code units. */
export const LONGEST_NAME = 40;

/**
 * A name without what no screen can show: control characters, and those that
 * turn the direction of the writing around them. White space is one space.
 */
function shownName(text: string): string {
  return text
    .replace(/\s+/g, " ")
    .replace(/[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu, "")
    .trim();
}

const NAME = v.pipe(
  v.string(),
  v.transform(shownName),
  v.minLength(1),
  v.maxLength(LONGEST_NAME),
);

const LEARNER = v.looseObject({
  id: v.pipe(v.string(), v.uuid()),
  name: NAME,
  createdAt: v.pipe(v.number(), v.finite()),
});

/** Somebody who practises. */
export interface Learner {
  /** A random UUID: two learners of one name stay two. */
  readonly id: string;
  readonly name: string;
  /** When they began, UTC. Units: milliseconds. */
  readonly createdAt: number;
}

/** The name a person typed, or undefined where it is empty or too long. */
export function parseLearnerName(text: string): string | undefined {
  const parsed = v.safeParse(NAME, text);
  return parsed.success ? parsed.output : undefined;
}

/** The learner that a stored row or a file holds; fields that this version does not know are kept. */
export function parseLearner(row: unknown): Result<Learner, StoredRowError> {
  return readBySchema(LEARNER, row);
}
