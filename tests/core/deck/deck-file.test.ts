import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DECK_FAULT_CODES } from "../../../core/deck/deck-fault";
import {
  formatDeckFile,
  MAX_DECK_FILE_LENGTH,
  parseDeckFile,
} from "../../../core/deck/deck-file";
import { JSON_FAULT_CODES } from "../../../core/deck/json-text";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";
import { ARBITRARY_DECK } from "./arbitrary-decks";
import { fileWith, REFUSED } from "./refused-deck-files";

const WRITTEN = `{
  "turnwise": "deck",
  "version": 1,
  "readableFrom": 1,
  "id": "0c9e2f61-6a3d-4f57-9a43-0d6d0e5c8a11",
  "name": "Monday: first corners",
  "description": "Two corners for the first week.",
  "message": "Look underneath first.\\nThen turn.",
  "note": "for the group of ten",
  "hold": "up",
  "first colour": "the learner's",
  "new a round": 2,
  "stages": ["first-layer corners", "first-layer edges"],
  "every case at least": { "days": 7, "until": "2027-02-01" },
  "cases": [
    { "case": "C1", "target": 20, "way": "D' R' D R", "note": "Look underneath first.", "others placed": 2, "home": "in front", "piece": "lined up", "marked": true, "ways of answering": ["on screen", "my cube"] },
    { "case": "S2", "target": 65.5, "way": "the fewest turns, left hand" }
  ]
}
`;

const READ = {
  deck: {
    id: "0c9e2f61-6a3d-4f57-9a43-0d6d0e5c8a11",
    name: "Monday: first corners",
    description: "Two corners for the first week.",
    message: "Look underneath first.\nThen turn.",
    note: "for the group of ten",
    hold: "up",
    newPerRound: 2,
    stages: ["first-layer-corners", "first-layer-edges"],
    ceiling: { everyDays: 7, until: "2027-02-01" },
    cases: [
      {
        case: "C1",
        target: 20,
        way: { kind: "turns", turns: "D' R' D R" },
        note: "Look underneath first.",
        placed: 2,
        home: "front",
        lining: "lined-up",
        pieces: "marked",
        answerWays: ["on-screen", "my-cube"],
      },
      {
        case: "S2",
        target: 65.5,
        way: { kind: "school", school: "shortest", hand: "left" },
      },
    ],
  },
  unknownCases: [],
};

