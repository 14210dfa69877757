/** Reading a stored round: rows are parsed, never believed. */
import * as v from "valibot";
import { CASE_ID } from "../cases/case-id-schema";
import { stageOfCase } from "../cases/case-table";
import { holdFor } from "../cases/hold-in-stage";
import { isVariantAllowed } from "../cases/random-variant";
import { HOLDS } from "../cases/variant";
import type { Result } from "../result";
import { OUTCOMES } from "./grade";
import { isRecognisable } from "./recognising-round";
import { ASKINGS, HINTS, RECOGNISING_WAYS, TURNED_WAYS } from "./review";
import type { Round } from "./round";
import { STEP_KINDS } from "./round-track";
import { MEMORY_STATES } from "./schedule";
import {
  COUNT,
  FACELETS,
  LOCAL_DAY,
  readBySchema,
  type StoredRowError,
  TARGET,
  VARIANT,
} from "./stored-row";
import { OPENINGS } from "./variant-opening";

const INTEGER = v.pipe(v.number(), v.integer());
const INSTANT = v.pipe(v.number(), v.finite());

const ASKED_CASE = {
  case: CASE_ID,
  hold: v.picklist(HOLDS),
  deck: v.string(),
  target: TARGET,
  choice: v.exactOptional(
    v.object({
      placed: v.exactOptional(v.picklist([0, 1, 2, 3])),
      home: v.exactOptional(v.picklist(["front", "anywhere"])),
      lining: v.exactOptional(v.picklist(["lined-up", "turned-away"])),
      pieces: v.exactOptional(v.picklist(["marked", "unmarked"])),
      answerWays: v.exactOptional(
        v.pipe(v.array(v.picklist(TURNED_WAYS)), v.minLength(1)),
      ),
    }),
  ),
  answerWay: v.exactOptional(v.picklist(RECOGNISING_WAYS)),
};

const TRACK = v.object({
  planned: v.object({
    ...ASKED_CASE,
    memory: v.picklist(MEMORY_STATES),
    times: COUNT,
    asking: v.exactOptional(v.picklist(["alone", "extra"])),
  }),
  steps: v.array(
    v.object({
      asking: v.picklist(ASKINGS),
      kind: v.picklist(STEP_KINDS),
      gap: COUNT,
    }),
  ),
  asked: COUNT,
  lastAsked: v.exactOptional(COUNT),
  returns: COUNT,
  hasThird: v.boolean(),
});

const ITEM = v.pipe(
  v.object({
    ...ASKED_CASE,
    asking: v.picklist(ASKINGS),
    variant: VARIANT,
    opening: v.picklist(OPENINGS),
    bare: v.boolean(),
    seed: INTEGER,
    position: v.exactOptional(FACELETS),
    interrupted: v.boolean(),
    hints: v.exactOptional(v.array(v.picklist(HINTS))),
    track: COUNT,
  }),
  v.check(
    (item) =>
      isVariantAllowed(item.case, item.variant) &&
      (item.answerWay === undefined ||
        isRecognisable(item.case, item.answerWay)) &&
      holdFor(stageOfCase(item.case), item.hold) === item.hold,
  ),
);

const ROUND = v.pipe(
  v.object({
    id: v.string(),
    learner: v.string(),
    day: LOCAL_DAY,
    seed: INTEGER,
    startedAt: INSTANT,
    touchedAt: INSTANT,
    tracks: v.array(TRACK),
    results: v.array(
      v.object({
        case: CASE_ID,
        asking: v.picklist(ASKINGS),
        outcome: v.picklist([...OUTCOMES, "shown", "skipped"]),
        review: v.exactOptional(v.string()),
      }),
    ),
    current: v.exactOptional(ITEM),
  }),
  v.check(({ current, tracks }) => {
    if (current === undefined) return true;
    const track = tracks[current.track];
    return (
      track?.planned.case === current.case &&
      track.planned.answerWay === current.answerWay &&
      track.steps[0]?.asking === current.asking
    );
  }),
);

/**
 * The round that a stored row holds.
 *
 * Errors: `contradiction` for a variant, a hold or a way of answering that the
 *         case does not allow (at `current`), and for a current item that is
 *         not the next step of its track (at the row itself).
 */
export function parseRound(row: unknown): Result<Round, StoredRowError> {
  return readBySchema(ROUND, row);
}
