/** What the messages of every worker that answers numbered requests have in common. */
import * as v from "valibot";
import { TURN_LAYERS } from "../../core/cube/turns";
import type { StoredRowError } from "../../core/memory/stored-row";

/** Why a message is not understood, and at which field. */
export type MessageError = StoredRowError;

/** The number of a request, by which replies name it. */
export const REQUEST_ID = v.pipe(v.number(), v.integer());

/** Turns in their order. */
export const TURNS = v.pipe(
  v.array(
    v.object({
      layer: v.picklist(TURN_LAYERS),
      quarters: v.picklist([1, 2, 3]),
    }),
  ),
  v.readonly(),
);

/** A request is given up. */
export const CANCEL = v.object({ kind: v.literal("cancel"), id: REQUEST_ID });

/** How far a request has come. Units: 0–1. */
export const PROGRESS = v.object({
  kind: v.literal("progress"),
  id: REQUEST_ID,
  progress: v.pipe(v.number(), v.minValue(0), v.maxValue(1)),
});

/** A bug of ours was caught at the worker's edge; without an id, nobody knows whose. */
export const FAILED = v.object({
  kind: v.literal("failed"),
  id: v.exactOptional(REQUEST_ID),
  reason: v.string(),
});
