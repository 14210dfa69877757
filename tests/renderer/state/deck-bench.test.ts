import "fake-indexeddb/auto";
import fc from "fast-check";
import { beforeEach, describe, expect, it } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import type { Deck } from "../../../core/deck/deck";
import {
  addCase,
  changeDeck,
  moveCase,
  renameDeck,
} from "../../../core/deck/deck-edits";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";
import { present } from "../../../core/invariant";
import {
  DeckBench,
  type DeckStep,
} from "../../../renderer/state/deck-bench.svelte";
import { DeckShelf } from "../../../renderer/state/decks.svelte";
import type { TurnwiseDatabase } from "../../../renderer/storage/database";
import {
  deleteDeck,
  readDecks,
  saveDeck,
} from "../../../renderer/storage/decks";
import { forgetDatabases, openTestDatabase } from "../storage/fresh-database";

let database: TurnwiseDatabase;
let shelf: DeckShelf;
let bench: DeckBench;

beforeEach(async () => {
  await forgetDatabases();
  database = await openTestDatabase();
  shelf = new DeckShelf(database);
  bench = new DeckBench(shelf);
});

const put = (id: CaseId): DeckStep => ({
  label: "add",
  edit: (deck) => addCase(deck, id),
});
const call = (name: string): DeckStep => ({
  label: "name",
  edit: (deck) => renameDeck(deck, name),
  joins: true,
});

async function newDeck(): Promise<string> {
  const made = await bench.create();
  if (!made.ok) throw new Error(made.error.code);
  return made.value.id;
}

function deckOf(id: string): Deck {
  return present(shelf.find(id), "the deck is here");
}

function casesOf(id: string): readonly CaseId[] {
  return deckOf(id).cases.map((entry) => entry.case);
}

/** The decks as another window would read them, once everything before is written. */
async function stored(): Promise<readonly Deck[]> {
  // The shelf reads after it has written: then everything before is stored.
  await shelf.reload();
  const read = await readDecks(database);
  if (!read.ok) throw new Error(read.error.code);
  return read.value.decks;
}

