import { describe, expect, it } from "vitest";
import { diagnose } from "../../../core/answer/diagnose";
import { judge } from "../../../core/answer/judge";
import { casesOfStage } from "../../../core/cases/case-table";
import { LAST_LAYER_STAGES } from "../../../core/cases/last-layer-stages";
import { type Position, startOf } from "../../../core/cases/position";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { applyTurns } from "../../../core/cube/held-cube";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import { diagnosisWords } from "../../../renderer/state/practise/diagnosis-words";
import { missWords } from "../../../renderer/state/practise/miss-words";
import { nowInWords } from "../../../renderer/state/practise/now-words";
import { turnsOf } from "../../core/notation/turns-of";
import { asked, caseNamed } from "./asked";

/** What the judge finds, and what is said of it; undefined where the answer is right. */
function missOf(position: Position, text: string) {
  const after = applyTurns(startOf(position), turnsOf(text));
  const verdict = judge(position, after);
  if (verdict.right) return undefined;
  const miss = missWords({
    position,
    verdict,
    after,
    scheme: USUAL_SCHEME,
    hasTurned: true,
    shownTheWay: false,
    reported: false,
  });
  return { after, verdict, miss };
}

/** All that is said of a miss in the last layer. */
function saidOf(position: Position, text: string) {
  const turns = turnsOf(text);
  const missed = missOf(position, text);
  if (missed === undefined) throw new Error(`${text} is no miss`);
  const { explanation } = diagnose(position, turns, turnsForPosition(position));
  const said = {
    position,
    turns,
    scheme: USUAL_SCHEME,
    withNotation: false,
  };
  return {
    ...missed,
    why: explanation && diagnosisWords(said, explanation),
    now: nowInWords({ position, turns, ...missed }, USUAL_SCHEME),
  };
}

const CORNERS = caseNamed("last-layer-corners-placed:2301");
const EDGES = caseNamed("last-layer-edges-placed-last:2301");

describe("what is said of the last layer's own pieces that were lost", () => {
  it("never speaks of the layers below where they are whole", () => {
    const said = saidOf(asked(CORNERS), "R U R' U R U2 R' U2");
    const sentence =
      "The corners are as asked, but 3 top edges that were home are not any more.";
    expect(said.miss).toEqual({ sentence, more: "" });
    expect(said.why?.sentence).toBe(sentence);
    expect(said.now.rest).toMatch(
      /^No longer placed: the yellow and .* edge\.$/,
    );
  });

  it("is nothing where nothing moved", () => {
    for (const id of [CORNERS, EDGES]) {
      const said = saidOf(asked(id), "R R'");
      expect(said.miss.sentence).toBe(
        "4 pieces of the last layer are not as asked yet.",
      );
      expect(said.why?.sentence ?? "").not.toMatch(/but|left/);
      expect(said.now.rest).toBe("");
      expect(said.now.piece).toMatch(/^It is still the same case/);
    }
  });

  it("counts the top's own pieces truly, whatever the stage and the turns", () => {
    const parts = ["R U R' U R U2 R'", "F R U R' U' F'", "R U R' U'", "R2"];
    const answers = parts.flatMap((one) =>
      ["", ...parts, "U2"].map((two) => `${one} ${two}`),
    );
    const met = new Set<string>();
    for (const stage of LAST_LAYER_STAGES)
      for (const { id } of casesOfStage(stage).slice(0, 12))
        for (const answer of answers) {
          const { verdict, miss } = missOf(asked(id), answer) ?? {};
          if (verdict === undefined || miss === undefined) continue;
          const { corners, edges } = verdict.lost;
          const { missing } = verdict;
          // Body face D's pieces are corners 4–7 and edges 4–7.
          const top = {
            corner: corners.filter((piece) => piece >= 4),
            edge: edges.filter((piece) => piece >= 4 && piece < 8),
          };
          const isAsAsked = missing.corners.length + missing.edges.length === 0;
          const found =
            /^The (?:corners|edges) are as asked, but (one|\d) top (edge|corner)s? that (were home|was home|showed yellow)/.exec(
              miss.sentence,
            );
          expect(found !== null, `${id} ${answer}`).toBe(
            isAsAsked && top.corner.length + top.edge.length > 0,
          );
          const besides = miss.more.startsWith("Besides, ");
          expect(besides, `${id} ${answer}`).toBe(
            !isAsAsked && top.corner.length + top.edge.length > 0,
          );
          if (found === null) continue;
          met.add(found[3] ?? "");
          expect(top[found[2] === "edge" ? "edge" : "corner"]).toHaveLength(
            found[1] === "one" ? 1 : Number(found[1]),
          );
        }
    expect([...met]).toEqual(
      expect.arrayContaining(["were home", "showed yellow"]),
    );
  });
});
