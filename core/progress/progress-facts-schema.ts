/** Reading progress facts that come from a worker or from the store's cache. */
import * as v from "valibot";
import { CASE_ID } from "../cases/case-id-schema";
import { HOLDS } from "../cases/variant";
import { ANSWER_WAYS } from "../memory/review";
import {
  COUNT,
  LOCAL_DAY,
  MILLISECONDS,
  readBySchema,
  type StoredRowError,
} from "../memory/stored-row";
import { PIECE_NAMES } from "../cube/pieces";
import type { Result } from "../result";
import { PIECE_WAYS } from "./confusions";
import type { ProgressFacts } from "./progress-facts";

const AMOUNT = v.pipe(v.number(), v.finite(), v.minValue(0));

const list = <Item extends v.GenericSchema>(item: Item) =>
  v.pipe(v.array(item), v.readonly());

const ASKED_CASE = { case: CASE_ID, hold: v.picklist(HOLDS) };

const OVER_DAYS = {
  periodDays: v.pipe(COUNT, v.minValue(1)),
  periods: list(
    v.object({
      day: LOCAL_DAY,
      answers: COUNT,
      total: AMOUNT,
      thinking: v.exactOptional(AMOUNT),
    }),
  ),
};

const FACTS = v.object({
  answers: COUNT,
  firstDay: v.exactOptional(LOCAL_DAY),
  times: list(
    v.object({
      ...ASKED_CASE,
      answerWay: v.picklist(ANSWER_WAYS),
      answers: COUNT,
      total: AMOUNT,
      thinking: v.exactOptional(AMOUNT),
      turning: v.exactOptional(AMOUNT),
      usualThinking: v.exactOptional(AMOUNT),
      turns: v.exactOptional(v.object({ usual: COUNT, besideOthers: AMOUNT })),
      target: AMOUNT,
    }),
  ),
  allOverDays: v.object(OVER_DAYS),
  casesOverDays: list(
    v.object({
      ...ASKED_CASE,
      ...OVER_DAYS,
      answerWay: v.picklist(ANSWER_WAYS),
      lastAttempts: list(v.union([MILLISECONDS, v.literal("did-not-finish")])),
    }),
  ),
  confusions: v.object({
    pairs: list(
      v.object({
        ...ASKED_CASE,
        answeredAs: CASE_ID,
        times: COUNT,
        lastDay: LOCAL_DAY,
      }),
    ),
    missed: COUNT,
    pieces: list(
      v.object({
        answerWay: v.picklist(PIECE_WAYS),
        piece: v.picklist(PIECE_NAMES),
        for: v.picklist(PIECE_NAMES),
        times: COUNT,
        lastDay: LOCAL_DAY,
      }),
    ),
  }),
  forecast: v.object({
    bins: list(
      v.object({
        foretold: v.pipe(AMOUNT, v.maxValue(1)),
        right: COUNT,
        answers: v.pipe(COUNT, v.minValue(1)),
      }),
    ),
    answers: COUNT,
    right: COUNT,
    expected: AMOUNT,
    spread: AMOUNT,
  }),
  kept: list(
    v.object({ day: LOCAL_DAY, kept: COUNT, settling: COUNT, fading: COUNT }),
  ),
});

/** The facts that a message or a cached row holds. */
export function parseProgressFacts(
  value: unknown,
): Result<ProgressFacts, StoredRowError> {
  return readBySchema(FACTS, value);
}
