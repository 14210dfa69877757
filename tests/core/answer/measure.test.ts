import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type AnswerEvent,
  measureAnswer,
  type Measurement,
} from "../../../core/answer/measure";
import { holdOfVariant } from "../../../core/cases/variant";
import { SOLVED } from "../../../core/cube/cubies";
import { applyTurns } from "../../../core/cube/held-cube";
import { NO_ROTATION, ROTATIONS } from "../../../core/cube/symmetries";
import { formatTurns } from "../../../core/notation/format";
import { arbitraryTurn } from "../notation/arbitrary-turns";
import { turnsOf } from "../notation/turns-of";

const DOWN = holdOfVariant({ home: 0, seenFrom: 0 }, "down");

/**
 * Events from a line: turns in notation, `<` takes back, `|` restarts, `look`,
 * `done`; each a step after the one before, or at the time written after `@`.
 */
function events(line: string, step = 2000): AnswerEvent[] {
  let at = 0;
  return line.split(/\s+/).flatMap((word): AnswerEvent[] => {
    const [what = "", time] = word.split("@");
    at = time === undefined ? at + step : Number(time);
    if (what === "<") return [{ kind: "take-back", at }];
    if (what === "|") return [{ kind: "restart", at }];
    if (what === "look") return [{ kind: "look", at }];
    if (what === "done") return [{ kind: "done", at }];
    return turnsOf(what).map((turn) => ({ kind: "turn", turn, at }));
  });
}

function measured(line: string, hold = NO_ROTATION): Measurement {
  return measureAnswer(events(line), { hold });
}

describe("thinking time", () => {
  it("ends with the first turn that is not searching", () => {
    const one = measured("y look D D' x2 U R@13000 U@14000");
    // After x2 the free layer is on top: U lines up, R commits.
    expect(one.thinking).toBe(13_000);
    expect(one.turning).toBe(1000);
    expect(one.total).toBe(14_000);
    expect(one.looks).toBe(1);
    expect(one.corrections + one.slips).toBe(0);
  });

  it.each(["R", "U2", "F'", "Rw", "Dw", "M", "E", "S'"])(
    "ends with %s when the first layer is held up",
    (turn) => {
      expect(measured(`D y ${turn}@5000`).thinking).toBe(5000);
    },
  );

  it.each(["D", "D2", "Uw'", "y2", "z'"])(
    "does not end with %s when the first layer is held up",
    (turn) => {
      expect(measured(`${turn} F@9000`).thinking).toBe(9000);
    },
  );

  it("follows the free layer to the top for a cube held down", () => {
    expect(measured("U R@9000", DOWN).thinking).toBe(9000);
    expect(measured("D@3000 R", DOWN).thinking).toBe(3000);
  });

  it("follows the free layer through turns of the whole cube", () => {
    expect(measured("x D@3000 R").thinking).toBe(3000);
    expect(measured("x B@3000 D@9000").thinking).toBe(3000);
    expect(measured("x F@3000 R@9000").thinking).toBe(9000);
    expect(measured("z L@3000 R@9000").thinking).toBe(9000);
  });

  it("follows the free layer through wide and slice turns", () => {
    // Rw takes the bottom to the front, as x does; the pieces turned are L's.
    const one = measured("Rw@1000 F@4000 F'@6000");
    expect(one.thinking).toBe(1000);
    expect(one.corrections).toBe(1);
    expect(measured("M@1000 M'@2500 B@4000 R@8000").thinking).toBe(1000);
  });

  it("is not known where nothing committed, and neither is turning time", () => {
    const one = measured("y D look done@9000");
    expect(one).not.toHaveProperty("thinking");
    expect(one).not.toHaveProperty("turning");
    expect(one.total).toBe(9000);
  });
});

describe("turning time", () => {
  it("runs to the last turn, not to the end nor a last turn of the whole cube", () => {
    const one = measured("R@2000 D@3000 R'@4000 y@6000 done@9000");
    expect(one.thinking).toBe(2000);
    expect(one.turning).toBe(2000);
    expect(one.total).toBe(9000);
  });

  it("is nothing for an answer of one turn", () => {
    expect(measured("F2@2500").turning).toBe(0);
  });
});

