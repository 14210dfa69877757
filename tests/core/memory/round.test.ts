import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isVariantAllowed } from "../../../core/cases/random-variant";
import { dayNumber } from "../../../core/memory/local-day";
import type { RecognisingWay } from "../../../core/memory/review";
import {
  canResume,
  currentItem,
  isRoundOver,
  resumeRound,
  type RoundItem,
  roundMarks,
  withPosition,
} from "../../../core/memory/round";
import {
  anyRound,
  begin,
  go,
  isMiss,
  planned,
  play,
  playAny,
  sameCase,
  script,
  START,
} from "./played-round";

describe("a round", () => {
  it("ends, whatever is answered, and then has no marks to come", () => {
    fc.assert(
      fc.property(anyRound, (input) => {
        const { round, asked } = playAny(input);
        expect(isRoundOver(round)).toBe(true);
        expect(roundMarks(round)).toEqual({
          done: round.results.map((result) => result.outcome),
          toCome: 0,
        });
        // 4 in an introduction, a third, 2 repeats, 3 returns; 4 times, 3 returns.
        expect(asked.length).toBeLessThanOrEqual(10 * input.cases.length);
      }),
    );
  });

  it("never asks a case twice in a row while another is left, introductions aside", () => {
    fc.assert(
      fc.property(anyRound, (input) => {
        const { asked } = playAny(input);
        asked.forEach((one, i) => {
          const previous = asked[i - 1];
          if (previous === undefined || !sameCase(previous, one)) return;
          const alone = asked
            .slice(0, i)
            .filter((o) => sameCase(o, one) && o.item.asking === "alone");
          const isIntroduction =
            input.cases[one.item.track]?.memory === "new" &&
            alone.length <= 2 &&
            one.item.asking !== "again" &&
            !isMiss(previous);
          if (isIntroduction) return;
          const rest = asked.slice(i);
          expect(rest.every((o) => sameCase(o, one))).toBe(true);
        });
      }),
    );
  });

  it("asks every planned case", () => {
    fc.assert(
      fc.property(anyRound, (input) => {
        const tracks = new Set(playAny(input).asked.map((o) => o.item.track));
        expect(tracks.size).toBe(input.cases.length);
      }),
    );
  });

  it("is the same again from the same seed, and stored and read at any point", () => {
    fc.assert(
      fc.property(anyRound, (input) => {
        const { asked } = playAny(input);
        const stored = play(
          begin(input.cases, input.seed),
          (_, i) => input.moves[i] ?? input.then,
        );
        expect(stored.asked).toEqual(asked);
        expect(JSON.parse(JSON.stringify(stored.round))).toEqual(stored.round);
      }),
    );
  });

  it("asks only variants that the case allows", () => {
    fc.assert(
      fc.property(anyRound, (input) => {
        for (const { item } of playAny(input).asked)
          expect(isVariantAllowed(item.case, item.variant)).toBe(true);
      }),
    );
  });

  it("is over at once without cases", () => {
    expect(isRoundOver(begin([]))).toBe(true);
  });

  it("marks what was shown, skipped, quick, slow and missed", () => {
    const { round } = play(
      begin([planned("E1"), planned("C1", "kept")]),
      (_, i) =>
        (["clean", "clean", "skip", "missed"] as const)[i] ?? "hesitant",
    );
    expect(roundMarks(round).done).toEqual([
      "shown",
      "steady",
      "skipped",
      "missed",
      "slow",
    ]);
  });

  it("counts the askings to come, the current one among them", () => {
    const round = begin([planned("E1"), planned("C1", "kept")]);
    expect(roundMarks(round)).toEqual({ done: [], toCome: 7 });
    expect(roundMarks(go(round, "clean")).toCome).toBe(6);
  });
});

describe("a case asked beyond the schedule", () => {
  it("is not introduced, however new it is, and keeps its way of answering", () => {
    const round = begin([
      { ...planned("C1"), asking: "extra", answerWay: "which-is-it" },
      { ...planned("C2", "kept", 2), asking: "extra" },
    ]);
    expect(round.current?.answerWay).toBe("which-is-it");
    expect(script(round, () => "clean")).toEqual([
      "C1 extra",
      "C2 extra",
      "C2 extra",
    ]);
    expect(go(round, "clean").current).not.toHaveProperty("answerWay");
  });

  it("shows all stickers where a piece is to be found", () => {
    const bareIn = (answerWay: RecognisingWay) =>
      begin([{ ...planned("C1", "settling"), asking: "extra", answerWay }])
        .current?.bare;
    expect(bareIn("find-it")).toBe(false);
    expect(bareIn("which-is-it")).toBe(true);
  });
});

describe("skipping", () => {
  it("passes over a showing and leaves a question alone for the round", () => {
    const skipTwo = (item: RoundItem) =>
      item.asking === "shown" || item.asking === "alone" ? "skip" : "clean";
    expect(script(begin([planned("E1")]), skipTwo)).toEqual([
      "E1 shown",
      "E1 helped",
      "E1 alone",
    ]);
  });
});

describe("taking a round up again", () => {
  const shown = withPosition(begin([planned("E1")]), "U".repeat(54));

  it("keeps the exact position and marks that answer interrupted", () => {
    const again = currentItem(resumeRound(shown));
    expect(again?.position).toBe("U".repeat(54));
    expect(again?.interrupted).toBe(true);
    expect(again?.seed).toBe(currentItem(shown)?.seed);
  });

  it("interrupts nothing that had not been shown, nor the item after", () => {
    const round = begin([planned("E1")]);
    expect(resumeRound(round)).toEqual(round);
    const next = currentItem(go(resumeRound(shown), "clean"));
    expect(next?.interrupted).toBe(false);
    expect(next?.position).toBeUndefined();
  });

  it("is possible on its day and for six hours beyond, and not when it is over", () => {
    const hours = (n: number) => n * 3_600_000;
    const tomorrow = dayNumber(START.day + 1);
    expect(canResume(shown, START.day, hours(20))).toBe(true);
    expect(canResume(shown, tomorrow, hours(6) - 1)).toBe(true);
    expect(canResume(shown, tomorrow, hours(6))).toBe(false);
    expect(canResume(play(shown, () => "clean").round, START.day, 0)).toBe(
      false,
    );
  });
});
