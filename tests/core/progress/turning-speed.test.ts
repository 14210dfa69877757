import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../core/cases/case-ids";
import { dayNumber } from "../../../core/memory/local-day";
import type { Review } from "../../../core/memory/review";
import type { LoggedAnswer } from "../../../core/progress/answer-log";
import { packLog, unpacked } from "../../../core/progress/packed-log";
import { progressFacts } from "../../../core/progress/progress-facts";
import { TurningSpeed } from "../../../core/progress/turning-speed";
import { randomSource } from "../../../core/random-source";
import { ms, sampleReview } from "../memory/sample-review";

const START = 400;
const EACH = 500;

/** A right answer of so many turns, in a time, after a second of thinking and a turn that only lines up. */
function turned(
  turns: number,
  time: number,
  changes: Partial<Review> = {},
): Review {
  return sampleReview(0, {
    thinking: ms(1000),
    turning: ms(time),
    turns: [
      { turn: "U", at: ms(500) },
      ...Array.from({ length: turns }, (_, i) => ({
        turn: "R",
        at: ms(1000 + (i * time) / turns),
      })),
    ],
    ...changes,
  });
}

/** Cases whose ways have from three turns on, one more each. */
const OTHERS = ["E1", "E3", "E7", "E10", "E11"] as const;
const lengthOf = (id: (typeof OTHERS)[number]) => 3 + OTHERS.indexOf(id);

const onLine = (id: CaseId, turns: number, factor = 1, changes = {}) =>
  turned(turns, factor * (START + EACH * turns), { case: id, ...changes });

/** Each of the others so many times, as the line says. */
const others = (times: number, changes: Partial<Review> = {}) =>
  Array.from({ length: times }, () =>
    OTHERS.map((id) => onLine(id, lengthOf(id), 1, changes)),
  ).flat();

const list = (log: readonly Review[]) => unpacked(packLog(log));

function all(log: readonly Review[]): readonly LoggedAnswer[] {
  const answers = list(log);
  return log.flatMap((_, i) => answers.at(i) ?? []);
}

/** What the speed is of a case in a log. */
function besideOthers(id: CaseId, log: readonly Review[]) {
  const own = all(log).filter((answer) => answer.case === id);
  return new TurningSpeed(list(log)).turnsOf(own, "on-screen")?.besideOthers;
}

const lineOf = (log: readonly Review[]) =>
  new TurningSpeed(list(log)).lineBeside("C1", "on-screen");

const five = (id: CaseId, turns: number, factor: number, changes = {}) =>
  Array.from({ length: 5 }, () => onLine(id, turns, factor, changes));

describe("the turning of a learner", () => {
  it("is split into a start and a time for each turn", () => {
    const line = lineOf(others(2));
    expect(line?.start).toBeCloseTo(START, 6);
    expect(line?.eachTurn).toBeCloseTo(EACH, 6);
  });

  it("is hardly moved by a fifth of fumbled times", () => {
    const random = randomSource(20_261_126);
    const log = Array.from({ length: 60 }, (_, i) =>
      onLine(OTHERS[i % 4] ?? "E1", 3 + random.below(8), i % 5 === 0 ? 4 : 1),
    );
    const line = lineOf(log);
    expect(line?.eachTurn).toBeGreaterThan(EACH * 0.8);
    expect(line?.eachTurn).toBeLessThan(EACH * 1.3);
  });

  it("is laid through turns only where all ways are equally long", () => {
    const log = others(2).map((review) =>
      turned(5, 2500, { case: review.case }),
    );
    expect(lineOf(log)).toEqual({ start: 0, eachTurn: 500 });
  });

  it("is that of the last sixty answers: who gets faster is measured by today", () => {
    const before = others(60).map((review) => ({
      ...review,
      turning: ms(3 * (review.turning ?? 0)),
    }));
    expect(lineOf([...before, ...others(12)])?.eachTurn).toBeCloseTo(EACH, 6);
  });

  it("is looked for among the last two thousand answers, and no further back", () => {
    const silent = (count: number) =>
      Array.from({ length: count }, () => sampleReview(0));
    expect(lineOf([...others(2), ...silent(1990)])).toBeDefined();
    expect(lineOf([...others(2), ...silent(1991)])).toBeUndefined();
  });

  it("counts repeats in a round and answers beyond the schedule, and leaves out whatever was not turned well and alone", () => {
    const again = others(1, { asking: "again" });
    const good = [...again, ...others(1, { asking: "extra" })];
    const slow = 60_000;
    const spoilt: readonly Review[] = [
      turned(5, slow, { verdict: "missed" }),
      turned(5, slow, { corrections: 1 }),
      turned(5, slow, { hints: ["piece"] }),
      turned(5, slow, { asking: "shown" }),
      turned(5, slow, { asking: "helped" }),
      turned(5, slow, { interrupted: true }),
      turned(5, slow, { turns: [] }),
      turned(1, slow),
    ];
    const spoiltOften = Array.from({ length: 6 }, () => spoilt).flat();
    expect(lineOf(spoiltOften)).toBeUndefined();
    expect(lineOf([...good, ...spoiltOften])).toEqual(lineOf(good));
  });

  it("is apart for each way of answering, and unknown before ten answers to three other cases", () => {
    const log = others(2);
    const speed = new TurningSpeed(list(log));
    expect(speed.lineBeside("C1", "on-screen")).toBeDefined();
    expect(speed.lineBeside("C1", "my-cube")).toBeUndefined();
    expect(speed.lineBeside("E1", "on-screen")).toBeUndefined();
    expect(lineOf(log.slice(1))).toBeUndefined();
    const two = others(6).filter(({ case: id }) => id === "E1" || id === "E3");
    expect(two.length).toBeGreaterThan(10);
    expect(lineOf(two)).toBeUndefined();
  });
});