describe("a deck on the bench", () => {
  it("is stored with every edit, and with every step back and forth", async () => {
    const id = await newDeck();
    bench.edit(id, put("C1"));
    bench.edit(id, put("E3"));
    expect(await stored()).toEqual([deckOf(id)]);
    expect(casesOf(id)).toEqual(["C1", "E3"]);
    bench.undo(deckOf(id));
    expect(casesOf(id)).toEqual(["C1"]);
    expect(await stored()).toEqual([deckOf(id)]);
    bench.redo(deckOf(id));
    expect(casesOf(id)).toEqual(["C1", "E3"]);
    expect(await stored()).toEqual([deckOf(id)]);
  });

  it("says what undoing would take back, and forgets what was undone at the next edit", async () => {
    const id = await newDeck();
    expect(bench.stepToUndo(deckOf(id))).toBeUndefined();
    bench.edit(id, put("C1"));
    bench.edit(id, call("Mondays"));
    expect(bench.stepToUndo(deckOf(id))).toBe("name");
    bench.undo(deckOf(id));
    expect(bench.stepToUndo(deckOf(id))).toBe("add");
    expect(bench.stepToRedo(deckOf(id))).toBe("name");
    bench.edit(id, put("C2"));
    expect(bench.stepToRedo(deckOf(id))).toBeUndefined();
  });

  it("takes a text that was written letter by letter back as a whole", async () => {
    const id = await newDeck();
    const { name } = deckOf(id);
    for (const text of ["M", "Mo", "Mon"]) bench.edit(id, call(text));
    bench.undo(deckOf(id));
    expect(deckOf(id).name).toBe(name);
  });

  it("keeps the steps of each deck apart", async () => {
    const first = await newDeck();
    const second = await newDeck();
    expect(deckOf(second).name).not.toBe(deckOf(first).name);
    bench.edit(first, put("C1"));
    bench.edit(second, put("C2"));
    bench.undo(deckOf(first));
    expect(casesOf(first)).toEqual([]);
    expect(casesOf(second)).toEqual(["C2"]);
    expect(bench.stepToUndo(deckOf(second))).toBe("add");
  });

  it("refuses with a code what cannot be, changing and storing nothing", async () => {
    const id = await newDeck();
    bench.edit(id, put("C1"));
    const before = deckOf(id);
    expect(bench.edit(id, put("C1"))).toMatchObject({
      ok: false,
      error: { code: "duplicate-case" },
    });
    expect(bench.edit(id, call("  "))).toMatchObject({
      ok: false,
      error: { code: "blank-text" },
    });
    expect(deckOf(id)).toBe(before);
    expect(await stored()).toEqual([before]);
    expect(bench.edit("gone", put("C1"))).toMatchObject({
      ok: false,
      error: { code: "deck-gone" },
    });
  });

  it("has nothing to undo after an edit that changes nothing", async () => {
    const id = await newDeck();
    bench.edit(id, call(deckOf(id).name));
    expect(bench.stepToUndo(deckOf(id))).toBeUndefined();
  });

  it("never undoes what another window has done since", async () => {
    const id = await newDeck();
    bench.edit(id, put("C1"));
    await stored();
    const theirs = addCase(deckOf(id), "C2");
    if (!theirs.ok) throw new Error(theirs.error.code);
    await saveDeck(database, theirs.value, 0);
    await shelf.reload();
    expect(bench.stepToUndo(deckOf(id))).toBeUndefined();
    bench.undo(deckOf(id));
    expect(casesOf(id)).toEqual(["C1", "C2"]);
  });

  it("keeps its steps where another window stored it unchanged", async () => {
    const id = await newDeck();
    bench.edit(id, put("C1"));
    await shelf.reload();
    expect(bench.stepToUndo(deckOf(id))).toBe("add");
  });

  it("is as before, and says why, where an edit could not be stored", async () => {
    const id = await newDeck();
    bench.edit(id, put("C1"));
    await stored();
    database.decks.hook("updating", () => {
      throw new DOMException("full", "QuotaExceededError");
    });
    bench.edit(id, put("C2"));
    await expect.poll(() => bench.trouble?.code).toBe("full");
    expect(casesOf(id)).toEqual(["C1"]);
    expect(bench.stepToUndo(deckOf(id))).toBe("add");
  });

  /** Lets the store refuse so many changes of decks, and take those after. */
  function refuse(count: number): void {
    let left = count;
    database.decks.hook("updating", () => {
      if (left-- > 0) throw new DOMException("full", "QuotaExceededError");
    });
  }

  it("keeps the steps of a later edit that was stored, where one before it was not", async () => {
    const id = await newDeck();
    refuse(1);
    bench.edit(id, put("C1"));
    bench.edit(id, put("C2"));
    await stored();
    // The edit that was refused is heard of after the one that was not.
    expect(await stored()).toEqual([deckOf(id)]);
    expect(casesOf(id)).toEqual(["C1", "C2"]);
    expect(bench.trouble).toBeUndefined();
    bench.undo(deckOf(id));
    bench.undo(deckOf(id));
    expect(casesOf(id)).toEqual([]);
    expect(await stored()).toEqual([deckOf(id)]);
  });

  it("goes back to what was stored last, where two edits after it were not", async () => {
    const id = await newDeck();
    bench.edit(id, put("C1"));
    await stored();
    refuse(2);
    bench.edit(id, put("C2"));
    bench.edit(id, put("C3"));
    await expect.poll(() => bench.trouble?.code).toBe("full");
    expect(casesOf(id)).toEqual(["C1"]);
    expect(bench.stepToUndo(deckOf(id))).toBe("add");
    bench.undo(deckOf(id));
    expect(casesOf(id)).toEqual([]);
  });

  it("shows an edit that is on its way into the store when the store is read", async () => {
    const id = await newDeck();
    const reading = shelf.reload();
    bench.edit(id, put("C1"));
    await reading;
    expect(casesOf(id)).toEqual(["C1"]);
    expect(await stored()).toEqual([deckOf(id)]);
  });

  it("is deleted for good, the edit on its way into the store with it", async () => {
    const id = await newDeck();
    bench.edit(id, put("C1"));
    expect(await bench.remove(deckOf(id))).toBe(true);
    expect(shelf.find(id)).toBeUndefined();
    expect(await stored()).toEqual([]);
  });
});

