/** A machine with a sheet to type in, for the tests of the desk for ticks. */
import { expect } from "vitest";
import { STARTER_DECKS } from "../../../../core/deck/starter-decks";
import { present } from "../../../../core/invariant";
import type { Learner } from "../../../../core/memory/learner";
import { dayAfter } from "../../../../core/memory/local-day";
import type { KeptSheet } from "../../../../core/paper/kept-sheet";
import { mondayOf } from "../../../../core/paper/sheet-days";
import { type CodedSheet, sheetCode } from "../../../../core/paper/sheet-code";
import { now } from "../../../../renderer/platform/clock";
import type { AppState } from "../../../../renderer/state/app-state.svelte";
import { TicksDesk } from "../../../../renderer/state/ticks/ticks-desk.svelte";
import { readLog } from "../../../../renderer/storage/reviews";
import { openWindow } from "../open-window";

/** The deck whose cases are on the sheets. */
export const DECK = present(STARTER_DECKS[1], "there are starter decks");

/** A sheet of four cases, printed a moment ago. */
export function sheetOf(kind: CodedSheet["kind"], number = 48213): KeptSheet {
  const coded: CodedSheet = {
    kind,
    cases: DECK.cases.slice(0, 4).map(({ case: id, target }) => ({
      case: id,
      target,
    })),
    hold: "up",
    number,
    count: 6,
    opening: "anywhere",
  };
  return {
    ...coded,
    code: sheetCode(coded),
    deck: DECK.id,
    deckName: DECK.name,
    printedAt: now(),
  };
}

/** A machine, and the two learners on it. */
export interface Room {
  readonly app: AppState;
  readonly ann: Learner;
  readonly ben: Learner;
}

/** A machine with two learners; the second is at the desk. */
export async function room(): Promise<Room> {
  const app = await openWindow();
  expect((await app.addLearner("Ben")).ok).toBe(true);
  const [ann, ben] = app.learners;
  return {
    app,
    ann: present(ann, "the first"),
    ben: present(ben, "the one added"),
  };
}

/** A desk for last week's sheet, whose days have all come. */
export async function lastWeek(
  app: AppState,
  kind: CodedSheet["kind"] = "cases",
) {
  const desk = new TicksDesk(app, sheetOf(kind));
  const day = dayAfter(mondayOf(app.current.today), -7);
  await desk.setFirstDay(day);
  return desk;
}

/** The answers of a learner that are stored, oldest first. */
export async function logOf({ app }: Room, { id }: Learner) {
  const log = await readLog(app.database, id);
  if (!log.ok) throw new Error(log.error.code);
  return log.value.reviews;
}

/** Keeps what was typed, and answers how many boxes it was. */
export async function kept(desk: TicksDesk): Promise<number> {
  const done = await desk.keep();
  if (!done.ok) throw new Error(done.error.code);
  return done.value;
}
