import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS, type CaseId } from "../../../core/cases/case-ids";
import { casesOfStage } from "../../../core/cases/case-table";
import { hasHomes, isInFreeLayer } from "../../../core/cases/constraint";
import { STAGES } from "../../../core/cases/stage";
import { isVariantAllowed } from "../../../core/cases/random-variant";
import { present } from "../../../core/invariant";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import { dayNumber } from "../../../core/memory/local-day";
import {
  answerItem,
  canResume,
  currentItem,
  isRoundOver,
  resumeRound,
  type Round,
  type RoundItem,
  roundMarks,
  skipItem,
  startRound,
  withPosition,
} from "../../../core/memory/round";
import type { RecognisingWay } from "../../../core/memory/review";
import type { MemoryState } from "../../../core/memory/schedule";
import { ms } from "./sample-review";

type Kind = "missed" | "hesitant" | "clean";
type Move = Kind | "skip";

function planned(
  id: CaseId,
  memory: MemoryState = "new",
  times = 1,
): PlannedCase {
  return { case: id, hold: "up", deck: "d", target: 8, memory, times };
}

const START = { id: "r", learner: "ada", day: dayNumber(20_000), now: 0 };

function begin(cases: readonly PlannedCase[], seed = 7): Round {
  return startRound(cases, { ...START, seed });
}

const OUTCOME = {
  clean: "steady",
  hesitant: "slow",
  missed: "missed",
} as const;

function go(round: Round, move: Move): Round {
  if (move === "skip") return skipItem(round, 1);
  return answerItem(
    round,
    {
      id: `review-${round.results.length}`,
      at: ms(round.results.length + 1),
      verdict: move === "missed" ? "missed" : "right",
      corrections: move === "hesitant" ? 1 : 0,
      hints: [],
    },
    OUTCOME[move],
  );
}

interface Asked {
  readonly item: RoundItem;
  readonly move: Move;
}

function isMiss({ item, move }: Asked): boolean {
  return move === "missed" && item.asking !== "shown";
}

function sameCase(a: Asked, b: Asked): boolean {
  return a.item.track === b.item.track;
}

/** Plays a round to its end; the items asked, with what became of each. */
function play(
  start: Round,
  moveAt: (item: RoundItem, index: number) => Move,
): { round: Round; asked: Asked[] } {
  let round = start;
  const asked: Asked[] = [];
  for (;;) {
    const item = currentItem(round);
    if (item === undefined) return { round, asked };
    if (asked.length > 2000) throw new Error("the round does not end");
    const move = moveAt(item, asked.length);
    asked.push({ item, move });
    round = go(round, move);
  }
}

function script(
  start: Round,
  moveAt: (item: RoundItem, index: number) => Move = () => "clean",
): string[] {
  return play(start, moveAt).asked.map(
    ({ item }) => `${item.case} ${item.asking}`,
  );
}

const MEMORIES = ["new", "settling", "kept", "fading"] as const;
const MOVES = ["missed", "hesitant", "clean", "skip"] as const;

const plans = fc
  .uniqueArray(fc.constantFrom(...FIRST_LAYER_IDS), {
    minLength: 1,
    maxLength: 12,
  })
  .chain((ids) =>
    fc.tuple(
      ...ids.map((id) =>
        fc
          .record({
            memory: fc.constantFrom(...MEMORIES),
            times: fc.integer({ min: 1, max: 4 }),
          })
          .map(({ memory, times }) => planned(id, memory, times)),
      ),
    ),
  );
const moves = fc.array(fc.constantFrom(...MOVES), { maxLength: 200 });
const anyRound = fc.record({
  cases: plans,
  seed: fc.integer(),
  moves,
  /** What follows once the moves are used up. */
  then: fc.constantFrom(...MOVES),
});

function playAny(input: {
  cases: PlannedCase[];
  seed: number;
  moves: readonly Move[];
  then: Move;
}) {
  return play(
    begin(input.cases, input.seed),
    (_, i) => input.moves[i] ?? input.then,
  );
}

