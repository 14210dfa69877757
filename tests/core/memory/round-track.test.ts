import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { present } from "../../../core/invariant";
import {
  anyRound,
  begin,
  isMiss,
  planned,
  play,
  playAny,
  sameCase,
  script,
} from "./played-round";

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