describe("a correction", () => {
  it("is a turn taken back, each counted", () => {
    expect(measured("R D R' < <").corrections).toBe(2);
  });

  it("is a restart, once", () => {
    expect(measured("R D R' |").corrections).toBe(1);
  });

  it("is a committed turn undone at once, in whatever words", () => {
    expect(measured("R R'").corrections).toBe(1);
    expect(measured("R y F'").corrections).toBe(1);
    expect(measured("R2 look R2").corrections).toBe(1);
    expect(measured("M M'").corrections).toBe(1);
    expect(measured("Rw x' L'").corrections).toBe(1);
    expect(measured("R D D' R").corrections).toBe(1);
  });

  it("is not a turn undone later, or in part, or in three quarters", () => {
    expect(measured("R D R' D'").corrections).toBe(0);
    expect(measured("R R").corrections).toBe(0);
    expect(measured("R R2").corrections).toBe(0);
    expect(measured("R U R'").corrections).toBe(0);
  });

  it("counts an undoing once, not as a turn to be undone itself", () => {
    expect(measured("R R' R").corrections).toBe(1);
    expect(measured("R R' R R'").corrections).toBe(2);
  });

  it("is never lining up, turning the whole cube, or looking", () => {
    const one = measured("D D' < y < look | D < | R");
    expect(one.corrections + one.slips).toBe(0);
    expect(one.standing).toEqual(turnsOf("R"));
  });

  it("is not lining up again once everything committed was undone", () => {
    expect(measured("R R' D D'").corrections).toBe(1);
    expect(measured("R < D D' |").corrections).toBe(1);
    expect(measured("R R' < D D'").corrections).toBe(3);
  });

  it("is not taking back from a cube on which nothing stands", () => {
    expect(measured("< < |").corrections).toBe(0);
    expect(measured("R < < <").corrections).toBe(1);
  });
});

describe("a finger slip", () => {
  it("is a correction within a second on the same layer", () => {
    for (const line of ["R@1000 <@2000", "R@1000 R'@2000", "R@1000 |@2000"]) {
      const one = measured(line);
      expect([line, one.slips, one.corrections]).toEqual([line, 1, 0]);
    }
  });

  it("is a correction proper a moment later", () => {
    for (const line of ["R@1000 <@2001", "R@1000 R'@2001", "R@1000 |@2001"]) {
      const one = measured(line);
      expect([line, one.slips, one.corrections]).toEqual([line, 0, 1]);
    }
  });

  it("is not a restart of several turns, however quick", () => {
    const one = measured("R@1000 D@1100 |@1200");
    expect([one.slips, one.corrections]).toEqual([0, 1]);
  });
});

describe("a held key", () => {
  it("turns once: what it repeats is ignored", () => {
    const [turn] = turnsOf("R");
    const repeats: AnswerEvent[] =
      turn === undefined
        ? []
        : [500, 530, 560].map((at) => ({
            kind: "turn",
            turn,
            at,
            repeat: at > 500,
          }));
    const one = measureAnswer(repeats, { hold: NO_ROTATION });
    expect(formatTurns(one.standing)).toBe("R");
    expect([one.thinking, one.turning, one.total]).toEqual([500, 0, 500]);
    expect(one.turns).toEqual([{ turn: "R", at: 500 }]);
  });
});

describe("the length of an answer", () => {
  // Source: WCA Regulations 12a5 and 12a6.
  it("counts what stands at the end, in both metrics", () => {
    const one = measured("y D L U < D' L'");
    expect(formatTurns(one.standing)).toBe("y D L D' L'");
    expect(one.outerBlock).toBe(4);
    expect(one.execution).toBe(5);
  });
});

