import { describe, expect, it } from "vitest";
import { isAnswered } from "../../../core/answer/judge";
import { casesOfStage } from "../../../core/cases/case-table";
import { targetsOf } from "../../../core/cases/constraint";
import { type Position, startOf } from "../../../core/cases/position";
import { STAGES } from "../../../core/cases/stage";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { stickersOf } from "../../../core/cube/facelets";
import { applyTurns } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { cubePalette } from "../../../core/picture/palette";
import { highView } from "../../../core/picture/projection";
import {
  casePicture,
  namedWhileLearnt,
} from "../../../renderer/state/practise/case-picture";
import { turnsOf } from "../../core/notation/turns-of";
import { asked, caseNamed, firstOf, PAIR } from "./asked";

describe("the picture of a question", () => {
  const palette = cubePalette({ scheme: USUAL_SCHEME, theme: "light" });

  function pictureOf(position: Position, turns: readonly Turn[] = []) {
    const start = startOf(position);
    const targets = targetsOf(position);
    return casePicture(
      { start, line: turns, cube: applyTurns(start, turns) },
      {
        named: namedWhileLearnt(position),
        outlined: targets,
        homes: targets,
        palette,
        view: highView(20),
      },
    );
  }

  it("outlines both pieces of a pair and marks both homes", () => {
    const { pieces = [], home = [] } = pictureOf(asked(PAIR));
    expect(pieces.map((piece) => piece.length).toSorted()).toEqual([2, 3]);
    expect(home).toHaveLength(5);
  });

  it("takes the mark of a pair's homes along as its slot comes up", () => {
    const before = pictureOf(asked(PAIR)).home ?? [];
    const after = pictureOf(asked(PAIR), turnsOf("R")).home ?? [];
    expect(after).toHaveLength(5);
    expect(after.some((facelet) => before.includes(facelet))).toBe(false);
    const back = pictureOf(asked(PAIR), turnsOf("R R'")).home ?? [];
    expect(back.toSorted()).toEqual(before.toSorted());
  });

  it("marks one home after the other where two corners changed places", () => {
    const position = asked(caseNamed("S1"));
    expect(pictureOf(position).home).toHaveLength(3);
  });

  it("outlines and marks nothing in the last layer, and bares what is not looked at", () => {
    const position = asked(firstOf("last-layer-turned"));
    const { pieces, home, stickers } = pictureOf(position);
    expect([pieces, home]).toEqual([[], []]);
    const all = stickersOf(startOf(position));
    expect(stickers.filter((face) => face === undefined)).toHaveLength(12);
    stickers.forEach((face, i) => {
      if (face !== undefined) expect(face).toBe(all[i]);
    });
  });
});

describe("a position of any stage", () => {
  it.each(STAGES)(
    "of %s has a taught way that answers it, wherever ways are known",
    (stage) => {
      for (const { id, ways } of casesOfStage(stage).slice(0, 60)) {
        if (ways.length === 0) continue;
        const position = asked(id, { home: 1 });
        const turns = turnsForPosition(position);
        expect(
          isAnswered(position, applyTurns(startOf(position), turns)),
          id,
        ).toBe(true);
      }
    },
  );
});
