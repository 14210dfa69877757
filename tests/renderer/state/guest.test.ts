import "fake-indexeddb/auto";
import { describe, expect, it } from "vitest";
import { renameDeck } from "../../../core/deck/deck-edits";
import { present } from "../../../core/invariant";
import { type CodedSheet, sheetCode } from "../../../core/paper/sheet-code";
import { now } from "../../../renderer/platform/clock";
import { ClassDesk } from "../../../renderer/state/class/class-desk.svelte";
import type { AppState } from "../../../renderer/state/app-state.svelte";
import type { DeckStep } from "../../../renderer/state/deck-bench.svelte";
import { keepPrinted } from "../../../renderer/state/sheets/printed-sheets";
import { TicksDesk } from "../../../renderer/state/ticks/ticks-desk.svelte";
import { sampleReview } from "../storage/sample-review";
import { beginEmpty, names, openWindow } from "./open-window";

const CODED: CodedSheet = {
  kind: "practice",
  cases: [{ case: "E1", target: 5 }],
  hold: "up",
  number: 4,
  count: 3,
  opening: "anywhere",
};
const SHEET = {
  ...CODED,
  code: sheetCode(CODED),
  deck: "starter-edges",
  deckName: "First-layer edges",
};

beginEmpty();

describe("a guest", () => {
  /** Every row of every table, as text. */
  async function everything({ database }: AppState): Promise<string> {
    const tables = await Promise.all(
      database.tables.map(async (table) => [table.name, await table.toArray()]),
    );
    return JSON.stringify(tables);
  }

  async function asGuest(): Promise<{ app: AppState; before: string }> {
    const app = await openWindow();
    await app.addLearner("Ada");
    const before = await everything(app);
    const seated = await app.seatGuest();
    if (!seated.ok) throw new Error(seated.error.code);
    return { app, before };
  }

  it("practises and chooses like anybody else, and leaves nothing", async () => {
    const { app, before } = await asGuest();
    expect(app.isGuest).toBe(true);
    const guest = app.current;
    const review = sampleReview({ learner: guest.learner.id });
    const kept = await guest.acknowledge({ review });
    expect(kept.ok && kept.value).toBe(review.id);
    expect((await guest.changeSettings({ minutes: 30 })).ok).toBe(true);
    expect(guest.reviews).toHaveLength(1);
    await app.switchTo(app.learners[1]?.id ?? "");
    expect(app.isGuest).toBe(false);
    expect(app.current.learner.name).toBe("Ada");
    expect(await everything(app)).toBe(before);
    const names = (await indexedDB.databases()).map(({ name }) => name);
    expect(names).toEqual(["turnwise"]);
  });

  it("changes nothing that the machine keeps: no deck, no sheet, no class, no ticks", async () => {
    const app = await openWindow();
    await app.addLearner("Ada");
    const made = await app.bench.create({ name: "Mondays" });
    if (!made.ok) throw new Error(made.error.code);
    const { id } = made.value;
    const call = (name: string): DeckStep => ({
      label: "name",
      edit: (deck) => renameDeck(deck, name),
    });
    expect(app.bench.edit(id, call("Tuesdays")).ok).toBe(true);
    await app.decks.reload();
    const before = await everything(app);
    expect((await app.seatGuest()).ok).toBe(true);

    const refused = { ok: false, error: { code: "guest-at-desk" } };
    const deck = present(app.decks.find(id), "it was made");
    const starter = present(app.decks.all[0], "there are starter decks");
    expect(app.bench.edit(id, call("Wednesdays"))).toEqual(refused);
    expect(app.bench.trouble?.code).toBe("guest-at-desk");
    expect(app.bench.edit(starter.id, call("Mine"))).toEqual(refused);
    expect(app.bench.offered).toBeUndefined();
    expect(app.bench.stepToUndo(deck)).toBeUndefined();
    app.bench.undo(deck);
    expect(await app.bench.create()).toEqual(refused);
    expect(await app.bench.copy(starter)).toEqual(refused);
    expect(await app.bench.takeIn({ ...deck, id: "elsewhere" })).toEqual(
      refused,
    );
    expect(await app.bench.remove(deck)).toBe(false);
    expect(await app.decks.save({ ...deck, name: "Past the bench" })).toEqual(
      refused,
    );
    expect(app.decks.find(id)?.name).toBe("Tuesdays");

    expect(await keepPrinted(app, SHEET)).toEqual({ ok: true, value: false });
    const desk = new ClassDesk(app);
    const [first = { id: "" }] = app.learners;
    await desk.setIn(first.id, false);
    expect(desk.isIn(first.id)).toBe(false);

    const ticks = new TicksDesk(app, { ...SHEET, printedAt: now() });
    await ticks.choose(present(app.learners[0], "the first"));
    ticks.tick(0, 0, "right");
    expect(await ticks.keep()).toEqual(refused);

    await app.decks.reload();
    expect(await everything(app)).toBe(before);
    await app.switchTo(present(app.learners[1], "Ada").id);
    expect(await everything(app)).toBe(before);
    // Who is of the house goes on where they were.
    expect(app.bench.trouble).toBeUndefined();
    expect(app.bench.stepToUndo(deck)).toBe("name");
    expect(app.bench.edit(id, call("Wednesdays")).ok).toBe(true);
    expect(await keepPrinted(app, SHEET)).toEqual({ ok: true, value: true });
    await app.decks.reload();
    expect(await everything(app)).not.toBe(before);
  });

  it("sits down where they were asked last, and nobody asked before comes after them", async () => {
    const { app } = await asGuest();
    const [first = { id: "" }, second = { id: "" }] = app.learners;
    await Promise.all([app.switchTo(first.id), app.seatGuest()]);
    expect(app.isGuest).toBe(true);
    await app.switchTo(first.id);
    await Promise.all([app.seatGuest(), app.switchTo(second.id)]);
    expect(app.current.learner.id).toBe(second.id);
  });

  it("is not among the learners, and the window opens with whoever was there before", async () => {
    const { app } = await asGuest();
    expect(names(app)).toEqual(["Learner 1", "Ada"]);
    expect((await openWindow()).current.learner.name).toBe("Ada");
    await app.switchTo(app.learners[0]?.id ?? "");
  });

  it("stays at the desk when another window changes the learners, and keeps their name", async () => {
    const { app } = await asGuest();
    await app.reload();
    await app.rename({ name: "Somebody" });
    await app.giveDeskTo([app.learners[0]?.id ?? ""]);
    expect(app.current.learner.name).toBe("Guest");
    expect(names(app)).toEqual(["Learner 1", "Ada"]);
    await app.deleteCurrent();
    expect(app.isGuest).toBe(false);
    expect(names(app)).toEqual(["Learner 1", "Ada"]);
  });
});
