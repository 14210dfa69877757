import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FIRST_LAYER_IDS, type CaseId } from "../../../core/cases/case-ids";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import { arranged } from "../../../core/memory/round-arrangement";
import type { MemoryState } from "../../../core/memory/schedule";

function planned(id: CaseId, memory: MemoryState): PlannedCase {
  return { case: id, hold: "up", deck: "d", target: 8, memory, times: 1 };
}

/** Twins. Source: `first-layer.md`. */
const TWINS: readonly (readonly CaseId[])[] = [
  ["C1", "C2"],
  ["C4", "C5"],
  ["E2a", "E2b"],
];
const areAlike = (a: CaseId, b: CaseId) =>
  TWINS.some((pair) => pair.includes(a) && pair.includes(b));

function order(cases: readonly (readonly [CaseId, MemoryState])[]): string {
  return arranged(
    cases.map(([id, memory]) => planned(id, memory)),
    areAlike,
  )
    .map((one) => one.case)
    .join(" ");
}

describe("the cases of a round", () => {
  it("stand as they come where none are alike", () => {
    expect(
      order([
        ["E1", "fading"],
        ["C3", "settling"],
        ["C6", "kept"],
      ]),
    ).toBe("E1 C3 C6");
  });

  it("stand apart from their look-alikes while one is settling", () => {
    expect(
      order([
        ["C1", "settling"],
        ["C2", "kept"],
        ["E1", "settling"],
      ]),
    ).toBe("C1 E1 C2");
  });

  it("are set against their look-alikes once both are kept", () => {
    expect(
      order([
        ["C1", "kept"],
        ["E1", "settling"],
        ["C2", "kept"],
        ["E3", "kept"],
      ]),
    ).toBe("C1 C2 E1 E3");
  });

  it("are all asked, each once, and no look-alike that settles follows another where that can be helped", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.constantFrom(...FIRST_LAYER_IDS), { maxLength: 12 }),
        fc.array(fc.constantFrom<MemoryState>("settling", "kept", "fading"), {
          minLength: 12,
          maxLength: 12,
        }),
        (ids, memories) => {
          const cases = ids.map((id, i) =>
            planned(id, memories[i] ?? "settling"),
          );
          const asked = arranged(cases, areAlike);
          expect(asked.map((one) => one.case).toSorted()).toEqual(
            ids.toSorted(),
          );
          asked.forEach((one, i) => {
            const next = asked[i + 1];
            if (next === undefined || !areAlike(one.case, next.case)) return;
            const areKept = one.memory === "kept" && next.memory === "kept";
            const rest = asked.slice(i + 1);
            expect(
              areKept || rest.every((other) => areAlike(one.case, other.case)),
            ).toBe(true);
          });
        },
      ),
    );
  });
});
