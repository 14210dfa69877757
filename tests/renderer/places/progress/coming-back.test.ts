import { render, screen } from "@testing-library/svelte";
import userEvent from "@testing-library/user-event";
import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../../core/cases/case-ids";
import type { LocalDay } from "../../../../core/memory/review";
import type { Memory } from "../../../../core/memory/schedule";
import {
  comingBackByDay,
  type ComingBackOptions,
} from "../../../../core/progress/coming-back";
import ComingBack from "../../../../renderer/places/progress/ComingBack.svelte";
import { cellTexts } from "./cell-texts";

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

function show(
  memories: readonly Memory[],
  seconds = 90,
  options: ComingBackOptions = {},
) {
  return render(ComingBack, {
    coming: comingBackByDay(memories, TODAY, {
      secondsOf: () => seconds,
      ...options,
    }),
    today: TODAY,
    caseName: ({ case: id }: Memory) => id,
  });
}

describe("what comes back when", () => {
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
        name: "today 2, about 3 minutes; Thursday 27 November 1, about 2 minutes.",
      }),
    ).toBeTruthy();
    expect(
      screen.getByText(
        "Today 2 cases, about 3 minutes. The fullest day after that is Thursday, about 2 minutes. 1 case lasts longer than these 30 days.",
      ),
    ).toBeTruthy();
  });

  it("is a table that names the cases", async () => {
    show(memories);
    const opener = screen.getByRole("button", { name: "as a table" });
    await userEvent.click(opener);
    expect(screen.queryByRole("img")).toBeNull();
    expect(cellTexts()).toEqual([
      ["Day", "Cases", "Minutes"],
      ["today", "2: E1; E3", "3.0"],
      ["Thursday 27 November", "1: C1", "1.5"],
      ["later", "1", ""],
    ]);
    await userEvent.keyboard("{Enter}");
    expect(screen.getByRole("img")).toBeTruthy();
  });

  it("says what is known and asked by no deck, and shows it on no day", async () => {
    show(memories, 90, {
      dueOn: ({ case: id, lastsUntil }) =>
        id === "C2" || id === "E1" ? undefined : lastsUntil,
    });
    expect(
      screen.getByText(
        "Today 1 case, about 2 minutes. The fullest day after that is Thursday, about 2 minutes. 2 other cases do not come back: no deck of yours asks for them as you hold the cube now.",
      ),
    ).toBeTruthy();
    await userEvent.click(screen.getByRole("button", { name: "as a table" }));
    expect(cellTexts().slice(-1)).toEqual([["not asked", "2", ""]]);
  });

  it("draws no days before a case was answered alone, and says what will stand there", () => {
    show([]);
    expect(
      screen.getByText(
        "When you have answered a case alone, it stands here on the day it comes back.",
      ),
    ).toBeTruthy();
    expect(screen.queryByRole("img")).toBeNull();
    expect(screen.queryByRole("button")).toBeNull();
  });

  it("says when nothing is due, and counts short times as such", () => {
    const { unmount } = show([memory("C1", 2)]);
    expect(screen.getByText(/^Nothing is due today\./)).toBeTruthy();
    unmount();
    show([memory("C1", 0)], 10);
    expect(screen.getByText("Today 1 case, less than a minute.")).toBeTruthy();
  });
});
