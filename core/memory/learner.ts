/** Somebody who practises on this machine, as a row or a file has them. */
import * as v from "valibot";
import type { Result } from "../result";
import { readBySchema, type StoredRowError } from "./stored-row";

/** The longest name a learner may have. Units: UTF-16 code units. */
export const LONGEST_NAME = 40;

/**
 * What no screen can show: control characters, halves of a letter, and signs
 * of formatting, some of which turn the direction of the writing around them.
 * Three of these stay: the two joiners, without which some languages and
 * pictures fall apart, and the tags of which flags are made.
 */
const UNSEEN = /[\p{Cc}\p{Cs}]|(?!\u200c|\u200d|[\u{e0020}-\u{e007f}])\p{Cf}/gu;

/** Something of which a person sees a mark. The fillers are letters by name alone. */
const SEEN = /(?![\u115f\u1160\u3164\uffa0\u2800])[\p{L}\p{N}\p{P}\p{S}]/u;

/** A text without what no screen can show. White space is one space. Empty where nothing of it would be seen. */
export function shownText(text: string): string {
  const shown = text.replace(/\s+/g, " ").replace(UNSEEN, "").trim();
  return SEEN.test(shown) ? shown : "";
}

/** A name that a row or a file holds, cleaned. */
export const SHOWN_NAME = v.pipe(
  v.string(),
  v.transform(shownText),
  v.minLength(1),
  v.maxLength(LONGEST_NAME),
);

/**
 * The colours that learners are told apart by on one machine, besides by name
 * and first letter. Dark and muted: the strong colours are the cube's.
 */
export const TAGS = [
  "plum",
  "slate",
  "clay",
  "pine",
  "ochre",
  "rosewood",
  "iris",
  "umber",
] as const;

/** One of the colours of `TAGS`. */
export type Tag = (typeof TAGS)[number];

const LEARNER = v.looseObject({
  id: v.pipe(v.string(), v.uuid()),
  name: SHOWN_NAME,
  createdAt: v.pipe(v.number(), v.finite()),
  tag: v.exactOptional(v.string()),
});

/** Somebody who practises. */
export interface Learner {
  /** A random UUID: two learners of one name stay two. */
  readonly id: string;
  readonly name: string;
  /** When they began, UTC. Units: milliseconds. */
  readonly createdAt: number;
  /** The colour they chose; one that this version does not know counts as none. */
  readonly tag?: string;
}

/** A learner's colour: the one they chose, or else one that is theirs by their id. */
export function tagOf({ id, tag }: Pick<Learner, "id" | "tag">): Tag {
  const chosen = TAGS.find((one) => one === tag);
  // The digits of a random UUID are as good as dice.
  const drawn = Number.parseInt(id.slice(0, 8), 16) % TAGS.length;
  return chosen ?? TAGS[drawn] ?? TAGS[0];
}

/** The first letter of a name, as a person counts letters. Shape: upper case, one grapheme. */
export function initialOf(name: string): string {
  const [first] = new Intl.Segmenter().segment(name);
  return (first?.segment ?? "").toLocaleUpperCase("en");
}

/** The name a person typed, or undefined where it is empty or too long. */
export function parseLearnerName(text: string): string | undefined {
  const parsed = v.safeParse(SHOWN_NAME, text);
  return parsed.success ? parsed.output : undefined;
}

/** The learner that a stored row or a file holds; fields that this version does not know are kept. */
export function parseLearner(row: unknown): Result<Learner, StoredRowError> {
  return readBySchema(LEARNER, row);
}
