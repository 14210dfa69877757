/** What the window and the way finder's worker say to each other; either side parses what it hears. */
import * as v from "valibot";
import { CASE_ID } from "../../core/cases/case-id-schema";
import { TURN_LAYERS } from "../../core/cube/turns";
import {
  readBySchema,
  type StoredRowError,
} from "../../core/memory/stored-row";
import type { Result } from "../../core/result";

/** What the worker is called that looks for ways. */
export const WAY_FINDER = "way finder";

const ID = v.pipe(v.number(), v.integer());

const REQUEST = v.variant("kind", [
  v.object({
    kind: v.literal("find-ways"),
    id: ID,
    case: CASE_ID,
    mostTurns: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(20)),
  }),
  v.object({ kind: v.literal("cancel"), id: ID }),
]);

const TURN = v.object({
  layer: v.picklist(TURN_LAYERS),
  quarters: v.picklist([1, 2, 3]),
});

const WAY = v.pipe(v.array(TURN), v.readonly());

const REPLY = v.variant("kind", [
  v.object({
    kind: v.literal("progress"),
    id: ID,
    progress: v.pipe(v.number(), v.minValue(0), v.maxValue(1)),
  }),
  /** A way that is there before the shortest are looked for. */
  v.object({ kind: v.literal("at-once"), id: ID, way: WAY }),
  v.object({
    kind: v.literal("found"),
    id: ID,
    ways: v.pipe(v.array(WAY), v.readonly()),
    mostTurns: v.number(),
  }),
  /** A bug of ours was caught at the worker's edge; without an id, nobody knows whose. */
  v.object({
    kind: v.literal("failed"),
    id: v.exactOptional(ID),
    reason: v.string(),
  }),
]);

/** What the window asks for. */
export type WayRequest = v.InferOutput<typeof REQUEST>;

/** What the worker says. After "found" or "failed" it says no more of that id. */
export type WayReply = v.InferOutput<typeof REPLY>;

/** Reads what the window asks. */
export function parseWayRequest(
  message: unknown,
): Result<WayRequest, StoredRowError> {
  return readBySchema(REQUEST, message);
}

/** Reads what the worker says. */
export function parseWayReply(
  message: unknown,
): Result<WayReply, StoredRowError> {
  return readBySchema(REPLY, message);
}
