/** From what was entered for a learner to the reviews that are stored. */
import type { Position } from "../../../core/cases/position";
import { present } from "../../../core/invariant";
import { answerTarget } from "../../../core/memory/answer-target";
import { GRADING_VERSION } from "../../../core/memory/grade";
import { dayAfter, endOfDay } from "../../../core/memory/local-day";
import {
  isOnPaper,
  type LocalDay,
  type Milliseconds,
  type Review,
} from "../../../core/memory/review";
import {
  type PaperAnswer,
  ROW_SHAPES,
} from "../../../core/paper/entered-ticks";
import type { KeptSheet } from "../../../core/paper/kept-sheet";
import type { SheetCode } from "../../../core/paper/sheet-code";
import { namedId } from "../../platform/named-id";
import { utcOffset } from "../../platform/clock";
import { draftedPositions } from "../sheets/sheet-draft";
import { formatPosition } from "../practise/position-of-item";

/** Units: milliseconds. */
const LAST_MINUTE = 60_000;

/** More than a row of any sheet has. */
const MOST_PLACES = 8;

/** One thing on a sheet. */
export interface SheetRow {
  readonly position: Position;
  /** As the deck has it. Units: seconds. */
  readonly target: number;
}

/** Where an answer stands: on which sheet, whose, and where on it. */
export interface PlaceOnSheet {
  readonly code: SheetCode;
  readonly learner: string;
  readonly row: number;
  /** As in `PaperAnswer`. */
  readonly place: number;
  readonly day: LocalDay;
}

/**
 * The id of an answer on paper: entered twice it is one, on whatever machine.
 * The day is part of it, because the same sheet may be handed out again.
 */
export function paperReviewId({
  code,
  learner,
  row,
  place,
  day,
}: PlaceOnSheet): Promise<string> {
  return namedId(["turnwise paper", code, learner, row, place, day].join(" "));
}

/** What is known of a learner when their sheet is entered. */
export interface PaperContext {
  readonly sheet: KeptSheet;
  readonly rows: readonly SheetRow[];
  readonly firstDay: LocalDay;
  readonly learner: string;
  /** The colour of their first layer. */
  readonly firstColour: string;
  /** The hour at which their day turns over. */
  readonly turnsOverAt: number;
  readonly weightsVersion: number;
}

/** An answer with the row it stands in. */
export interface PlacedAnswer extends PaperAnswer {
  readonly row: number;
}

/**
 * The last minute of the learner's day, in the order of the sheet. Nobody
 * knows when it was done; and what the app measured that day comes before it,
 * so that the first answer of a day, which counts, is a measured one where
 * there is any. It follows from the day alone: entered on two machines, the
 * answer is the same.
 */
function instantOf(day: LocalDay, turnsOverAt: number, order: number) {
  // Near enough to that minute for the zone's offset then.
  const offset = utcOffset(endOfDay(day, 0, turnsOverAt));
  const at = endOfDay(day, offset, turnsOverAt) - LAST_MINUTE + order;
  return { at: at as Milliseconds, utcOffset: offset };
}

/** The review of an answer on paper. */
export async function paperReview(
  answer: PlacedAnswer,
  { sheet, rows, firstDay, learner, ...rest }: PaperContext,
): Promise<Review> {
  const { row, place, total } = answer;
  const { position, target } = present(
    rows[row],
    "an answer stands in a row of its sheet",
  );
  const day = dayAfter(firstDay, answer.days);
  return {
    id: await paperReviewId({ code: sheet.code, learner, row, place, day }),
    learner,
    case: position.case,
    hold: position.hold,
    variant: position.variant,
    firstColour: rest.firstColour,
    position: formatPosition(position),
    answerWay: "on-paper",
    asking: answer.asking,
    ...instantOf(day, rest.turnsOverAt, row * MOST_PLACES + place),
    localDay: day,
    total: total ?? (0 as Milliseconds),
    ...(total === undefined ? { untimed: true } : {}),
    turns: [],
    verdict: answer.verdict,
    corrections: 0,
    slips: 0,
    hints: [],
    reported: true,
    interrupted: false,
    deck: sheet.deck,
    target: answerTarget(target, "on-paper"),
    gradingVersion: GRADING_VERSION,
    weightsVersion: rest.weightsVersion,
  };
}

/** The key of a place on a sheet. */
export function placeKey(row: number, place: number): string {
  return `${row}/${place}`;
}

/** The rows of a sheet, drawn again from its number and choices. */
export function sheetRows(sheet: KeptSheet): readonly SheetRow[] {
  const targets = new Map(sheet.cases.map((one) => [one.case, one.target]));
  return draftedPositions(sheet).map((position) => ({
    position,
    target: present(
      targets.get(position.case),
      "positions are drawn from the cases",
    ),
  }));
}

/** The ids that answers on a learner's sheet begun on a day have, by `placeKey`. */
export async function paperIds(
  { code, kind, cases, count }: KeptSheet,
  firstDay: LocalDay,
  learner: string,
): Promise<ReadonlyMap<string, string>> {
  const rows = kind === "cases" ? cases.length : count;
  const { ticks, times } = ROW_SHAPES[kind];
  const places = Array.from({ length: Math.max(ticks, times) }, (_, n) => n);
  const all = Array.from({ length: rows }, (_, row) =>
    places.map(async (place): Promise<[string, string]> => {
      const day = dayAfter(firstDay, kind === "cases" ? place : 0);
      const id = await paperReviewId({ code, learner, row, place, day });
      return [placeKey(row, place), id];
    }),
  );
  return new Map(await Promise.all(all.flat()));
}

/** What a learner's log has of a sheet begun on a day, by `placeKey`. */
export async function knownReviews(
  sheet: KeptSheet,
  firstDay: LocalDay,
  learner: string,
  log: readonly Review[],
): Promise<ReadonlyMap<string, Review>> {
  const onPaper = new Map(
    log
      .filter(({ answerWay }) => isOnPaper(answerWay))
      .map((review) => [review.id, review]),
  );
  if (onPaper.size === 0) return new Map();
  const known = new Map<string, Review>();
  for (const [key, id] of await paperIds(sheet, firstDay, learner)) {
    const review = onPaper.get(id);
    if (review !== undefined) known.set(key, review);
  }
  return known;
}
