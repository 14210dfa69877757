import { describe, expect, it } from "vitest";
import { judge } from "../../../../core/answer/judge";
import { SOLVED } from "../../../../core/cube/cubies";
import { applyTurns } from "../../../../core/cube/held-cube";
import { agreesWith } from "../../../../core/cube/partly-known";
import { shownPosition } from "../../../../core/cases/known-layer";
import type { Deck } from "../../../../core/deck/deck";
import { STARTER_DECKS } from "../../../../core/deck/starter-decks";
import { present } from "../../../../core/invariant";
import { OPENINGS } from "../../../../core/memory/variant-opening";
import { setUpStart } from "../../../../core/paper/set-up-start";
import { SHEET_KINDS, type SheetKind } from "../../../../core/paper/sheet";
import {
  type ColourScheme,
  USUAL_SCHEME,
} from "../../../../core/picture/colour-sets";
import { cubePalette } from "../../../../core/picture/palette";
import { taughtTurns } from "../../../../renderer/state/practise/deck-way";
import {
  type Drafted,
  draftSheet,
} from "../../../../renderer/state/sheets/sheet-draft";
import {
  type SheetInput,
  sheetPages,
} from "../../../../renderer/state/sheets/sheet-pages";
import { faultsOf, textOf } from "../../../core/paper/blocks-for-tests";
import { foundAtOnce } from "./found-at-once";

const CHOICE = { school: "first", hand: "right" } as const;

async function draftOf(
  deck: Deck,
  kind: SheetKind,
  most = 2,
  number = 1,
): Promise<readonly Drafted[]> {
  const made = await draftSheet(
    {
      kind,
      cases: deck.cases.slice(-most),
      hold: deck.hold ?? "up",
      number,
      count: most,
      opening: present(OPENINGS[number % 3], "there are three"),
    },
    foundAtOnce,
    new AbortController().signal,
    () => undefined,
  );
  const { drafted, trouble } = present(made, "nobody stops it");
  expect(trouble).toBeUndefined();
  return drafted;
}

function inputFor(
  kind: SheetKind,
  drafted: readonly Drafted[],
  told: Partial<SheetInput> = {},
): SheetInput {
  const scheme = told.scheme ?? USUAL_SCHEME;
  return {
    kind,
    paper: "a4",
    number: 48213,
    told: "both",
    answers: "end",
    deck: "Some deck",
    hold: "up",
    wayChoice: CHOICE,
    drafted,
    learner: "Ann",
    numbers: { cases: 3, kept: 2, answers: 40, days: 5 },
    counted: "26 November 2026",
    scheme,
    palette: cubePalette({
      scheme,
      theme: "print",
      paints: "greys",
      letters: true,
    }),
    ...told,
  };
}

