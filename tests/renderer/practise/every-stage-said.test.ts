import { describe, expect, it } from "vitest";
import { isAnswered } from "../../../core/answer/judge";
import { type Position, startOf } from "../../../core/cases/position";
import { STAGES } from "../../../core/cases/stage";
import { applyTurns } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import { inverseTurns } from "../../../core/notation/inverse";
import {
  schemeWithFirstColour,
  USUAL_SCHEME,
} from "../../../core/picture/colour-sets";
import { describeCase } from "../../../renderer/places/practise/describe-case";
import { askWords } from "../../../renderer/state/practise/ask-words";
import {
  hintWords,
  turnHinted,
} from "../../../renderer/state/practise/hint-words";
import { lastTurnInWords } from "../../../renderer/state/practise/last-turn";
import { lookFirstInWords } from "../../../renderer/state/practise/look-first";
import { wentAlong } from "../../../renderer/state/practise/shown-ways";
import { LAST_LAYER_PERMUTATIONS } from "../../reference/published-values";
import { recognise } from "../../../core/cases/recognise";
import { SOLVED } from "../../../core/cube/cubies";
import { holdInStage } from "../../../core/cases/hold-in-stage";
import { turnsOf } from "../../core/notation/turns-of";
import { asked, EDGE, firstOf, PAIR } from "./asked";

describe("the question of a slot", () => {
  it("names the edge by its two colours", () => {
    expect(askWords(asked(EDGE), USUAL_SCHEME)).toEqual({
      prompt: "Bring the green and red edge home.",
      placed:
        "Already placed: the white layer and the other three edges of the middle.",
    });
  });

  it("names a pair by its corner", () => {
    expect(askWords(asked(PAIR), USUAL_SCHEME)).toEqual({
      prompt: "Bring the white, green and red corner and its edge home.",
      placed: "Already placed: the white cross and the other three pairs.",
    });
  });

  it("counts what is placed besides", () => {
    const placed = (count: number) =>
      askWords(asked(PAIR, {}, count), USUAL_SCHEME).placed;
    expect(placed(0)).toBe("Already placed: the white cross.");
    expect(placed(1)).toBe(
      "Already placed: the white cross and one other pair.",
    );
    expect(placed(2)).toBe(
      "Already placed: the white cross and two other pairs.",
    );
  });

  it("speaks of another slot's pieces, and in the learner's colours", () => {
    const scheme = schemeWithFirstColour(USUAL_SCHEME, "blue");
    const { prompt, placed } = askWords(asked(PAIR, { home: 2 }), scheme);
    expect(prompt).toMatch(/^Bring the blue, \w+ and \w+ corner and its edge/);
    expect(placed).toContain("the blue cross");
  });
});

describe("the question of the last layer", () => {
  it.each([
    ["last-layer-edges-turned", "Turn the top edges so that yellow faces up."],
    ["last-layer-turned", "Make the whole top yellow in one go."],
    ["last-layer-whole", "Solve the whole last layer in one go."],
  ] as const)("of %s is one sentence", (stage, prompt) => {
    expect(askWords(asked(firstOf(stage)), USUAL_SCHEME).prompt).toBe(prompt);
  });

  it("puts what may happen to the rest with what is done", () => {
    const stage = "last-layer-corners-placed-first";
    expect(askWords(asked(firstOf(stage)), USUAL_SCHEME)).toEqual({
      prompt: "Bring the top corners home, with yellow still facing up.",
      placed:
        "The edges may end up anywhere. The first two layers are done, and the whole top is yellow.",
    });
  });
});

describe("every stage", () => {
  it.each(STAGES)(
    "%s has words for its question, hints and picture",
    (stage) => {
      const position = asked(firstOf(stage));
      const { prompt, placed } = askWords(position, USUAL_SCHEME);
      for (const words of [
        prompt,
        placed,
        lookFirstInWords(position.case, USUAL_SCHEME),
      ])
        expect(words).toMatch(/^[A-Z].*[^ ]\.$/);
      const way = turnsOf("U R U' R'");
      const hints = hintWords(
        position,
        ["piece", "home", "first-turn"],
        way,
        USUAL_SCHEME,
      );
      for (const hint of hints) expect(hint).toMatch(/^[A-Z].*[^ ]\.$/);
      for (const isMarked of [true, false])
        expect(
          describeCase(startOf(position), position, isMarked, USUAL_SCHEME),
        ).not.toMatch(/undefined|hidden|out of sight/);
    },
  );
});

