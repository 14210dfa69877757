import { describe, expect, it } from "vitest";
import { milestonesOf } from "../../../core/progress/milestones";

describe("milestones", () => {
  const corners = (state: "kept" | "settling" | "new", ...times: number[]) =>
    times.map((thinking) => ({
      stage: "first-layer-corners" as const,
      state,
      thinking,
    }));

  it("name the fastest step that half of the met cases have reached", () => {
    expect(
      milestonesOf([
        ...corners("kept", 800, 900),
        ...corners("settling", 1400, 5000),
        ...corners("new", 100),
      ]),
    ).toEqual([
      {
        stage: "first-layer-corners",
        met: 4,
        kept: 2,
        thinking: { under: 1000, cases: 2 },
      },
    ]);
  });

  it("name no time that is not reached or not known", () => {
    const [slow] = milestonesOf(corners("kept", 11_000, 900, 12_000));
    expect(slow).not.toHaveProperty("thinking");
    const [unknown] = milestonesOf([
      { stage: "first-layer-edges", state: "fading" },
    ]);
    expect(unknown).toEqual({ stage: "first-layer-edges", met: 1, kept: 0 });
    expect(milestonesOf([])).toEqual([]);
  });
});
