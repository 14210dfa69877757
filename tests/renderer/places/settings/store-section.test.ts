import { render, screen } from "@testing-library/svelte";
import { describe, expect, it } from "vitest";
import StoreSection from "../../../../renderer/places/settings/StoreSection.svelte";

const FACTS = {
  answers: 1234,
  persisted: true,
  used: 5_300_000,
  isDesktop: false,
  damaged: 0,
};

describe("where the answers are kept", () => {
  it("says how many there are and what the browser promised", () => {
    render(StoreSection, FACTS);
    expect(screen.getByText("1,234 answers, about 5 MB.")).toBeTruthy();
    expect(screen.getByText(/has promised not to clear them/)).toBeTruthy();
    expect(screen.getByText(/In this browser/)).toBeTruthy();
  });

  it("says so where the browser has not promised", () => {
    render(StoreSection, { ...FACTS, persisted: false });
    expect(screen.getByText(/has not promised to keep them/)).toBeTruthy();
  });

  it("says nothing of a promise the browser did not speak of", () => {
    const { container } = render(StoreSection, {
      ...FACTS,
      persisted: undefined,
      used: undefined,
    });
    expect(container.textContent).not.toContain("promised");
    expect(screen.getByText("1,234 answers.")).toBeTruthy();
  });

  it("reports what could not be read", () => {
    render(StoreSection, { ...FACTS, damaged: 2 });
    expect(screen.getByRole("status").textContent).toContain(
      "2 stored rows could not be read.",
    );
  });
});