describe("a deleted deck", () => {
  it("does not come back with an edit while its removal waits", async () => {
    const id = await newDeck();
    bench.edit(id, put("C1"));
    const deck = deckOf(id);
    const removed = bench.remove(deck);
    expect(bench.edit(id, put("C2"))).toEqual({
      ok: false,
      error: { code: "deck-gone" },
    });
    bench.undo(deck);
    expect(await removed).toBe(true);
    expect(await stored()).toEqual([]);
    expect(shelf.find(id)).toBeUndefined();
    expect(bench.trouble).toBeUndefined();
  });

  it("does not come back with an edit in a window that has not heard of it, which says so", async () => {
    const id = await newDeck();
    await deleteDeck(database, id);
    bench.edit(id, put("C1"));
    await expect.poll(() => bench.trouble?.code).toBe("deck-gone");
    expect(shelf.find(id)).toBeUndefined();
    expect(await stored()).toEqual([]);
  });

  it("comes back where somebody takes its file in again", async () => {
    const deck = deckOf(await newDeck());
    await bench.remove(deck);
    expect(await bench.takeIn(deck)).toEqual({ ok: true, value: deck });
    expect(await stored()).toEqual([deck]);
  });
});

describe("a starter deck on the bench", () => {
  const corners = present(STARTER_DECKS[1], "there are three");
  const toEnd: DeckStep = {
    label: "move",
    edit: (deck) => moveCase(deck, 0, deck.cases.length - 1),
  };

  it("is never changed: a copy is offered, with the edit that was wanted", async () => {
    expect(bench.edit(corners.id, toEnd)).toMatchObject({
      ok: false,
      error: { code: "copy-first" },
    });
    expect(bench.offered).toEqual({ deck: corners, step: toEnd });
    expect(shelf.find(corners.id)).toBe(corners);
    const made = await bench.copy(corners, toEnd);
    if (!made.ok) throw new Error(made.error.code);
    const copy = deckOf(made.value.id);
    expect(copy.name).toBe("First-layer corners, copy");
    expect(copy.cases.at(-1)).toEqual(corners.cases[0]);
    expect(await stored()).toEqual([copy]);
    bench.undo(copy);
    expect(deckOf(copy.id).cases).toEqual(corners.cases);
  });

  it("can be copied twice, under two names", async () => {
    await bench.copy(corners);
    await bench.copy(corners);
    expect(
      shelf.all.slice(STARTER_DECKS.length).map(({ name }) => name),
    ).toEqual(["First-layer corners, copy", "First-layer corners, copy 2"]);
  });
});

describe("a deck with the longest name", () => {
  it("can be copied", async () => {
    const id = await newDeck();
    bench.edit(id, {
      label: "name",
      edit: (deck) => changeDeck(deck, { name: "x".repeat(60) }),
    });
    const made = await bench.copy(deckOf(id));
    expect(made.ok && made.value.name.endsWith("x, copy")).toBe(true);
  });

  const LETTERS = ["a", "é", "🙂", "👩‍🏫", "🇩🇪", "e\u0301"];
  const LONG_NAMES = fc
    .array(fc.constantFrom(...LETTERS), { minLength: 60, maxLength: 60 })
    .map((letters) =>
      letters.reduce(
        (name, letter) =>
          name.length + letter.length > 60 ? name : name + letter,
        "",
      ),
    );

  function lettersOf(name: string): readonly string[] {
    const segments = new Intl.Segmenter("en").segment(name);
    return Array.from(segments, ({ segment }) => segment);
  }

  async function namesOfCopies(name: string, count: number) {
    await forgetDatabases();
    shelf = new DeckShelf(await openTestDatabase());
    bench = new DeckBench(shelf);
    const id = await newDeck();
    bench.edit(id, call(name));
    for (let i = 0; i < count; i++) await bench.copy(deckOf(id));
    return shelf.all.slice(STARTER_DECKS.length + 1).map((copy) => copy.name);
  }

  it("is copied under names of their own that fit and cut no letter in two", async () => {
    await fc.assert(
      fc.asyncProperty(LONG_NAMES, async (name) => {
        const names = await namesOfCopies(name, 3);
        expect(new Set(names).size).toBe(3);
        for (const copy of names) {
          expect(copy.length).toBeLessThanOrEqual(60);
          const kept = lettersOf(copy.slice(0, copy.lastIndexOf(", copy")));
          expect(lettersOf(name).slice(0, kept.length)).toEqual(kept);
        }
      }),
      { numRuns: 20 },
    );
  });

  it("is copied more than a hundred times", async () => {
    const names = await namesOfCopies("🙂".repeat(30), 101);
    expect(new Set(names).size).toBe(101);
    expect(names.at(-1)).toBe(`${"🙂".repeat(25)}, copy 101`);
  });
});
