import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import { recogniseLastLayer } from "../../../core/cases/recognise-last-layer";
import { invert } from "../../../core/cube/cubies";
import { parseCaseId } from "../../../core/cases/case-table";
import { checkWay } from "../../../core/deck/check-way";
import { addCase, changeDeck, moveCase } from "../../../core/deck/deck-edits";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";
import { present } from "../../../core/invariant";
import { randomSource } from "../../../core/random-source";
import { madeOnTop } from "../../core/cases/made-on-top";
import { turnsOf } from "../../core/notation/turns-of";
import {
  editRefusalText,
  wayOutgrownText,
  wayRefusalText,
} from "../../../renderer/state/edit-refusals";

const corners = present(STARTER_DECKS[1], "there are three");
const NAMING = { first: "white", last: "yellow", hold: "up" } as const;

function refusedWay(id: CaseId, text: string, placed?: 3): string {
  const trial = placed === undefined ? {} : { placed };
  const checked = checkWay(id, text, randomSource(1), trial);
  return checked.ok ? "taken" : wayRefusalText(checked.error, NAMING);
}

describe("a typed way that is refused", () => {
  it("is told at the letter that cannot be read", () => {
    expect(refusedWay("C1", "R' D# R")).toMatch(/at letter 5/);
  });

  it("is told what the cube shows, and what its turns answer instead", () => {
    // Source: C2's way in the table of the design's first-layer.md, played on C1.
    expect(refusedWay("C1", "R' D' R")).toMatch(
      /^Played through, this does not answer the case\. With no other piece home yet, the corner .* These turns answer “Under its home, white on the right”\.$/,
    );
    expect(refusedWay("E1", "D D'")).toContain("the edge does not come home");
    expect(refusedWay("E1", "F2 U", 3)).toMatch(
      /^Played .*\. With 3 other pieces home already, only the first layer stays turned away\. Your second turn is one too many\.$/,
    );
    expect(refusedWay("E1", "F2 U")).toContain(
      "the edge comes into another piece’s home",
    );
    expect(refusedWay("E1", "F2 R2", 3)).toContain(
      "the edge comes home, but another piece loses its place",
    );
    expect(refusedWay("C4", "D", 3)).toContain(
      "the corner comes home, but twisted",
    );
  });

  it("is told which one turn of a known way went wrong", () => {
    // C1's way is D' R' D R.
    expect(refusedWay("C1", "D' R' D R'")).toMatch(
      /\. Your fourth turn went the other way round\.$/,
    );
  });

  it("is told what to turn before it", () => {
    const T = "R U R' U' R' F R2 U' R' U' R U R' F'";
    const shown = recogniseLastLayer(
      invert(madeOnTop(turnsOf(T))),
      "last-layer-placed",
    );
    if (shown === undefined || shown === "answered") throw new Error(T);
    expect(refusedWay(shown.id, T)).toBe(
      `Played through, this does not answer the case. The top is not as the case asks. It does after a turn of the top: U first. Type: U ${T}`,
    );
    expect(refusedWay(shown.id, `y U ${T}`)).toContain("Type: U' y U R");
    expect(refusedWay("C1", "R' D R")).toMatch(
      /It does after a turn of the bottom: D' first\. Type: D' R' D R$/,
    );
  });

  it("is told which pieces of the last layer do not stay", () => {
    const id = present(
      parseCaseId("last-layer-corners-placed:2301"),
      "it is a case",
    );
    expect(refusedWay(id, "R U R' U R U2 R' U2")).toContain(
      "The top edges do not stay as they are",
    );
    expect(refusedWay(id, "R")).toContain(
      "The first two layers do not stay as they are",
    );
    expect(refusedWay(id, "U")).toContain("The top is not as the case asks");
  });

  it("is told as outgrown where the deck asks the case otherwise than before", () => {
    // Source: F' R brings E2a home and takes the piece under R with it: right with no other home filled.
    expect(checkWay("E2a", "F' R", randomSource(1), { placed: 0 }).ok).toBe(
      true,
    );
    const now = checkWay("E2a", "F' R", randomSource(1));
    expect(now.ok ? "" : wayOutgrownText(now.error)).toMatch(
      /^This way no longer answers the case as you have it asked now\. With .* other piece.* home already, the edge comes home, but another piece loses its place\. Try another way/,
    );
  });

  it("is told when nothing turns, or nothing could answer", () => {
    expect(refusedWay("C1", "y")).toMatch(/Nothing turns/);
    expect(refusedWay("S1", "R U R'")).toMatch(/no one way/);
  });
});

describe("an edit that is refused", () => {
  const refused = [
    [
      changeDeck(corners, { newPerRound: 99 }),
      /“New cases a round” .* 0 to 12/,
    ],
    [changeDeck(corners, { name: " " }), /“Name” has nothing in it/],
    [addCase(corners, "C1"), /C1 is in the deck twice/],
    [moveCase(corners, 0, 99), /no such place/],
  ] as const;

  it.each(refused)(
    "says what to do in the bench's own words (%#)",
    (edited, words) => {
      expect(!edited.ok && editRefusalText(edited.error)).toMatch(words);
    },
  );

  it("says when the deck is gone, and nothing where a copy is offered", () => {
    expect(editRefusalText({ code: "deck-gone" })).toMatch(/deleted/);
    expect(editRefusalText({ code: "case-not-in-deck", case: "C1" })).toMatch(
      /no longer in the deck/,
    );
    expect(editRefusalText({ code: "copy-first" })).toBe("");
    expect(editRefusalText({ code: "guest-at-desk" })).toMatch(
      /guest .* stay as they are.* F2/,
    );
  });
});