describe("a deck file", () => {
  it("says in words what the deck holds, a case a line", () => {
    const read = parseDeckFile(WRITTEN);
    expect(read).toEqual({ ok: true, value: READ });
    if (read.ok) expect(formatDeckFile(read.value.deck)).toBe(WRITTEN);
  });

  it("reads back exactly the deck that was written", () => {
    fc.assert(
      fc.property(ARBITRARY_DECK, (deck) => {
        expect(parseDeckFile(formatDeckFile(deck))).toEqual({
          ok: true,
          value: { deck, unknownCases: [] },
        });
      }),
    );
  });

  it("holds every starter deck", () => {
    for (const deck of STARTER_DECKS)
      expect(parseDeckFile(formatDeckFile(deck))).toEqual({
        ok: true,
        value: { deck, unknownCases: [] },
      });
  });

  it("may be written by hand in three fields, and gets the usual rest", () => {
    expect(parseDeckFile(fileWith(""))).toEqual({
      ok: true,
      value: {
        deck: {
          name: "Monday",
          description: "",
          newPerRound: 2,
          cases: [{ case: "C1", target: 20 }],
        },
        unknownCases: [],
      },
    });
  });

  it("may come with a byte order mark, line ends of Windows and spaces about its name", () => {
    const text = `\uFEFF${WRITTEN.replaceAll("\n", "\r\n").replace('"Monday', '" Monday')}`;
    expect(parseDeckFile(text)).toEqual({ ok: true, value: READ });
  });

  it("may name its description for an editor, which is not kept", () => {
    const named = (version: number) =>
      fileWith(
        `"$schema":"../deck-file.schema.json","readableFrom":1,`,
      ).replace('"version":1', `"version":${version}`);
    for (const version of [1, 2]) {
      const read = parseDeckFile(named(version));
      if (!read.ok) throw new Error(read.error.code);
      expect(formatDeckFile(read.value.deck)).not.toContain("$schema");
    }
  });

  it("is one and the same deck whether its id is written large or small", () => {
    const text = WRITTEN.replace("0c9e2f61-6a3d", "0C9E2F61-6A3D");
    expect(parseDeckFile(text)).toEqual({ ok: true, value: READ });
  });

  it("names the cases that nobody knows and reads the others", () => {
    const cases = '{"case":"Z1"},{"case":"C1"},{"case":"c2"},{"case":"Z1"}';
    const read = parseDeckFile(fileWith("", cases));
    expect(read).toMatchObject({
      ok: true,
      value: {
        deck: { cases: [{ case: "C1" }] },
        unknownCases: [
          { id: "Z1", index: 0 },
          { id: "c2", index: 2 },
          { id: "Z1", index: 3 },
        ],
      },
    });
  });

  it("of a newer form keeps what this version does not know, and is written in that form again", () => {
    const text = `{
  "turnwise": "deck",
  "version": 3,
  "readableFrom": 1,
  "name": "Later",
  "description": "",
  "first colour": "the learner's",
  "new a round": 2,
  "every case at least": { "days": 7, "until": "2027-02-01", "except": ["Sunday"] },
  "weather": { "rain": [1, null, "a\\u0007"], "toString": {} },
  "cases": [
    { "case": "C1", "target": 20, "sound": true }
  ]
}
`;
    const read = parseDeckFile(text);
    expect(read).toMatchObject({
      ok: true,
      value: {
        deck: {
          extra: { version: 3, readableFrom: 1 },
          cases: [{ case: "C1", extra: { sound: true } }],
        },
      },
    });
    if (read.ok) expect(formatDeckFile(read.value.deck)).toBe(text);
  });

  it("of this form never holds another form's fields", () => {
    const strange = { case: "C1", target: 20, extra: { sound: true } } as const;
    const [deck] = STARTER_DECKS;
    const text = formatDeckFile({
      ...(deck ?? { name: "", description: "", newPerRound: 2 }),
      cases: [strange],
    });
    expect(text).not.toContain("sound");
    expect(parseDeckFile(text).ok).toBe(true);
  });

  it("may be as large as it says, and no larger", () => {
    const fill = (length: number) =>
      WRITTEN + " ".repeat(length - WRITTEN.length);
    expect(parseDeckFile(fill(MAX_DECK_FILE_LENGTH)).ok).toBe(true);
    expect(parseDeckFile(fill(MAX_DECK_FILE_LENGTH + 1)).ok).toBe(false);
  });

  it("carries a script as the text that it is", () => {
    const script = "<script>alert(1)</script>";
    const read = parseDeckFile(fileWith(`"message":"${script}",`));
    expect(read).toMatchObject({ value: { deck: { message: script } } });
  });
});

describe("refusing a deck file", () => {
  it.each(REFUSED)("refuses %s", (_what, text, error) => {
    expect(parseDeckFile(text)).toMatchObject({ ok: false, error });
  });

  it("has an example of every cause", () => {
    const shown = new Set(REFUSED.map(([, , { code }]) => code));
    const all = [
      ...["too-large", "not-turnwise", "other-kind", "newer-version"],
      ...JSON_FAULT_CODES,
      ...DECK_FAULT_CODES,
    ];
    expect([...shown].toSorted()).toEqual(all.toSorted());
  });

  it("never carries more than a little of the file with it", () => {
    for (const [, text] of REFUSED) {
      const read = parseDeckFile(text);
      if (read.ok) continue;
      const carried = JSON.stringify(read.error);
      expect(carried.length, carried.slice(0, 100)).toBeLessThan(600);
    }
  });
});
