import { describe, expect, it } from "vitest";
import {
  type KnownOfCases,
  type RecognisingQuestion,
  recognisingQuestion,
} from "../../../core/answer/recognising-question";
import type { CaseId } from "../../../core/cases/case-ids";
import type { Position } from "../../../core/cases/position";
import type { RecognisingWay } from "../../../core/memory/review";
import { isRecognisable } from "../../../core/memory/recognising-round";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { cubePalette } from "../../../core/picture/palette";
import { randomSource } from "../../../core/random-source";
import {
  choiceBadges,
  choicePlaces,
  paletteAtHome,
  takenPicture,
} from "../../../renderer/state/practise/choice-pictures";
import {
  choiceTexts,
  chosenWords,
  outlinedInWords,
  questionWords,
} from "../../../renderer/state/practise/choice-words";
import { asked, EDGE, firstOf, PAIR } from "./asked";

const NOTHING_KNOWN: KnownOfCases = {
  mixedUpWith: [],
  isMet: () => false,
};

const PALETTE = cubePalette({ scheme: USUAL_SCHEME, theme: "light" });

function ask(position: Position, way: RecognisingWay): RecognisingQuestion {
  return recognisingQuestion(position, way, randomSource(3), NOTHING_KNOWN);
}

/** A position held up, of the reference home. */
function heldUp(id: CaseId): Position {
  return { ...asked(id, {}, 0), hold: "up" };
}

function wordsOf(position: Position, way: RecognisingWay) {
  return questionWords(ask(position, way), position, USUAL_SCHEME);
}

describe("a question to choose from", () => {
  it("names what is to be looked at, found, or brought home", () => {
    expect(wordsOf(heldUp("E1"), "which-is-it")).toEqual({
      prompt: "Which is it?",
      more: "Look at the white and green edge. In the pictures its home is in front.",
    });
    expect(wordsOf(heldUp("C1"), "find-it").prompt).toBe(
      "Find the white, green and red corner.",
    );
    expect(wordsOf(heldUp("C1"), "where-is-home").prompt).toBe(
      "Where is the home of the white, green and red corner?",
    );
    expect(wordsOf(asked(PAIR), "which-is-it").more).toContain(
      "the white, green and red corner and its edge",
    );
    expect(
      wordsOf(asked(firstOf("last-layer-turned")), "which-is-it").more,
    ).toContain("from above");
  });

  it("calls each case by its title, each place by where it is", () => {
    const which = ask(heldUp("E1"), "which-is-it");
    const titles = choiceTexts(which, heldUp("E1"), USUAL_SCHEME);
    expect(titles.map(({ title }) => title).toSorted()).toEqual([
      "Middle front left, white on the left",
      "Middle front right, white on the right",
      "Under its home, white on the bottom",
      "Under its home, white on the front",
    ]);
    const home = ask(heldUp("E1"), "where-is-home");
    expect(choiceTexts(home, heldUp("E1"), USUAL_SCHEME)).toEqual([
      { title: "Top left", seen: "" },
      { title: "Top front", seen: "" },
      { title: "Top back", seen: "" },
      { title: "Top right", seen: "" },
    ]);
  });

  it("says to who cannot see the picture which way every sticker of a place faces", () => {
    // E1: the white and green edge at the bottom front, white down.
    const position = heldUp("E1");
    const question = ask(position, "find-it");
    const texts = choiceTexts(question, position, USUAL_SCHEME);
    expect(texts[question.right]).toEqual({
      title: "Bottom front",
      seen: "white on the bottom, green on the front",
    });
    // All are told alike: none is told by how it is told.
    for (const { seen } of texts)
      expect(seen).toMatch(/^\w+ on (the )?\w+, \w+ on (the )?\w+$/);
  });

  it("says where the outlined piece is, and not where it belongs", () => {
    const position = heldUp("E1");
    const question = ask(position, "where-is-home");
    if (question.way === "which-is-it") throw new Error("another question");
    expect(outlinedInWords(question, position, USUAL_SCHEME)).toBe(
      "The white and green edge: bottom front; white is on the bottom.",
    );
  });
});