describe("the pages of a sheet", () => {
  it.each(STARTER_DECKS.map((deck) => [deck.name, deck] as const))(
    "hold everything on paper of either size, in letters and in words: %s",
    async (_name, deck) => {
      for (const kind of SHEET_KINDS) {
        const drafted = await draftOf(deck, kind);
        for (const [paper, told] of [
          ["a4", "both"],
          ["letter", "words"],
        ] as const) {
          const sheet = sheetPages(inputFor(kind, drafted, { paper, told }));
          expect(faultsOf(sheet)).toEqual([]);
          expect(sheet.pages.length).toBeGreaterThan(0);
        }
      }
    },
  );

  it.each(["up", "down"] as const)(
    "of five first-layer edges are two, of Letter as of A4, and hold everything: %s",
    async (hold) => {
      const edges = present(STARTER_DECKS[0], "there are starter decks");
      for (let from = 0; from + 5 <= edges.cases.length; from += 1) {
        const cases = edges.cases.slice(from, from + 5);
        const drafted = await draftOf({ ...edges, cases, hold }, "cases", 5);
        for (const paper of ["a4", "letter"] as const)
          for (const told of ["both", "words"] as const) {
            const sheet = sheetPages(
              inputFor("cases", drafted, {
                paper,
                told,
                hold,
                // As long as a lesson's name is.
                deck: "Monday’s lesson, 30 November 2026",
              }),
            );
            expect(sheet.pages, `${paper}, ${told}, from ${from}`).toHaveLength(
              2,
            );
            expect(faultsOf(sheet)).toEqual([]);
          }
      }
    },
  );

  it("are the same for the same number and choices, and others for another number", async () => {
    const [deck] = STARTER_DECKS;
    const made = async (number: number) => {
      const drafted = await draftOf(
        present(deck, "there are starter decks"),
        "practice",
        6,
        number,
      );
      return sheetPages(inputFor("practice", drafted, { number }));
    };
    expect(await made(4)).toEqual(await made(4));
    expect(textOf(await made(4))).not.toEqual(textOf(await made(7)));
  });

  it("name colours as the learner does, and no others", async () => {
    const scheme: ColourScheme = {
      U: "pink",
      R: "black",
      F: "turquoise",
      D: "grey",
      L: "brown",
      B: "purple",
    };
    const usual = Object.values(USUAL_SCHEME);
    for (const deck of STARTER_DECKS.slice(1, 4))
      for (const kind of SHEET_KINDS) {
        const drafted = await draftOf(deck, kind);
        const words = textOf(sheetPages(inputFor(kind, drafted, { scheme })))
          .flat()
          .join(" ")
          .split(/\W+/);
        for (const colour of usual) expect(words).not.toContain(colour);
        if (kind !== "certificate") expect(words).toContain("pink");
      }
  });

  it("tell no letter of a turn where words alone are wanted", async () => {
    const [, corners] = STARTER_DECKS;
    for (const kind of ["cases", "practice", "overview"] as const) {
      const drafted = await draftOf(
        present(corners, "corners have a deck"),
        kind,
      );
      const texts = textOf(
        sheetPages(inputFor(kind, drafted, { told: "words" })),
      ).flat();
      for (const text of texts)
        expect(text).not.toMatch(/(^| )[URFDLBy]['2]?( [URFDLBy]['2]?)*$/);
    }
  });

  it.each(["cases", "practice"] as const)(
    "say at the top what is to be done, where it is the same for all: %s",
    async (kind) => {
      const lead = async (deck: Deck | undefined) => {
        const drafted = await draftOf(present(deck, "one is there"), kind);
        const [head] =
          sheetPages(inputFor(kind, drafted)).pages[0]?.blocks ?? [];
        return (head?.block.items ?? [])
          .flatMap((item) => (item.kind === "text" ? item.text : []))
          .join(" ");
      };
      const named = (id: string) => STARTER_DECKS.find((one) => one.id === id);
      expect(await lead(named("starter-corners"))).toContain(
        "Bring the outlined piece home, to the dashed place.",
      );
      expect(await lead(named("starter-turning"))).toContain(
        "Make the whole top yellow in one go.",
      );
    },
  );

  it("name a certificate's learner, deck and numbers", () => {
    const input = inputFor("certificate", []);
    const words = textOf(sheetPages(input)).flat();
    expect(words).toContain("Ann");
    expect(words).toContain("knows 2 of the 3 cases of Some deck by heart.");
    expect(words).toContain("2 of 3");
    expect(words).toContain("40");
    expect(words).not.toContain("usual time to think");
  });
});

describe("what stands on a practice sheet", () => {
  it.each(STARTER_DECKS.map((deck) => [deck.name, deck] as const))(
    "is set up from a solved cube and answered by its answer: %s",
    async (_name, deck) => {
      for (const one of await draftOf(deck, "practice", 2, 2)) {
        const { position, setUp, deckCase } = one;
        const shown = shownPosition(position);
        const solved = { cubies: SOLVED, hold: setUpStart(shown).hold };
        const there = applyTurns(solved, present(setUp, "one is found"));
        expect(agreesWith(there.cubies, shown.cubies)).toBe(true);
        const way = deckCase.way;
        const answer = taughtTurns(position, { way, choice: CHOICE });
        // The learner's own cube shows the case, whatever else is on it.
        const own = { ...position, cubies: there.cubies };
        expect(judge(own, applyTurns(there, answer)).right).toBe(true);
      }
    },
  );

  it("stands there without its set-up where none is found, and says why", async () => {
    const [deck] = STARTER_DECKS;
    const reason = { code: "solver-failed", reason: "gone" } as const;
    const made = await draftSheet(
      {
        kind: "practice",
        cases: present(deck, "there are starter decks").cases,
        hold: "up",
        number: 1,
        count: 2,
        opening: "front",
      },
      () => Promise.resolve({ ok: false, error: reason }),
      new AbortController().signal,
      () => undefined,
    );
    expect(made?.trouble).toEqual(reason);
    expect(made?.drafted.map(({ setUp }) => setUp)).toEqual([
      undefined,
      undefined,
    ]);
    const sheet = sheetPages(inputFor("practice", made?.drafted ?? []));
    expect(faultsOf(sheet)).toEqual([]);
  });
});
