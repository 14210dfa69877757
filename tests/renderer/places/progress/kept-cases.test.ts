import { render, screen } from "@testing-library/svelte";
import { describe, expect, it } from "vitest";
import { dayNumber } from "../../../../core/memory/local-day";
import KeptCases from "../../../../renderer/places/progress/KeptCases.svelte";
import { cellTexts } from "./cell-texts";
import { TODAY, openTable } from "./question-page";

describe("what was kept", () => {
  const on = (day: number, kept: number, settling: number, fading: number) => ({
    day: dayNumber(TODAY + day),
    kept,
    settling,
    fading,
  });

  it("says it in numbers, a month ago too, and what was reached", async () => {
    render(KeptCases, {
      kept: [
        on(-40, 0, 3, 0),
        on(-31, 4, 2, 1),
        on(-9, 6, 1, 1),
        on(0, 9, 3, 2),
      ],
      milestones: [
        {
          stage: "first-layer-corners",
          met: 14,
          kept: 9,
          thinking: { under: 1000, cases: 12 },
        },
      ],
    });
    expect(
      screen.getByText(
        "9 of 14 cases kept, 3 settling, 2 fading. A month ago 4 were kept.",
      ),
    ).toBeTruthy();
    expect(
      screen.getByText(
        "First-layer corners: 9 of 14 kept; median thinking under 1.0 s on 12 of 14.",
      ),
    ).toBeTruthy();
    await openTable();
    expect(cellTexts().slice(0, 3)).toEqual([
      ["Day", "kept", "settling", "fading"],
      ["today", "9", "3", "2"],
      ["Sunday 16 November", "6", "1", "1"],
    ]);
  });

  it("draws nothing of a first day", () => {
    render(KeptCases, { kept: [on(0, 0, 1, 0)], milestones: [] });
    expect(
      screen.getByText("0 of 1 case kept, 1 settling, 0 fading."),
    ).toBeTruthy();
    expect(screen.queryByRole("img")).toBeNull();
  });
});
