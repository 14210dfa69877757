import { render, screen } from "@testing-library/svelte";
import userEvent from "@testing-library/user-event";
import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../../core/cases/case-ids";
import { dayNumber } from "../../../../core/memory/local-day";
import type { CaseOverDays } from "../../../../core/progress/times-over-days";
import GettingFaster from "../../../../renderer/places/progress/GettingFaster.svelte";
import { ms } from "../../../core/runs/sample-run";
import { cellTexts } from "./cell-texts";
import { TODAY, label, openTable, times } from "./question-page";

describe("whether one is getting faster", () => {
  const overDays = (id: CaseId, ...totals: number[]): CaseOverDays => ({
    case: id,
    hold: "up",
    answerWay: "on-screen",
    periodDays: 1,
    periods: totals.map((total, i) => ({
      day: dayNumber(TODAY - totals.length + i),
      answers: 1,
      total: 1000 * total,
      thinking: 500 * total,
    })),
    lastAttempts: [4720, 4720, 3990, 3950, 5990].map(ms),
  });
  const falling = overDays("C1", 10, 9, 8, 7, 6, 5.5, 5, 4.5, 4.2, 4);
  const show = (...cases: readonly CaseOverDays[]) =>
    render(GettingFaster, {
      all: {
        periodDays: 1,
        periods: (cases[0]?.periods ?? []).map((period) => ({
          ...period,
          total: period.total / 8000,
        })),
      },
      cases,
      times: cases.map((one) => times(one.case, 4, 8)),
      label,
    });
  const curves = (container: HTMLElement) =>
    container.querySelectorAll("path[d]").length;

  it("says from where to where, of all cases and of a chosen one with its averages", async () => {
    const { container } = show(falling, overDays("E1", 3, 3));
    expect(
      screen.getByText(
        /^Yes: a usual answer took 1\.2\d times the target at first and takes 0\.\d\d times the target now\.$/,
      ),
    ).toBeTruthy();
    expect(curves(container)).toBe(2);
    await userEvent.selectOptions(
      screen.getByRole("combobox", { name: "Case" }),
      "case C1",
    );
    expect(
      screen.getByText(/^Yes: a usual answer took 10\.\d s at first/),
    ).toBeTruthy();
    // Source: check-values, and (3.99 + 3.95 + 5.99) / 3.
    expect(
      screen.getByText(
        "Average of the last 5, best and worst left out: 4.48 s. Mean of the last 3: 4.64 s.",
      ),
    ).toBeTruthy();
    await openTable();
    expect(cellTexts()[0]).toEqual(["Day", "Thinking", "In all", "Answers"]);
    expect(cellTexts()[1]).toEqual([
      "Saturday 15 November",
      "5.0 s",
      "10.0 s",
      "1",
    ]);
  });

  it("draws no curve through a few days", () => {
    const { container } = show(overDays("C1", 9, 5, 1));
    expect(
      screen.getByText(
        "3 days with answers so far; a curve is drawn from 8 on.",
      ),
    ).toBeTruthy();
    expect(curves(container)).toBe(0);
    expect(container.querySelectorAll("circle")).toHaveLength(6);
  });

  it("does not call standing still faster, nor getting slower", () => {
    const { unmount } = show(overDays("C1", ...Array<number>(10).fill(5)));
    expect(screen.getByText(/^About the same:/)).toBeTruthy();
    unmount();
    show(overDays("C1", 4, 4.5, 5, 5.5, 6, 6.5, 7, 8));
    expect(screen.getByText(/^Slower, for now:/)).toBeTruthy();
  });

  it("says what will stand there before the first time", () => {
    show();
    expect(
      screen.getByText(/^When you have answered on a few days/),
    ).toBeTruthy();
  });
});
