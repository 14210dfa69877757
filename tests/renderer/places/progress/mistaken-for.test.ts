import { render, screen } from "@testing-library/svelte";
import { describe, expect, it } from "vitest";
import { dayNumber } from "../../../../core/memory/local-day";
import type { PieceConfusion } from "../../../../core/progress/confusions";
import { USUAL_SCHEME } from "../../../../core/picture/colour-sets";
import MistakenFor from "../../../../renderer/places/progress/MistakenFor.svelte";
import { cellTexts } from "./cell-texts";
import { TODAY, label, openTable, palette } from "./question-page";

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
