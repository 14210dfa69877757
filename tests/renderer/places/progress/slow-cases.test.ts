import { render, screen } from "@testing-library/svelte";
import { describe, expect, it } from "vitest";
import type { CaseTimes } from "../../../../core/progress/case-times";
import SlowCases from "../../../../renderer/places/progress/SlowCases.svelte";
import { cellTexts } from "./cell-texts";
import { label, openTable, palette, times } from "./question-page";

describe("which cases are slow", () => {
  const show = (all: readonly CaseTimes[]) =>
    render(SlowCases, { times: all, label, palette });

  it("says how many, and shows the slowest by their targets", async () => {
    show([times("E1", 4, 8), times("C1", 12.6, 10), times("E3", 9, 8)]);
    expect(
      screen.getByText(
        "2 of 3 cases take longer than the target. The slowest by its target is “case C1”: 12.6 s, target 10.0 s.",
      ),
    ).toBeTruthy();
    expect(screen.getAllByRole("link").map((link) => link.textContent)).toEqual(
      ["case C1", "case E3", "case E1"],
    );
    expect(
      screen.getByRole("img", { name: /^Thinking 7\.6 s, turning 5\.0 s/ }),
    ).toBeTruthy();
    await openTable();
    expect(cellTexts()[1]).toEqual([
      "case C1",
      "7.6 s",
      "5.0 s",
      "12.6 s",
      "10.0 s",
      "not known",
    ]);
  });

  it("tells fumbled turns from many, beside the learner's others", async () => {
    const long = { ...times("C1", 12, 10), thinking: 4000, turning: 8000 };
    show([
      { ...times("E3", 11, 8), turns: { usual: 6, besideOthers: 1.42 } },
      { ...long, turns: { usual: 11, besideOthers: 0.97 } },
      { ...times("E1", 4, 8), turns: { usual: 4, besideOthers: 1.02 } },
    ]);
    const fumbled = "Its 6 turns take 1.4 times as long as your others.";
    expect(
      screen.getByText(
        `2 of 3 cases take longer than the target. The slowest by its target is “case E3”: 11.0 s, target 8.0 s. ${fumbled}`,
      ),
    ).toBeTruthy();
    expect(
      screen
        .getAllByRole("listitem")
        .map((item) => /Its .*others\./.exec(item.textContent)?.[0]),
    ).toEqual([
      fumbled,
      "Its 11 turns are about as fast as your others.",
      undefined,
    ]);
    await openTable();
    expect(cellTexts().map((cells) => cells.at(-1))).toEqual([
      "Turns, beside your others",
      "6 turns, 1.4 times",
      "11 turns, 1.0 times",
      "4 turns, 1.0 times",
    ]);
  });

  it("keeps a picture of eight, and the others in the table", async () => {
    const ids = [
      "E1",
      "E3",
      "E7",
      "E10",
      "E11",
      "C1",
      "C2",
      "C3",
      "C4",
    ] as const;
    show(ids.map((id, i) => times(id, 1 + i, 20)));
    expect(screen.getAllByRole("listitem")).toHaveLength(8);
    expect(screen.getByText("1 more in the table.")).toBeTruthy();
    expect(
      screen.getByText(/^All 9 cases are within their targets\./),
    ).toBeTruthy();
    await openTable();
    expect(cellTexts()).toHaveLength(10);
  });

  it("says what will stand there before the first time", () => {
    show([]);
    expect(
      screen.getByText(/^When you have answered a case alone/),
    ).toBeTruthy();
    expect(screen.queryByRole("button")).toBeNull();
  });
});
