import { render, screen } from "@testing-library/svelte";
import userEvent from "@testing-library/user-event";
import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../../core/cases/case-ids";
import type { LocalDay } from "../../../../core/memory/review";
import type { Memory } from "../../../../core/memory/schedule";
import { comingBackByDay } from "../../../../core/progress/coming-back";
import ComingBack from "../../../../renderer/places/progress/ComingBack.svelte";

// 25 November 2025, a Tuesday (ISO 8601 calendar).
const TODAY = (Date.UTC(2025, 10, 25) / 86_400_000) as LocalDay;

const memory = (id: CaseId, inDays: number): Memory => ({
  learner: "ann",
  case: id,
  hold: "up",
  stability: 5,
  difficulty: 5,
  lastDay: TODAY,
  lastsUntil: (TODAY + inDays) as LocalDay,
  missedLast: false,
  days: 1,
});

function show(memories: readonly Memory[], minutes = 3) {
  return render(ComingBack, {
    id: "coming-back",
    coming: comingBackByDay(memories, TODAY),
    today: TODAY,
    minutes,
    caseName: ({ case: id }: Memory) => id,
  });
}

describe("how long cases should last", () => {
  const memories = [
    memory("E1", -2),
    memory("E3", 0),
    memory("C1", 2),
    memory("C2", 40),
  ];

  it("is a picture that says the same in words, with what is overdue today", () => {
    show(memories);
    expect(
      screen.getByRole("img", {
        name: "today 2, Thursday 27 November 1, later 1.",
      }),
    ).toBeTruthy();
    expect(screen.getByText(/For today 2, about 3 minutes\./)).toBeTruthy();
    expect(
      screen.getByText(/^1 case lasts longer than these \d+ days\.$/),
    ).toBeTruthy();
  });

  it("is a table that names the cases", async () => {
    show(memories);
    await userEvent.click(screen.getByRole("button", { name: "as a table" }));
    expect(screen.queryByRole("img")).toBeNull();
    const rows = screen
      .getAllByRole("row")
      .map((row) => [...row.children].map((cell) => cell.textContent));
    expect(rows).toEqual([
      ["Day", "Cases"],
      ["today", "2: E1; E3"],
      ["Thursday 27 November", "1: C1"],
      ["later", "1"],
    ]);
  });

  it("says when nothing is due, and counts one minute as one", () => {
    const { unmount } = show([memory("C1", 2)]);
    expect(screen.getByText(/Nothing is due today\./)).toBeTruthy();
    unmount();
    show([memory("C1", 0)], 1);
    expect(screen.getByText(/For today 1, about 1 minute\./)).toBeTruthy();
  });
});