describe("a round of new cases", () => {
  it("introduces each, mixes the repeats, and spaces them by about 2 and 6 others", () => {
    expect(
      script(begin([planned("E1"), planned("E2a"), planned("E2b")])),
    ).toEqual([
      "E1 shown",
      "E1 helped",
      "E1 alone",
      "E1 alone",
      "E2a shown",
      "E2a helped",
      "E2a alone",
      "E2a alone",
      "E1 alone",
      "E2b shown",
      "E2b helped",
      "E2b alone",
      "E2b alone",
      "E2a alone",
      "E1 alone",
      "E2b alone",
      "E2a alone",
      "E2b alone",
    ]);
  });

  it("spaces by exactly 2 and 6 others where enough are due", () => {
    const due = (["C1", "C2", "C3", "C4", "C5", "C6", "C7", "C8"] as const).map(
      (id) => planned(id, "settling"),
    );
    const asked = script(begin([planned("E1"), ...due]));
    const at = asked.flatMap((line, i) => (line.startsWith("E1") ? [i] : []));
    expect(at).toEqual([0, 1, 2, 3, 6, 13]);
  });

  it("asks alone a third time at once when one of the first two was hesitant", () => {
    const asked = script(begin([planned("E1"), planned("E2a")]), (item, i) =>
      item.case === "E1" && i === 2 ? "hesitant" : "clean",
    );
    expect(asked.slice(0, 6)).toEqual([
      "E1 shown",
      "E1 helped",
      "E1 alone",
      "E1 alone",
      "E1 alone",
      "E2a shown",
    ]);
  });

  it("does not repeat a lone new case without others to space it", () => {
    expect(script(begin([planned("E1")]))).toEqual([
      "E1 shown",
      "E1 helped",
      "E1 alone",
      "E1 alone",
    ]);
  });

  it("shows, then helps, then asks alone two or three times in homes of their own, whatever else is missed", () => {
    fc.assert(
      fc.property(anyRound, (input) => {
        const clean = play(begin(input.cases, input.seed), (item, i) =>
          item.track === 0 ? "clean" : (input.moves[i] ?? input.then),
        );
        const first = present(input.cases[0], "a plan has a case");
        if (first.memory !== "new") return;
        const own = clean.asked.filter(({ item }) => item.track === 0);
        const askings = own.map(({ item }) => item.asking);
        expect(askings.slice(0, 2)).toEqual(["shown", "helped"]);
        const alone = askings.slice(2);
        expect(alone.length).toBeGreaterThanOrEqual(2);
        expect(new Set(alone)).toEqual(new Set(["alone"]));
        const homes = own.slice(0, 4).map(({ item }) => item.variant.home);
        expect(new Set(homes).size).toBe(4);
      }),
    );
  });
});

describe("a missed case", () => {
  const five = (["C1", "C2", "C3", "C4", "C5"] as const).map((id) =>
    planned(id, "settling"),
  );

  it("comes again after three others", () => {
    expect(
      script(begin(five), (_, i) => (i === 0 ? "missed" : "clean")),
    ).toEqual([
      "C1 alone",
      "C2 alone",
      "C3 alone",
      "C4 alone",
      "C1 again",
      "C5 alone",
    ]);
  });

  it("comes again at the end where fewer others are left", () => {
    expect(
      script(begin(five), (_, i) => (i === 3 ? "missed" : "clean")),
    ).toEqual([
      "C1 alone",
      "C2 alone",
      "C3 alone",
      "C4 alone",
      "C5 alone",
      "C4 again",
    ]);
  });

  it("that was asked beyond the schedule comes again so, after three others", () => {
    const extra = five.map((one) => ({ ...one, asking: "extra" as const }));
    expect(
      script(begin(extra), (_, i) => (i === 0 ? "missed" : "clean")),
    ).toEqual([
      "C1 extra",
      "C2 extra",
      "C3 extra",
      "C4 extra",
      "C1 extra",
      "C5 extra",
    ]);
  });

  it("comes again until right once", () => {
    const one = begin(five.slice(0, 1));
    expect(script(one, (_, i) => (i < 2 ? "missed" : "clean"))).toEqual([
      "C1 alone",
      "C1 again",
      "C1 again",
    ]);
  });

  it("comes again three times at most", () => {
    const one = begin(five.slice(0, 1));
    expect(script(one, () => "missed")).toEqual([
      "C1 alone",
      "C1 again",
      "C1 again",
      "C1 again",
    ]);
  });

  it("that is new and was missed with help comes back with help before it is asked alone", () => {
    const asked = script(begin([planned("E1"), ...five]), (_, i) =>
      i === 1 ? "missed" : "clean",
    );
    const own = asked.filter((line) => line.startsWith("E1"));
    expect(own.slice(0, 4)).toEqual([
      "E1 shown",
      "E1 helped",
      "E1 helped",
      "E1 alone",
    ]);
  });

  it("comes again after at least three others, or when only missed cases and the one just asked are left", () => {
    fc.assert(
      fc.property(anyRound, (input) => {
        const { asked } = playAny(input);
        asked.forEach((miss, i) => {
          if (!isMiss(miss)) return;
          const later = asked.slice(i + 1);
          const others = later.findIndex((o) => sameCase(o, miss));
          if (others < 0 || others >= 3) return;
          const justAsked = present(asked[i + others], "an asking before it");
          const left = later.slice(others + 1);
          left.forEach((other, n) => {
            if (sameCase(other, justAsked) || sameCase(other, miss)) return;
            if (left.slice(0, n).some((o) => sameCase(o, other))) return;
            const before = asked
              .slice(0, i + 1 + others)
              .findLast((o) => sameCase(o, other));
            expect(before !== undefined && isMiss(before)).toBe(true);
          });
        });
      }),
    );
  });

  it("never comes again more than three times, nor after it was right", () => {
    fc.assert(
      fc.property(anyRound, (input) => {
        const { asked } = playAny(input);
        input.cases.forEach((_, track) => {
          const own = asked.filter(({ item }) => item.track === track);
          const again = own.filter(
            ({ item }, i) =>
              item.asking === "again" ||
              (item.asking === "helped" &&
                own[i - 1]?.item.asking === "helped"),
          );
          expect(again.length).toBeLessThanOrEqual(3);
          own.forEach(({ item }, i) => {
            if (item.asking === "again")
              expect(own[i - 1]?.move).toBe("missed");
          });
        });
      }),
    );
  });

  it("does come again, unless it has three times", () => {
    fc.assert(
      fc.property(anyRound, (input) => {
        const { asked } = playAny(input);
        asked.forEach((miss, i) => {
          if (!isMiss(miss)) return;
          const before = asked
            .slice(0, i)
            .filter((o) => sameCase(o, miss) && isMiss(o));
          const later = asked.slice(i + 1).find((o) => sameCase(o, miss));
          const back = miss.item.asking === "helped" ? "helped" : "again";
          expect(later?.item.asking).toBe(
            before.length >= 3 ? undefined : back,
          );
        });
      }),
    );
  });
});

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