describe("what is said of a choice", () => {
  const ways: readonly RecognisingWay[] = [
    "which-is-it",
    "find-it",
    "where-is-home",
  ];

  it("is that it was right, or what it was taken for and what it is", () => {
    const position = heldUp("E1");
    const said = (way: RecognisingWay, of: (right: number) => number) => {
      const question = ask(position, way);
      return chosenWords(question, of(question.right), position, USUAL_SCHEME);
    };
    expect(said("which-is-it", (right) => right).sentence).toBe(
      "Right, “Under its home, white on the bottom”.",
    );
    const taken = said("which-is-it", (right) => (right + 1) % 4);
    expect(taken.sentence).toMatch(/^You took it for “.+, white on the .+”\.$/);
    expect(taken.more).toContain("It is “Under its home, white on the bottom”");
    expect(said("find-it", (right) => right)).toEqual({
      sentence: "Right, that is the white and green edge.",
      more: "Bottom front; white is on the bottom.",
    });
    const found = said("find-it", (right) => (right + 1) % 4);
    expect(found.sentence).toMatch(/^That is the \w+ and \w+ edge\.$/);
    expect(found.more).toMatch(
      /^Both have (white|green)\. The white and green/,
    );
    expect(said("where-is-home", (right) => right).sentence).toBe(
      "Right, its home is top front.",
    );
    const home = said("where-is-home", (right) => (right + 1) % 4);
    expect(home.sentence).toMatch(
      /^That is the home of the white and \w+ edge/,
    );
    expect(home.more).toContain("is top front.");
  });

  it("is there for every stage, way and choice", () => {
    const ids: readonly CaseId[] = [
      "E2a",
      "C6",
      EDGE,
      PAIR,
      firstOf("last-layer-placed"),
    ];
    for (const id of ids)
      for (const way of ways.filter((one) => isRecognisable(id, one))) {
        const position = asked(id);
        const question = ask(position, way);
        question.choices.forEach((_, choice) => {
          const { sentence } = chosenWords(
            question,
            choice,
            position,
            USUAL_SCHEME,
          );
          expect(sentence.startsWith("Right")).toBe(choice === question.right);
        });
      }
  });
});

describe("the numbers on the cube", () => {
  it("are on every place while it is asked, then on the right one and the one chosen", () => {
    const position = heldUp("E1");
    const question = ask(position, "find-it");
    if (question.way === "which-is-it") throw new Error("another question");
    const kinds = (chosen?: number) =>
      choiceBadges(question, position, chosen).map(
        ({ text, kind }) => `${text} ${kind}`,
      );
    expect(kinds()).toEqual(["1 choice", "2 choice", "3 choice", "4 choice"]);
    const { right } = question;
    expect(kinds(right)).toEqual([`${right + 1} right`]);
    const wrong = (right + 1) % 4;
    expect(kinds(wrong).toSorted()).toEqual(
      [`${right + 1} right`, `${wrong + 1} mistaken`].toSorted(),
    );
  });

  it("are where the pieces are, or where they belong", () => {
    const position = heldUp("E1");
    const places = (way: RecognisingWay) => {
      const question = ask(position, way);
      if (question.way === "which-is-it") throw new Error("another question");
      return choicePlaces(question, position)[question.right]?.toSorted(
        (a, b) => a - b,
      );
    };
    // The bottom front edge: F8 and D2; the top front one: U8 and F2, counted
    // in the usual order of facelets (U R F D L B, nine each, row by row).
    expect(places("find-it")).toEqual([18 + 7, 27 + 1]);
    expect(places("where-is-home")).toEqual([7, 18 + 1]);
  });
});

describe("the small pictures of a question", () => {
  it("have the colours of the home that is asked about", () => {
    const { faces } = PALETTE;
    expect(paletteAtHome(PALETTE, asked("E1")).faces).toEqual(faces);
    // Home 1 is the one that a turn y brings to the front: the left one.
    const atLeft = paletteAtHome(PALETTE, asked("E1", { home: 1 })).faces;
    expect(atLeft.F).toBe(faces.L);
    expect(atLeft.U).toBe(faces.U);
    expect(atLeft.R).toBe(faces.F);
  });

  it("carry a ring on every sticker that differs from the right case", () => {
    const { rings, look } = takenPicture("E3", "E1", {
      hold: "up",
      palette: PALETTE,
    });
    // E1 and E3 are one edge at the bottom front, turned over: F8 and D2.
    expect(rings.toSorted((a, b) => a - b)).toEqual([25, 28]);
    expect(look).toBe(0);
  });
});
