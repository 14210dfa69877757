import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../../core/cases/case-ids";
import type { Deck } from "../../../../core/deck/deck";
import { STARTER_DECKS } from "../../../../core/deck/starter-decks";
import { present } from "../../../../core/invariant";
import {
  addAllStep,
  addedSaid,
  caseStep,
  deckStep,
  dropStep,
  numberIn,
  placeSaid,
} from "../../../../renderer/places/coach/bench-edits";
import { gapAt } from "../../../../renderer/places/coach/deck-drag.svelte";

const corners = present(STARTER_DECKS[1], "there are three");
const ids = (deck: Deck) => deck.cases.map((entry) => entry.case);

/** The order after a case was dropped before so many rows. */
function dropped(id: CaseId, gap: number): readonly CaseId[] {
  const edited = dropStep(corners, id, gap)?.edit(corners);
  if (edited === undefined) return ids(corners);
  if (!edited.ok) throw new Error(edited.error.code);
  return ids(edited.value);
}

describe("a case that is dropped", () => {
  it("comes in before the row that it was dropped on", () => {
    expect(dropped("C9", 0)[0]).toBe("C9");
    expect(dropped("C9", 3).indexOf("C9")).toBe(3);
    expect(dropped("C9", 7).at(-1)).toBe("C9");
  });

  it("moves within the deck to where the line was, upwards and downwards", () => {
    const [a, b, c, ...rest] = ids(corners);
    expect(dropped("C1", 3)).toEqual([b, c, a, ...rest]);
    expect(dropped("C3", 0)).toEqual([c, a, b, ...rest]);
  });

  it("makes no step where it is already", () => {
    expect(dropStep(corners, "C2", 1)).toBeUndefined();
    expect(dropStep(corners, "C2", 2)).toBeUndefined();
  });
});

describe("the gap that a pointer means", () => {
  const rows = [0, 10, 20].map((top) => ({ top, bottom: top + 10 }));

  it("is before the row whose middle is below the pointer", () => {
    expect([0, 4, 6, 14, 16, 24, 26, 99].map((y) => gapAt(y, rows))).toEqual([
      0, 0, 1, 1, 2, 2, 3, 3,
    ]);
  });
});

describe("a step on the bench", () => {
  it("joins the one before where it is a letter of the same text", () => {
    expect(deckStep({ name: "a" })).toMatchObject({
      label: "name",
      joins: true,
    });
    expect(caseStep("C1", { note: "a" })).toMatchObject({
      label: "note C1",
      joins: true,
    });
    expect(caseStep("C1", { target: 3 })).toMatchObject({
      label: "target C1",
      joins: false,
    });
  });

  it("says where a case is now, and what kind of piece it is about", () => {
    const naming = { first: "white", last: "yellow", hold: "up" } as const;
    expect(placeSaid(corners, "C3", naming)).toBe(
      "Under its home, white on the bottom (corner): now third of 7.",
    );
    expect(placeSaid(corners, "E1", naming)).toBe(
      "Under its home, white on the bottom (edge): taken out, 7 left.",
    );
  });
});

describe("a number in a field", () => {
  it("is written with a point or a comma, and nothing else is one", () => {
    expect(["7", " 7,5 ", "7.5", "7."].map(numberIn)).toEqual([7, 7.5, 7.5, 7]);
    expect(["", "-1", "1e3", "0x9", "7 s", "∞"].map(numberIn)).toEqual(
      Array<undefined>(6).fill(undefined),
    );
  });
});

describe("a whole shelf that is put in at once", () => {
  it("is one step, and what is in the deck already stays where it is", () => {
    const step = addAllStep(["C1", "C9", "C10"]);
    expect(step.label).toBe("add-all");
    const edited = step.edit(corners);
    if (!edited.ok) throw new Error(edited.error.code);
    expect(ids(edited.value)).toEqual([...ids(corners), "C9", "C10"]);
    expect(addedSaid(2, edited.value)).toBe("2 cases put in, 9 in all.");
  });
});