describe("opening up", () => {
  const variants = (memory: MemoryState, id: CaseId) =>
    Array.from({ length: 200 }, (_, seed) =>
      present(currentItem(begin([planned(id, memory)], seed)), "an item"),
    );

  it("keeps a new case in front and lined up, beginning with the reference home", () => {
    for (const { variant, bare } of variants("new", "C1")) {
      expect(variant).toEqual({
        home: 0,
        placed: [1, 2, 3],
        turnedAway: 0,
        seenFrom: 0,
      });
      expect(bare).toBe(true);
    }
  });

  it("turns a settling or fading case away as well, in all ways and all homes", () => {
    for (const memory of ["settling", "fading"] as const) {
      const all = variants(memory, "C1");
      expect(new Set(all.map((o) => o.variant.turnedAway)).size).toBe(4);
      expect(new Set(all.map((o) => o.variant.home)).size).toBe(4);
      expect(new Set(all.map((o) => o.variant.seenFrom))).toEqual(new Set([0]));
      expect(all.every((o) => o.bare)).toBe(true);
    }
  });

  it("shows a kept case from anywhere, with all its stickers", () => {
    const all = variants("kept", "C1");
    expect(new Set(all.map((o) => o.variant.seenFrom)).size).toBe(4);
    expect(all.some((o) => o.bare)).toBe(false);
  });

  it("never turns away a piece that is not in the free layer", () => {
    for (const { variant } of variants("kept", "C4"))
      expect(variant.turnedAway).toBe(0);
  });

  it("opens a slot and a last layer up the same way, whatever colour is in front", () => {
    for (const stage of STAGES.slice(2)) {
      const [first] = casesOfStage(stage);
      const id = present(first, "every stage has cases").id;
      const kinds = (
        memory: MemoryState,
        part: "home" | "turnedAway" | "seenFrom",
      ) => new Set(variants(memory, id).map((o) => o.variant[part])).size;
      expect([kinds("new", "home"), kinds("new", "turnedAway")], stage).toEqual(
        [1, 1],
      );
      expect(kinds("settling", "home"), stage).toBe(4);
      expect(kinds("kept", "home"), stage).toBe(4);
      expect(kinds("settling", "turnedAway"), stage).toBe(
        isInFreeLayer(id) ? 4 : 1,
      );
      expect(kinds("kept", "seenFrom"), stage).toBe(hasHomes(id) ? 4 : 1);
      for (const memory of ["new", "settling", "kept"] as const)
        for (const { variant } of variants(memory, id))
          expect(isVariantAllowed(id, variant), stage).toBe(true);
    }
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
