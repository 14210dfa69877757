import { render, screen } from "@testing-library/svelte";
import { describe, expect, it } from "vitest";
import type { LocalDay, Milliseconds } from "../../../core/memory/review";
import { OUTCOMES } from "../../../core/memory/grade";
import { MEMORY_STATES } from "../../../core/memory/schedule";
import LastAnswers from "../../../renderer/components/LastAnswers.svelte";
import MemoryMark from "../../../renderer/components/MemoryMark.svelte";
import OutcomeMark from "../../../renderer/components/OutcomeMark.svelte";
import RoundMarks from "../../../renderer/components/RoundMarks.svelte";
import TimeBar from "../../../renderer/components/TimeBar.svelte";
import { sampleReview } from "../storage/sample-review";

/** What is drawn, without colours: every class left off. */
function shape(container: HTMLElement): string {
  return container.innerHTML.replaceAll(/ class="[^"]*"/g, "");
}

describe("marks", () => {
  it("tell outcomes, the current and those to come apart by shape alone", () => {
    const kinds = [
      ...OUTCOMES,
      "current",
      "to-come",
      "done",
      "skipped",
    ] as const;
    const shapes = kinds.map((kind) =>
      shape(render(OutcomeMark, { kind }).container),
    );
    expect(new Set(shapes).size).toBe(kinds.length);
  });

  it("tell memories apart by shape alone, and say the word", () => {
    const shapes = MEMORY_STATES.map((state) => {
      const { container } = render(MemoryMark, { state, days: 5 });
      expect(container.textContent).toBe(state);
      return shape(container).replace(state, "");
    });
    expect(new Set(shapes).size).toBe(MEMORY_STATES.length);
  });

  it("of a round are one sentence for whoever hears them", () => {
    render(RoundMarks, {
      marks: ["quick", "missed", "current", "to-come"],
      label: "3 of 4",
    });
    expect(screen.getByText("3 of 4")).toBeTruthy();
  });
});

describe("the time bar", () => {
  const ms = (value: number) => value as Milliseconds;

  it("says thinking, turning, the whole and the target", () => {
    render(TimeBar, {
      props: {
        total: ms(9300),
        thinking: ms(6100),
        turning: ms(3200),
        target: 8,
      },
    });
    expect(
      screen.getByRole("img", {
        name: "Thinking 6.1 s, turning 3.2 s, in all 9.3 s; target 8.0 s.",
      }),
    ).toBeTruthy();
  });

  it("says no thinking time where none is known", () => {
    const { container } = render(TimeBar, {
      props: { total: ms(9300), target: 8 },
    });
    expect(
      screen.getByRole("img", { name: "In all 9.3 s; target 8.0 s." }),
    ).toBeTruthy();
    expect(container.textContent).not.toContain("thinking");
  });
});

describe("the last answers", () => {
  it("say when, how it went and how long it took", () => {
    const review = sampleReview({ total: 3000 as Milliseconds });
    render(LastAnswers, {
      answers: [{ review, outcome: "quick" }],
      today: (review.localDay + 1) as LocalDay,
    });
    expect(screen.getByText("Tue 25")).toBeTruthy();
    expect(screen.getByText("quick")).toBeTruthy();
    expect(screen.getByText("3.0 s")).toBeTruthy();
  });

  it("that were interrupted have no time", () => {
    const review = sampleReview({ interrupted: true });
    render(LastAnswers, {
      answers: [{ review, outcome: "steady" }],
      today: review.localDay,
    });
    expect(screen.getByText("interrupted")).toBeTruthy();
    expect(screen.queryByRole("img")).toBeNull();
    expect(screen.queryByText("3.0 s")).toBeNull();
  });
});