describe("the turns kept", () => {
  it("lead from the position to what stands, whatever was taken back", () => {
    const doings = fc.array(
      fc.oneof(
        { weight: 5, arbitrary: arbitraryTurn() },
        { weight: 2, arbitrary: fc.constantFrom("take-back", "restart") },
      ),
      { maxLength: 40 },
    );
    fc.assert(
      fc.property(doings, fc.constantFrom(...ROTATIONS), (list, hold) => {
        const all = list.map((what, i): AnswerEvent =>
          typeof what === "object"
            ? { kind: "turn", turn: what, at: 700 * i }
            : what === "restart"
              ? { kind: "restart", at: 700 * i }
              : { kind: "take-back", at: 700 * i },
        );
        const one = measureAnswer(all, { hold });
        const start = { cubies: SOLVED, hold };
        const kept = turnsOf(one.turns.map(({ turn }) => turn).join(" "));
        expect(applyTurns(start, kept)).toEqual(
          applyTurns(start, one.standing),
        );
        expect(one.total).toBe(Math.max(0, 700 * (list.length - 1)));
        if (one.thinking !== undefined)
          expect(one.thinking + (one.turning ?? 0)).toBeLessThanOrEqual(
            one.total,
          );
      }),
    );
  });
});

describe("hints", () => {
  it("keep the time at which each was first asked for", () => {
    const hint = (what: "home" | "piece", at: number) =>
      ({ kind: "hint", hint: what, at }) as const;
    const one = measureAnswer(
      [hint("home", 1), hint("piece", 2), hint("home", 3)],
      {
        hold: NO_ROTATION,
      },
    );
    expect(one.hintTimes).toEqual([1, 2]);
  });
});

describe("a cube in the hands", () => {
  const taps = (...list: ["seen" | "know" | "done", number][]) =>
    measureAnswer(
      list.map(([kind, at]) => ({ kind, at })),
      { hold: NO_ROTATION },
    );

  it("is thought about until the tap in the middle, and turned from there", () => {
    expect(taps(["seen", 1000], ["know", 4000], ["done", 9000])).toMatchObject({
      thinking: 3000,
      turning: 5000,
      total: 8000,
    });
  });

  it("has a whole time and no other without the tap in the middle", () => {
    const one = taps(["seen", 1000], ["done", 9000]);
    expect(one.total).toBe(8000);
    expect(one).not.toHaveProperty("thinking");
    expect(one).not.toHaveProperty("turning");
  });
});

describe("written turns", () => {
  const written = (...list: [string, number][]) =>
    measureAnswer(
      [
        ...list.map(([text, at]): AnswerEvent => ({
          kind: "typed",
          turns: turnsOf(text),
          at,
        })),
        { kind: "done", at: 20_000 },
      ],
      { hold: NO_ROTATION },
    );

  it("are thought about until the text commits, and typed until it last changed", () => {
    const one = written(["D", 2000], ["D R", 3500], ["D R F'", 6000]);
    expect([one.thinking, one.turning, one.total]).toEqual([
      3500, 2500, 20_000,
    ]);
    expect(one.turns).toEqual([
      { turn: "D", at: 2000 },
      { turn: "R", at: 3500 },
      { turn: "F'", at: 6000 },
    ]);
  });

  it("are no correction when a turn is completed", () => {
    const one = written(
      ["R", 1000],
      ["R'", 1100],
      ["R' D", 1200],
      ["R' D2", 5000],
    );
    expect([one.corrections, one.slips]).toEqual([0, 0]);
    expect(formatTurns(one.standing)).toBe("R' D2");
  });

  it("are a correction when a committed turn is wiped out, a slip within a second", () => {
    const late = written(
      ["R", 1000],
      ["R U", 2000],
      ["R", 3500],
      ["R F", 4000],
    );
    expect([late.corrections, late.slips]).toEqual([1, 0]);
    // Source: "turns with times" are what a later grading regrades; what was
    // wiped out was made, and taken back as its inverse.
    expect(late.turns).toEqual([
      { turn: "R", at: 1000 },
      { turn: "U", at: 2000 },
      { turn: "U'", at: 3500 },
      { turn: "F", at: 4000 },
    ]);
    expect(formatTurns(late.standing)).toBe("R F");
    const soon = written(
      ["R", 1000],
      ["R U", 2000],
      ["R", 2500],
      ["R F", 4000],
    );
    expect([soon.corrections, soon.slips]).toEqual([0, 1]);
    const linedUp = written(["y D", 1000], ["y", 5000], ["y R", 6000]);
    expect([linedUp.corrections, linedUp.slips]).toEqual([0, 0]);
  });
});