describe("the hints of a pair", () => {
  const hints = (count: number, way: readonly Turn[] = turnsOf("U R U' R'")) =>
    hintWords(
      asked(PAIR),
      (["piece", "home", "first-turn"] as const).slice(0, count),
      way,
      USUAL_SCHEME,
    ).at(-1);

  it("say where both pieces are, then where both belong, then the first turn", () => {
    expect(hints(1)).toMatch(
      /^The corner is here: top front right; white is on the (front|right)\. The edge is here: top \w+; \w+ is on (top|the \w+)\.$/,
    );
    expect(hints(2)).toBe(
      "Their homes are bottom front right and middle front right.",
    );
    expect(hints(3)).toBe("Begin like this. Turn the top to the left.");
  });
});

describe("the hints of the last layer", () => {
  const position = asked(firstOf("last-layer-turned"));
  const hint = (way: string, count: number) =>
    hintWords(
      position,
      (["piece", "home", "first-turn"] as const).slice(0, count),
      turnsOf(way),
      USUAL_SCHEME,
    ).at(-1);

  it("name what it shows first", () => {
    expect(hint("R U R'", 1)).toMatch(/^What it shows: OLL \d+: .+\.$/);
    const steps = asked(firstOf("last-layer-edges-turned"));
    expect(hintWords(steps, ["piece"], [], USUAL_SCHEME)[0]).toMatch(
      /^What it shows: [a-z].+\.$/,
    );
  });

  it("line it up where that is needed, in as few turns as it takes", () => {
    expect(hint("U U R U R'", 2)).toBe("Line it up first. Turn the top twice.");
    expect(hint("R U R'", 2)).toBe(
      "It lies as it should: begin without turning the top.",
    );
    // Two turns of the top that undo each other line nothing up.
    expect(hint("U U' R U R'", 2)).toBe(
      "It lies as it should: begin without turning the top.",
    );
  });

  it("tell the first turn after lining up", () => {
    expect(hint("U R U R'", 3)).toBe(
      "Then begin like this. Turn the right side up.",
    );
    expect(hint("R U R'", 3)).toBe("Begin like this. Turn the right side up.");
  });

  it("show the turn that lines up by an arrow, and no other before it is asked for", () => {
    const way = turnsOf("U R U R'");
    expect(turnHinted(position, ["piece"], way)).toBeUndefined();
    expect(turnHinted(position, ["piece", "home"], way)).toEqual(way[0]);
    const straight = turnsOf("R U R'");
    expect(turnHinted(position, ["piece", "home"], straight)).toBeUndefined();
    expect(
      turnHinted(position, ["piece", "home", "first-turn"], straight),
    ).toEqual(straight[0]);
  });
});

describe("the turn that is left after a right answer", () => {
  /** A case of placing that a listed sequence answers, asked as it is then seen. */
  function answered(name: string) {
    const found = LAST_LAYER_PERMUTATIONS.find((one) => one.name === name);
    if (found === undefined) throw new Error(`${name} is not listed`);
    const turns = turnsOf(found.sequence);
    const variant = {
      home: 0,
      placed: [],
      turnedAway: 0,
      seenFrom: 0,
    } as const;
    const hold = holdInStage("last-layer-placed", variant, "down");
    const { cubies } = applyTurns(
      { cubies: SOLVED, hold },
      inverseTurns(turns),
    );
    const shown = recognise(cubies, "last-layer-placed", 0);
    if (shown === undefined) throw new Error(`${name} shows no case`);
    const position: Position = {
      case: shown.case,
      hold: "down",
      variant: { ...variant, turnedAway: shown.turnedAway },
      cubies,
    };
    return { position, turns };
  }

  it.each([
    ["", undefined],
    ["U", "Turn the top to the right."],
    ["U2", "Turn the top twice."],
    ["U'", "Turn the top to the left."],
    // The whole cube may be held in any other way: the turn is named as seen.
    ["U x", "Turn the back so that its top goes right."],
  ])("after %s is %s (PLL T, last-layer.json)", (more, turn) => {
    const { position, turns } = answered("T");
    const after = applyTurns(startOf(position), [...turns, ...turnsOf(more)]);
    expect(isAnswered(position, after)).toBe(true);
    expect(lastTurnInWords(position, after)).toBe(
      turn === undefined
        ? undefined
        : `One more turn lines everything up. ${turn}`,
    );
  });

  it("is none where the stage asks nothing about places", () => {
    const position = asked(firstOf("last-layer-turned"));
    const cube = { ...startOf(position), cubies: SOLVED };
    for (const turn of ["", "U", "U2"])
      expect(
        lastTurnInWords(position, applyTurns(cube, turnsOf(turn))),
      ).toBeUndefined();
  });

  it("does not make an answer another way", () => {
    const { position } = answered("T");
    const way = turnsOf("R U R' U2");
    expect(wentAlong(position, turnsOf("R U R'"), way)).toBe(true);
    expect(wentAlong(position, turnsOf("R U R' U"), way)).toBe(true);
    expect(wentAlong(position, turnsOf("R U2 R'"), way)).toBe(false);
    expect(wentAlong(asked(EDGE), turnsOf("R U R'"), way)).toBe(false);
  });
});
