/**
 * What the window and the solver's worker say to each other. Either side
 * parses what it hears: a worker is another program, and an old one may live
 * on behind a page that was just replaced.
 */
import * as v from "valibot";
import { CASE_ID } from "../../core/cases/case-id-schema";
import {
  LAST_LAYER_CORNERS,
  LAST_LAYER_EDGES,
} from "../../core/cases/last-layer-look";
import type { Position } from "../../core/cases/position";
import { isVariantAllowed } from "../../core/cases/random-variant";
import { HOLDS } from "../../core/cases/variant";
import {
  type Cubies,
  isFullyKnown,
  type PartlyKnownCubies,
  trustedCubies,
  UNKNOWN,
} from "../../core/cube/cubies";
import type { HeldCube } from "../../core/cube/held-cube";
import { CORNERS, EDGES } from "../../core/cube/pieces";
import { type Rotation, ROTATIONS } from "../../core/cube/symmetries";
import { readBySchema, VARIANT } from "../../core/memory/stored-row";
import type { Result } from "../../core/result";
import {
  CANCEL,
  FAILED,
  type MessageError,
  PROGRESS,
  REQUEST_ID,
  TURNS,
} from "./message-schemas";

/** One array of a state: right length, values in range or unknown. */
function pieceArray(length: number, below: number) {
  return v.pipe(
    v.instance(Uint8Array),
    v.check(
      (array) =>
        array.length === length &&
        array.every((value) => value < below || value === UNKNOWN),
    ),
  );
}

/** Whether no piece is met twice, and no more are turned without a name than the last layer has left. */
function isConsistent(
  permutation: Uint8Array,
  orientation: Uint8Array,
  lastLayer: readonly number[],
) {
  const known = [...permutation].filter((piece) => piece !== UNKNOWN);
  const unnamed = [...permutation].filter(
    (piece, i) => piece === UNKNOWN && orientation[i] !== UNKNOWN,
  );
  const left = lastLayer.filter((piece) => !permutation.includes(piece));
  return new Set(known).size === known.length && unnamed.length <= left.length;
}

const CUBIES = v.pipe(
  v.object({
    cornerPermutation: pieceArray(8, 8),
    cornerOrientation: pieceArray(8, 3),
    edgePermutation: pieceArray(12, 12),
    edgeOrientation: pieceArray(12, 2),
  }),
  v.check(
    (state) =>
      isConsistent(
        state.cornerPermutation,
        state.cornerOrientation,
        LAST_LAYER_CORNERS,
      ) &&
      isConsistent(
        state.edgePermutation,
        state.edgeOrientation,
        LAST_LAYER_EDGES,
      ),
  ),
);

const ROTATION = v.pipe(
  v.number(),
  v.check((value) => ROTATIONS.includes(value as Rotation)),
  v.transform((value) => value as Rotation),
);

const REQUEST = v.variant("kind", [
  v.object({
    kind: v.literal("set-up"),
    id: REQUEST_ID,
    from: v.object({ cubies: CUBIES, hold: ROTATION }),
    to: v.pipe(
      v.object({
        case: CASE_ID,
        hold: v.picklist(HOLDS),
        variant: VARIANT,
        cubies: CUBIES,
      }),
      v.check((position) => isVariantAllowed(position.case, position.variant)),
    ),
    seed: v.pipe(v.number(), v.integer()),
  }),
  v.object({
    kind: v.literal("solve"),
    id: REQUEST_ID,
    cube: v.object({
      cubies: v.pipe(
        CUBIES,
        v.check((state) => isFullyKnown(state)),
        v.transform((state) => trustedCubies(state)),
      ),
      hold: ROTATION,
    }),
  }),
  CANCEL,
]);

const SET_UP_ERROR = v.variant("code", [
  v.object({
    code: v.literal("piece-not-known"),
    corners: v.pipe(v.array(v.picklist(CORNERS)), v.readonly()),
    edges: v.pipe(v.array(v.picklist(EDGES)), v.readonly()),
  }),
  v.object({
    code: v.literal("impossible-cube"),
    which: v.picklist(["from", "to"]),
  }),
]);

const REPLY = v.variant("kind", [
  PROGRESS,
  v.object({
    kind: v.literal("found"),
    id: REQUEST_ID,
    turns: TURNS,
  }),
  v.object({ kind: v.literal("none"), id: REQUEST_ID, error: SET_UP_ERROR }),
  FAILED,
]);

/** What the window asks for. */
export type SolverRequest = v.InferOutput<typeof REQUEST>;

/** What the worker says. After "found", "none" or "failed" it says no more of that id. */
export type SolverReply = v.InferOutput<typeof REPLY>;

/** Reads what the window asks. */
export function parseRequest(
  message: unknown,
): Result<SolverRequest, MessageError> {
  return readBySchema(REQUEST, message);
}

/** Reads what the worker says. */
export function parseReply(
  message: unknown,
): Result<SolverReply, MessageError> {
  return readBySchema(REPLY, message);
}

function plainCubies(state: PartlyKnownCubies) {
  return {
    cornerPermutation: Uint8Array.from(state.cornerPermutation),
    cornerOrientation: Uint8Array.from(state.cornerOrientation),
    edgePermutation: Uint8Array.from(state.edgePermutation),
    edgeOrientation: Uint8Array.from(state.edgeOrientation),
  };
}

/** A request for a set-up, as plain data whatever it was made from. */
export function setUpRequest(
  id: number,
  from: HeldCube<PartlyKnownCubies>,
  to: Position,
  seed: number,
): SolverRequest {
  const { home, placed, turnedAway, seenFrom } = to.variant;
  return {
    kind: "set-up",
    id,
    from: { cubies: plainCubies(from.cubies), hold: from.hold },
    to: {
      case: to.case,
      hold: to.hold,
      variant: { home, placed: [...placed], turnedAway, seenFrom },
      cubies: plainCubies(to.cubies),
    },
    seed,
  };
}

/** A request to solve a whole cube, as plain data whatever it was made from. */
export function solveRequest(
  id: number,
  { cubies, hold }: HeldCube<Cubies>,
): SolverRequest {
  const plain = trustedCubies(plainCubies(cubies));
  return { kind: "solve", id, cube: { cubies: plain, hold } };
}
