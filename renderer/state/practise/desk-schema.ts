/**
 * What lies on the desk beside the round itself, as it is stored with it: what
 * the round was asked for, and where the learner's own cube stands.
 */
import * as v from "valibot";
import { type PartlyKnownCubies, UNKNOWN } from "../../../core/cube/cubies";
import { FACES } from "../../../core/cube/faces";
import type { Turn } from "../../../core/cube/turns";
import { formatTurns } from "../../../core/notation/format";
import { parseTurns } from "../../../core/notation/parse";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import type { Practised } from "./practised";
import { parsePractised } from "./practised";

const WALKS = ["set-up", "bring", "shown"] as const;

/** A walk that was under way on the learner's cube. */
export interface StoredWalk {
  readonly kind: (typeof WALKS)[number];
  readonly turns: readonly Turn[];
  readonly done: number;
}

/** Everything on the desk that must survive a reload. */
export interface Desk {
  /** What the round was asked for; absent: whatever is due and new. */
  readonly of?: Practised | undefined;
  /** What is known of the learner's cube, before the walk where there is one. */
  readonly ownCube?: PartlyKnownCubies | undefined;
  /** The colours under which the learner's cube was followed, as `coloursOf` writes them: under others its pieces are other pieces. */
  readonly colours?: string | undefined;
  readonly walk?: StoredWalk | undefined;
}

/** A colouring as one text. */
export function coloursOf(scheme: ColourScheme): string {
  return FACES.map((face) => scheme[face]).join(" ");
}

function piecesSchema(count: number, turns: number) {
  const known = (below: number) =>
    v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(below - 1));
  const list = (below: number) =>
    v.pipe(
      v.array(v.union([known(below), v.literal(UNKNOWN)])),
      v.length(count),
    );
  return { permutation: list(count), orientation: list(turns) };
}

const CORNERS = piecesSchema(8, 3);
const EDGES = piecesSchema(12, 2);

const DESK_SCHEMA = v.object({
  version: v.literal(1),
  of: v.optional(v.string()),
  colours: v.optional(v.string()),
  ownCube: v.optional(
    v.object({
      cornerPermutation: CORNERS.permutation,
      cornerOrientation: CORNERS.orientation,
      edgePermutation: EDGES.permutation,
      edgeOrientation: EDGES.orientation,
    }),
  ),
  walk: v.optional(
    v.object({
      kind: v.picklist(WALKS),
      turns: v.string(),
      done: v.pipe(v.number(), v.integer(), v.minValue(0)),
    }),
  ),
});

/** The desk as plain JSON. */
export function formatDesk({ of, ownCube, colours, walk }: Desk): unknown {
  return {
    version: 1,
    ...(of === undefined ? {} : { of }),
    ...(colours === undefined ? {} : { colours }),
    ...(ownCube === undefined
      ? {}
      : {
          ownCube: {
            cornerPermutation: [...ownCube.cornerPermutation],
            cornerOrientation: [...ownCube.cornerOrientation],
            edgePermutation: [...ownCube.edgePermutation],
            edgeOrientation: [...ownCube.edgeOrientation],
          },
        }),
    ...(walk === undefined
      ? {}
      : { walk: { ...walk, turns: formatTurns(walk.turns) } }),
  };
}

/**
 * The desk that was stored. What cannot be read is an empty desk: the app then
 * asks again what the learner's cube has, and nothing of the log is lost.
 */
export function parseDesk(stored: unknown): Desk {
  const parsed = v.safeParse(DESK_SCHEMA, stored);
  if (!parsed.success) return {};
  const { of, ownCube, colours, walk } = parsed.output;
  const turns = parseTurns(walk?.turns ?? "");
  return {
    of: of === undefined ? undefined : parsePractised(of),
    colours,
    ownCube:
      ownCube === undefined
        ? undefined
        : {
            cornerPermutation: Uint8Array.from(ownCube.cornerPermutation),
            cornerOrientation: Uint8Array.from(ownCube.cornerOrientation),
            edgePermutation: Uint8Array.from(ownCube.edgePermutation),
            edgeOrientation: Uint8Array.from(ownCube.edgeOrientation),
          },
    walk:
      walk === undefined || !turns.ok || walk.done > turns.value.length
        ? undefined
        : { kind: walk.kind, turns: turns.value, done: walk.done },
  };
}
