import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import type { Deck } from "../../core/deck/deck";
import { type AppState, openApp } from "../../renderer/state/app-state.svelte";
import { DeckNewsBoard } from "../../renderer/state/deck-news.svelte";
import { forgetDatabases } from "./storage/fresh-database";
import { windowLocks } from "./storage/window-locks";

const SILENT: Deck = {
  id: "0b9f6e0e-5f0a-4c1e-9d57-3f1f6f3c2a11",
  name: "Monday",
  description: "",
  newPerRound: 2,
  cases: [{ case: "C1", target: 20 }],
};

const DECK: Deck = {
  ...SILENT,
  message: "Slowly. Look underneath first.",
  note: "for the younger group",
};

async function opened(): Promise<AppState> {
  const app = await openApp();
  if (!app.ok) throw new Error(app.error.code);
  return app.value;
}

async function boardOf(app: AppState): Promise<DeckNewsBoard> {
  const board = new DeckNewsBoard(app.current);
  await board.open();
  return board;
}

beforeEach(async () => {
  await forgetDatabases();
  Object.defineProperty(navigator, "locks", {
    configurable: true,
    value: windowLocks(),
  });
});

describe("what a learner is told of their decks", () => {
  it("is a new deck's message, once", async () => {
    const app = await opened();
    await app.decks.save(DECK);
    await app.current.changeSettings({ decks: [DECK.id, "starter-edges"] });
    const board = await boardOf(app);
    expect(board.news).toEqual([
      { deck: DECK, message: DECK.message, changes: [] },
    ]);
    await board.read([DECK.id]);
    expect(board.news).toEqual([]);
    expect((await boardOf(await opened())).news).toEqual([]);
  });

  it("is what the coach changed, but for the coach's own comment", async () => {
    const app = await opened();
    await app.decks.save(DECK);
    await app.current.changeSettings({ decks: [DECK.id] });
    await (await boardOf(app)).read([DECK.id]);
    await app.decks.save({ ...DECK, note: "for everybody" });
    expect((await boardOf(app)).news).toEqual([]);
    const cases = [
      { case: "C1", target: 15 },
      { case: "C2", target: 20 },
    ] as const;
    await app.decks.save({ ...DECK, cases });
    const [news] = (await boardOf(app)).news;
    expect(news?.message).toBeUndefined();
    expect(news?.changes.map(({ code }) => code).toSorted()).toEqual([
      "case-added",
      "case-field",
    ]);
  });

  it("is what changed in a deck that had nothing to say at first", async () => {
    const app = await opened();
    await app.decks.save(SILENT);
    await app.current.changeSettings({ decks: [DECK.id] });
    expect((await boardOf(app)).news).toEqual([]);
    await app.decks.save({ ...SILENT, cases: [{ case: "C1", target: 15 }] });
    const [news] = (await boardOf(app)).news;
    expect(news?.changes).toMatchObject([{ code: "case-field", after: 15 }]);
  });

  it("says nothing of decks that they do not practise, nor of those that came with the app", async () => {
    const app = await opened();
    await app.decks.save(DECK);
    await app.current.changeSettings({ decks: ["starter-edges"] });
    expect((await boardOf(app)).news).toEqual([]);
  });
});
