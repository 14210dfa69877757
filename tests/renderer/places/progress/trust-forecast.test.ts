import { render, screen } from "@testing-library/svelte";
import { describe, expect, it } from "vitest";
import { dayNumber } from "../../../../core/memory/local-day";
import { forecastOf } from "../../../../core/progress/forecast";
import TrustForecast from "../../../../renderer/places/progress/TrustForecast.svelte";
import { cellTexts } from "./cell-texts";
import { openTable } from "./question-page";

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
