/** Sheets of every kind, from content as small and as large as it may get. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { caseSheet } from "../../../core/paper/case-sheet";
import { certificateSheet } from "../../../core/paper/certificate";
import { overviewSheet } from "../../../core/paper/overview-sheet";
import { PAPER_NAMES } from "../../../core/paper/paper-size";
import {
  ANSWER_PLACES,
  practiceSheet,
} from "../../../core/paper/practice-sheet";
import { layOutSheet, type SheetPart } from "../../../core/paper/sheet";
import type {
  ShownCase,
  ShownQuestion,
  ShownTurns,
} from "../../../core/paper/shown-case";
import { PICTURE_ROOM } from "../../../core/paper/shown-case";
import { parseTurns } from "../../../core/notation/parse";
import { turnsInWords } from "../../../core/notation/say-in-words";
import { emptyPicture, faultsOf, textOf } from "./blocks-for-tests";

function turns(text: string): ShownTurns {
  const read = parseTurns(text);
  if (!read.ok) throw new Error(`no turns: ${text}`);
  return { turns: read.value, words: turnsInWords(read.value) };
}

const words = fc
  .array(fc.constantFrom("white", "on", "the", "bottom", "Mittelstück", "y"), {
    minLength: 1,
    maxLength: 12,
  })
  .map((list) => list.join(" "));
const sequence = fc
  .array(fc.constantFrom("R", "U'", "F2", "D", "L'", "y", "Rw2", "M'"), {
    minLength: 1,
    maxLength: 23,
  })
  .map((list) => turns(list.join(" ")));
const told = fc.constantFrom("both" as const, "words" as const);
const paper = fc.constantFrom(...PAPER_NAMES);
const lines = fc.array(words, { maxLength: 3 });
const high = fc.double({ min: 5, max: 60, noNaN: true });

const shownCase: fc.Arbitrary<ShownCase> = fc
  .record({
    title: words,
    setUp: fc.option(sequence, { nil: undefined }),
    way: fc.option(sequence, { nil: undefined }),
    height: high,
  })
  .map(({ title, setUp, way, height }) => ({
    title,
    setUp,
    way,
    ...emptyPicture(PICTURE_ROOM.overview, height),
    steps: (way?.turns ?? []).map((_, n) => ({
      move: `R${n}`,
      words: title,
      ...emptyPicture(PICTURE_ROOM.step, 25),
    })),
  }));

const question: fc.Arbitrary<ShownQuestion> = fc
  .record({
    title: words,
    setUp: fc.option(sequence, { nil: undefined }),
    answer: sequence,
    height: high,
  })
  .map(({ height, ...rest }) => ({
    ...rest,
    ...emptyPicture(PICTURE_ROOM.question, height),
  }));

const KEY = "W white, G green, O orange, R red, B blue, Y yellow";

function laidOut(
  on: (typeof PAPER_NAMES)[number],
  parts: readonly SheetPart[],
  number = 7,
) {
  return layOutSheet({ paper: on, number, parts, key: KEY });
}

describe("a sheet of any kind", () => {
  it("keeps every mark in its block, every block on its page and none over another: cases", () => {
    fc.assert(
      fc.property(
        fc.array(shownCase, { minLength: 1, maxLength: 8 }),
        fc.record({ paper, told, title: words, lines }),
        (cases, rest) => {
          const sheet = laidOut(rest.paper, [caseSheet({ ...rest, cases })]);
          expect(faultsOf(sheet)).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
  });

  it("keeps to the same: overviews", () => {
    fc.assert(
      fc.property(
        fc.array(shownCase, { minLength: 1, maxLength: 30 }),
        fc.record({ paper, told, title: words, lines }),
        (cases, rest) => {
          const sheet = laidOut(rest.paper, [
            overviewSheet({ ...rest, cases }),
          ]);
          expect(faultsOf(sheet)).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
  });

  it("keeps to the same: practice, wherever its answers are; and is the same for the same input", () => {
    fc.assert(
      fc.property(
        fc.array(question, { minLength: 1, maxLength: 20 }),
        fc.record({
          paper,
          told,
          title: words,
          lines,
          answers: fc.constantFrom(...ANSWER_PLACES),
        }),
        (questions, rest) => {
          const make = () =>
            laidOut(
              rest.paper,
              practiceSheet({ ...rest, questions, key: KEY }),
            );
          const sheet = make();
          expect(faultsOf(sheet)).toEqual([]);
          expect(make()).toEqual(sheet);
        },
      ),
      { numRuns: 60 },
    );
  });

  it("keeps to the same: certificates, on one page", () => {
    fc.assert(
      fc.property(
        fc.record({
          paper,
          learner: fc.string({ minLength: 1, maxLength: 40 }),
          deck: fc.string({ minLength: 1, maxLength: 80 }),
        }),
        fc.nat({ max: 2000 }),
        fc.boolean(),
        (named, answers, isTimed) => {
          const part = certificateSheet({
            ...named,
            counted: "26 November 2026",
            numbers: {
              cases: 41,
              kept: 12,
              answers,
              days: 9,
              ...(isTimed ? { thinking: 3210 } : {}),
            },
            picture: emptyPicture(60, 55),
            key: "",
          });
          const sheet = laidOut(named.paper, [part]);
          expect(faultsOf(sheet)).toEqual([]);
          expect(sheet.pages).toHaveLength(1);
        },
      ),
      { numRuns: 60 },
    );
  });

  it("says on every page which sheet it is, which page, and what the letters mean", () => {
    const cases: readonly ShownCase[] = Array.from({ length: 9 }, (_, n) => ({
      title: `Case ${n + 1}`,
      setUp: turns("R U"),
      way: turns("U' R'"),
      steps: [],
      ...emptyPicture(40, 50),
    }));
    const sheet = laidOut(
      "a4",
      [caseSheet({ paper: "a4", title: "T", lines: [], told: "both", cases })],
      48213,
    );
    expect(sheet.pages.length).toBeGreaterThan(1);
    for (const [n, texts] of textOf(sheet).entries()) {
      expect(texts).toContain(
        `Turnwise, sheet 48213, page ${n + 1} of ${sheet.pages.length}`,
      );
      expect(texts).toContain(KEY);
    }
    const titles = textOf(sheet)
      .flat()
      .filter((text) => text.startsWith("Case "));
    expect(titles).toEqual(cases.map(({ title }) => title));
  });
});

describe("a case sheet", () => {
  it.each([
    [3, 40, [3]],
    [6, 40, [6]],
    [8, 40, [4, 4]],
    [15, 30, [5, 5, 5]],
  ])(
    "deals the pictures of %i turns out evenly to as few rows as they need",
    (count, height, expected) => {
      const shown: ShownCase = {
        title: "Case",
        setUp: undefined,
        way: turns(Array.from({ length: count }, () => "R").join(" ")),
        steps: Array.from({ length: count }, () => ({
          move: "R",
          words: "Right side up.",
          ...emptyPicture(PICTURE_ROOM.step, 25),
        })),
        ...emptyPicture(PICTURE_ROOM.case, height),
      };
      const { blocks } = caseSheet({
        paper: "a4",
        title: "T",
        lines: [],
        told: "both",
        cases: [shown],
      });
      const rows = new Map<string, number>();
      for (const [n, { items }] of blocks.entries())
        for (const item of items)
          if (item.kind === "text" && item.text === "R") {
            const row = `${n} ${item.y}`;
            rows.set(row, (rows.get(row) ?? 0) + 1);
          }
      expect([...rows.values()]).toEqual(expected);
    },
  );
});

describe("a practice sheet", () => {
  const questions: readonly ShownQuestion[] = Array.from(
    { length: 14 },
    (_, n) => ({
      title: `Secret ${n + 1}`,
      setUp: turns("L F D'"),
      answer: turns("D' R'"),
      ...emptyPicture(40, 45),
    }),
  );
  const made = (answers: (typeof ANSWER_PLACES)[number]) =>
    textOf(
      laidOut(
        "a4",
        practiceSheet({
          paper: "a4",
          title: "T",
          lines: [],
          told: "both",
          questions,
          answers,
          key: KEY,
        }),
      ),
    );
  const hasAnswers = (texts: readonly string[]) =>
    texts.some((text) => text.startsWith("Secret"));
  const hasQuestions = (texts: readonly string[]) => texts.includes("My turns");

  it("tells no answer on a page of questions", () => {
    for (const place of ANSWER_PLACES)
      for (const texts of made(place))
        expect(hasAnswers(texts) && hasQuestions(texts)).toBe(false);
  });

  it("has the answers after all questions, if so wanted", () => {
    const pages = made("end").map(hasAnswers);
    expect(pages).toEqual(pages.toSorted((a, b) => Number(a) - Number(b)));
    expect(pages).toContain(true);
  });

  it("has the answers to each page on its back, if so wanted", () => {
    const pages = made("back");
    expect(pages.map(hasAnswers)).toEqual(pages.map((_, n) => n % 2 === 1));
    const numbers = (texts: readonly string[] = []) =>
      texts.filter((text) => /^\d+$/.test(text));
    for (let n = 0; n < pages.length; n += 2)
      expect(numbers(pages[n + 1])).toEqual(numbers(pages[n]));
  });

  it("has no answers, if so wanted", () => {
    expect(made("none").some(hasAnswers)).toBe(false);
  });
});
