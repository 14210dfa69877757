/** What the window and the way finder's worker say to each other; either side parses what it hears. */
import * as v from "valibot";
import { CASE_ID } from "../../core/cases/case-id-schema";
import { readBySchema } from "../../core/memory/stored-row";
import type { Result } from "../../core/result";
import {
  CANCEL,
  FAILED,
  type MessageError,
  PROGRESS,
  REQUEST_ID,
  TURNS,
} from "./message-schemas";

/** What the worker is called that looks for ways. */
export const WAY_FINDER = "way finder";

const REQUEST = v.variant("kind", [
  v.object({
    kind: v.literal("find-ways"),
    id: REQUEST_ID,
    case: CASE_ID,
    mostTurns: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(20)),
  }),
  CANCEL,
]);

const REPLY = v.variant("kind", [
  PROGRESS,
  /** A way that is there before the shortest are looked for. */
  v.object({ kind: v.literal("at-once"), id: REQUEST_ID, way: TURNS }),
  v.object({
    kind: v.literal("found"),
    id: REQUEST_ID,
    ways: v.pipe(v.array(TURNS), v.readonly()),
    mostTurns: v.number(),
  }),
  FAILED,
]);

/** What the window asks for. */
export type WayRequest = v.InferOutput<typeof REQUEST>;

/** What the worker says. After "found" or "failed" it says no more of that id. */
export type WayReply = v.InferOutput<typeof REPLY>;

/** Reads what the window asks. */
export function parseWayRequest(
  message: unknown,
): Result<WayRequest, MessageError> {
  return readBySchema(REQUEST, message);
}

/** Reads what the worker says. */
export function parseWayReply(
  message: unknown,
): Result<WayReply, MessageError> {
  return readBySchema(REPLY, message);
}
