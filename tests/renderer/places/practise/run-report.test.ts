import { render, screen } from "@testing-library/svelte";
import { describe, expect, it, vi } from "vitest";
import RunReport from "../../../../renderer/places/practise/runs/RunReport.svelte";
import type { RunDesk } from "../../../../renderer/state/runs/run-desk.svelte";

function reportAfter(inspection: number | undefined): void {
  const desk = {
    kind: "cross",
    rules: "competition",
    stage: { kind: "running", inspection },
    wasHidden: false,
  } as unknown as RunDesk;
  render(RunReport, { desk, onkeep: vi.fn() });
}

describe("what a run is said to be worth before it is kept", () => {
  // Source: WCA Regulations, Article A3, from memory: 17 seconds or more do not count.
  it.each([16_999, undefined])(
    "is a time that counts after a look of %s ms",
    (inspection) => {
      reportAfter(inspection);
      expect(screen.getByText(/^It counts/)).toBeTruthy();
    },
  );

  it("is a try after a look of 17 seconds", () => {
    reportAfter(17_000);
    expect(screen.queryByText(/^It counts/)).toBeNull();
    expect(screen.getByText(/it is kept as a try/)).toBeTruthy();
  });
});
