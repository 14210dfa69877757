import { render, screen } from "@testing-library/svelte";
import userEvent from "@testing-library/user-event";
import { describe, expect, it } from "vitest";
import type { CaseId } from "../../../../core/cases/case-ids";
import { dayNumber } from "../../../../core/memory/local-day";
import type { CaseTimes } from "../../../../core/progress/case-times";
import type { PieceConfusion } from "../../../../core/progress/confusions";
import { forecastOf } from "../../../../core/progress/forecast";
import type { CaseOverDays } from "../../../../core/progress/times-over-days";
import { USUAL_SCHEME } from "../../../../core/picture/colour-sets";
import { cubePalette } from "../../../../core/picture/palette";
import GettingFaster from "../../../../renderer/places/progress/GettingFaster.svelte";
import KeptCases from "../../../../renderer/places/progress/KeptCases.svelte";
import MistakenFor from "../../../../renderer/places/progress/MistakenFor.svelte";
import SlowCases from "../../../../renderer/places/progress/SlowCases.svelte";
import TrustForecast from "../../../../renderer/places/progress/TrustForecast.svelte";
import { ms } from "../../../core/runs/sample-run";
import { cellTexts } from "./cell-texts";

// 25 November 2025, a Tuesday (ISO 8601 calendar).
const TODAY = Date.UTC(2025, 10, 25) / 86_400_000;

const palette = cubePalette({
  scheme: USUAL_SCHEME,
  theme: "light",
  paints: "plain",
  letters: false,
});
const label = ({ case: id }: { readonly case: CaseId }) => ({
  title: `case ${id}`,
  href: `#/cases/${id}`,
});

async function openTable(): Promise<void> {
  await userEvent.click(screen.getByRole("button", { name: "as a table" }));
}

const times = (id: CaseId, total: number, target: number): CaseTimes => ({
  case: id,
  hold: "up",
  answerWay: "on-screen",
  answers: 5,
  total: 1000 * total,
  thinking: 600 * total,
  turning: 400 * total,
  target,
});

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

describe("what is mistaken for what", () => {
  const show = (
    missed: number,
    counts: readonly number[] = [],
    pieces: readonly PieceConfusion[] = [],
  ) =>
    render(MistakenFor, {
      confusions: {
        missed,
        pieces,
        pairs: counts.map((count, i) => ({
          case: i === 0 ? "C1" : "C4",
          hold: "up",
          answeredAs: "C2",
          times: count,
          lastDay: dayNumber(TODAY - 1),
        })),
      },
      today: dayNumber(TODAY),
      label,
      palette,
      scheme: USUAL_SCHEME,
    });

  it("strikes each time, and says how many misses it explains", async () => {
    show(20, [12, 3]);
    expect(
      screen.getByText(
        "Of 20 missed answers in 90 days, 15 were for another case.",
      ),
    ).toBeTruthy();
    expect(screen.getByText("12 times")).toBeTruthy();
    expect(screen.getByRole("img", { name: "3 times" })).toBeTruthy();
    await openTable();
    expect(cellTexts()).toEqual([
      ["Shown", "Answered as", "Times", "Last"],
      ["case C1", "case C2", "12", "yesterday"],
      ["case C4", "case C2", "3", "yesterday"],
    ]);
  });

  it("says when there are none", () => {
    const { unmount } = show(4);
    expect(
      screen.getByText(
        "Of 4 missed answers in 90 days, none was for another case.",
      ),
    ).toBeTruthy();
    unmount();
    show(0);
    expect(screen.getByText("No answer was missed in 90 days.")).toBeTruthy();
  });

  const taken = (
    answerWay: PieceConfusion["answerWay"],
    times: number,
  ): PieceConfusion => ({
    answerWay,
    piece: "UF",
    for: "UR",
    times,
    lastDay: dayNumber(TODAY),
  });

  it("says which pieces and homes were chosen for which, beside the cases", async () => {
    show(4, [1], [taken("find-it", 2), taken("where-is-home", 1)]);
    expect(
      screen.getByText(
        "Of 4 missed answers in 90 days, 1 was for another case. Another piece or home was chosen 3 times.",
      ),
    ).toBeTruthy();
    const inTable = [
      ["Asked for", "Chosen", "Times", "Last"],
      ["The white and green edge", "The white and red edge", "2", "today"],
      [
        "Home of the white and green edge",
        "Home of the white and red edge",
        "1",
        "today",
      ],
    ];
    expect(cellTexts()).toEqual(inTable);
    await openTable();
    expect(cellTexts().slice(2)).toEqual(inTable);
  });

  it("says them where no case was taken for another, and all of them in the table", async () => {
    const pieces = (["UR", "UL", "UB", "FR", "FL", "DF"] as const).map(
      (name, i) => ({ ...taken("find-it", 6 - i), for: name }),
    );
    show(0, [], pieces);
    expect(
      screen.getByText("Another piece or home was chosen 21 times in 90 days."),
    ).toBeTruthy();
    expect(cellTexts()).toHaveLength(6);
    expect(screen.getByText("1 more in the table.")).toBeTruthy();
    await openTable();
    expect(cellTexts()).toHaveLength(7);
  });
});

describe("whether the forecast can be trusted", () => {
  const days = (chance: number, right: number, missed: number) =>
    Array.from({ length: right + missed }, (_, i) => ({
      chance,
      wasRight: i < right,
      stability: 1,
      lastDay: dayNumber(0),
      lastsUntil: dayNumber(1),
      missedLast: false,
      days: 2,
    }));

  it("is answered with the numbers, and in a table", async () => {
    render(TrustForecast, {
      forecast: forecastOf([...days(0.92, 45, 5), ...days(0.75, 8, 2)]),
    });
    expect(
      screen.getByText(
        "Yes, so far. It expected 54 right answers of 60; you gave 53.",
      ),
    ).toBeTruthy();
    await openTable();
    // Wilson's interval of 8 in 10 is 0.490 to 0.943, of 45 in 50 0.786 to
    // 0.957 (computed by the formula, method 3 of Newcombe 1998).
    expect(cellTexts().slice(1)).toEqual([
      ["75", "80", "49 and 94", "10"],
      ["92", "90", "79 and 96", "50"],
    ]);
  });

  it("is too early to say of a few answers, and nothing is drawn", () => {
    render(TrustForecast, { forecast: forecastOf(days(0.9, 5, 0)) });
    expect(
      screen.getByText(/^Too early to say\. 5 of the 20 answers/),
    ).toBeTruthy();
    expect(screen.queryByRole("img")).toBeNull();
  });

  it("is denied where it promises too much, or too little", () => {
    const { unmount } = render(TrustForecast, {
      forecast: forecastOf(days(0.95, 30, 20)),
    });
    expect(screen.getByText(/^It promises too much\./)).toBeTruthy();
    unmount();
    render(TrustForecast, { forecast: forecastOf(days(0.5, 49, 1)) });
    expect(
      screen.getByText(/^It is too careful: you know more\./),
    ).toBeTruthy();
  });
});

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