describe("the turns of a case beside the others", () => {
  it("tell a fumbled case from one with a long way", () => {
    const log = [...others(5), ...five("C1", 6, 1.4), ...five("C2", 14, 1)];
    expect(besideOthers("C1", log)).toBeCloseTo(1.4, 6);
    // In all they take almost four times as long as those of E1.
    expect(besideOthers("C2", log)).toBeCloseTo(1, 1);
    expect(besideOthers("E1", log)).toBeCloseTo(1, 1);
  });

  it("are not measured against themselves where the fumbled case is asked most", () => {
    const log = [
      ...others(2),
      ...Array.from({ length: 12 }, () => five("C1", 6, 2)).flat(),
    ];
    expect(besideOthers("C1", log)).toBeCloseTo(2, 6);
  });

  it("are those of the last ten answers, the middle one of them", () => {
    const log = [
      ...others(3),
      ...five("C1", 6, 9),
      ...five("C1", 6, 1.5),
      ...five("C1", 6, 1.5).with(2, onLine("C1", 6, 40)),
    ];
    expect(besideOthers("C1", log)).toBeCloseTo(1.5, 6);
  });

  it("are unknown with fewer than five answers, or none in that way", () => {
    const own = five("C1", 6, 2);
    expect(besideOthers("C1", [...others(3), ...own.slice(1)])).toBeUndefined();
    const mine = five("C1", 6, 2, { answerWay: "my-cube" });
    expect(besideOthers("C1", [...others(3), ...mine])).toBeUndefined();
    expect(besideOthers("C1", own)).toBeUndefined();
  });

  it("stand in the progress facts of a made-up learner, with the noise that people's times have", () => {
    const random = randomSource(7);
    // Between 0.8 and 1.25 of what the line says, evenly in the logarithm.
    const noise = () => Math.exp((random.below(1001) / 1000 - 0.5) * 0.446);
    const log = Array.from({ length: 30 }, () => [
      ...OTHERS.map((id) => onLine(id, lengthOf(id), noise())),
      onLine("C1", 6, 1.4 * noise()),
      onLine("C2", 14, noise()),
    ])
      .flat()
      .map((review, i) => ({
        ...review,
        localDay: dayNumber(Math.floor(i / 7)),
      }));
    const { times } = progressFacts(list(log), dayNumber(30));
    expect(times.find((one) => one.case === "C2")?.turns?.usual).toBe(14);
    const found = new Map(
      times.map((one) => [one.case, one.turns?.besideOthers ?? 0]),
    );
    expect(found.get("C1")).toBeGreaterThan(1.25);
    expect(found.get("C1")).toBeLessThan(1.6);
    for (const id of [...OTHERS, "C2"] as const) {
      expect(found.get(id), id).toBeGreaterThan(0.8);
      expect(found.get(id), id).toBeLessThan(1.25);
    }
  });
});
