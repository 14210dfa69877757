/**
 * What somebody shares reaches the class page as far as it passes the reader:
 * whatever that is, it must not cost a coach the page.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS as CASE_IDS } from "../../../../core/cases/case-ids";
import {
  classGrid,
  casesMet,
  stuckFirst,
} from "../../../../core/class/class-grid";
import { nextLesson } from "../../../../core/class/lesson";
import { parseMemberSummary } from "../../../../core/class/member-summary-schema";
import { gradeLog } from "../../../../core/memory/grader";
import type { LocalDay } from "../../../../core/memory/review";
import { ANSWER_WAYS, ASKINGS } from "../../../../core/memory/review";
import { inReplayOrder } from "../../../../core/memory/schedule";
import { packLog } from "../../../../core/progress/packed-log";
import { answerProgress } from "../../../../renderer/workers/progress-service";
import { tries } from "../../../soak/times";
import {
  parseAnswerLine,
  type SharedAnswer,
} from "../../../../core/sharing/shared-answer";

const INSTANT = fc.oneof(
  fc.constantFrom(-0, 0, 0.5, Number.MIN_VALUE, 8.64e15),
  fc.double({ min: 0, max: 8.64e15, noNaN: true }),
);
const DAY = fc.oneof(
  fc.constantFrom(0, 20_000, 20_001, 20_002, 100_000_000),
  fc.integer({ min: 0, max: 100_000_000 }),
);
const IDS = fc.constantFrom(...CASE_IDS.slice(0, 4), "pairs:DFR-R.FR-F");
const LINE = fc.record(
  {
    id: fc.string({ minLength: 1, maxLength: 5 }),
    case: IDS,
    hold: fc.constantFrom("up", "down"),
    answerWay: fc.constantFrom(...ANSWER_WAYS),
    asking: fc.constantFrom(...ASKINGS),
    at: INSTANT,
    utcOffset: fc.constantFrom(-1440, 0, 0.5, 1440),
    localDay: DAY,
    thinking: INSTANT,
    turning: INSTANT,
    total: INSTANT,
    untimed: fc.constant(true),
    verdict: fc.constantFrom("right", "missed"),
    answeredAs: IDS,
    corrections: fc.constantFrom(0, Number.MAX_SAFE_INTEGER, 1e300),
    hints: fc.constant([]),
    reported: fc.boolean(),
    interrupted: fc.boolean(),
    turns: fc.array(
      fc.record({ turn: fc.string({ maxLength: 10 }), at: INSTANT }),
      { maxLength: 3 },
    ),
    target: fc.constantFrom(0.1, 3, 1e308, Number.MAX_VALUE),
  },
  {
    requiredKeys: [
      "id",
      "case",
      "hold",
      "answerWay",
      "asking",
      "at",
      "utcOffset",
      "localDay",
      "total",
      "verdict",
      "corrections",
      "hints",
      "reported",
      "interrupted",
      "target",
    ],
  },
);

describe("whatever a reader of shared answers lets through", () => {
  it("makes a summary that comes through the worker and back, and a grid of any day", () => {
    fc.assert(
      fc.property(
        fc.array(LINE, { maxLength: 12 }),
        fc.integer({ min: 19_990, max: 30_000 }),
        (lines, today) => {
          const answers = lines.map((line): SharedAnswer => {
            const read = parseAnswerLine(line);
            if (!read.ok) throw new Error(JSON.stringify(read.error));
            return { ...read.value, learner: "ann" };
          });
          // As the class page does: days to come do not count yet.
          const log = inReplayOrder(answers)
            .filter(({ localDay }) => localDay <= today + 1)
            .map((one) => ({ ...one, turns: one.turns ?? [] }));
          expect(gradeLog(log)).toHaveLength(log.length);
          const reply = structuredClone(
            answerProgress(
              structuredClone({
                question: "summary",
                log: packLog(log),
                settings: {},
              }),
            ),
          );
          expect(reply).toMatchObject({ kind: "summary" });
          const read = parseMemberSummary(
            "summary" in reply ? reply.summary : undefined,
          );
          if (!read.ok) throw new Error(JSON.stringify(read.error));
          const member = {
            ...{ id: "ann", name: "Ann", schedule: {} },
            summary: read.value,
          };
          const grid = classGrid(
            [member],
            [...casesMet([member])],
            today as LocalDay,
          );
          expect(nextLesson(grid).cases.length).toBeLessThanOrEqual(5);
          const cells = stuckFirst(grid).rows.flatMap((row) => row.cells);
          expect(cells.every((one) => (one?.lasts ?? 0) >= 0)).toBe(true);
        },
      ),
      { numRuns: tries(500) },
    );
  });
});
