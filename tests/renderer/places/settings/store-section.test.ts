import { render, screen } from "@testing-library/svelte";
import userEvent from "@testing-library/user-event";
import { describe, expect, it, vi } from "vitest";
import type { DesktopBridge } from "../../../../core/desktop-bridge";
import StoreSection from "../../../../renderer/places/settings/StoreSection.svelte";
import { standInDesktop } from "../../platform/stand-in-desktop";

const FACTS = {
  answers: 1234,
  persisted: true,
  used: 5_300_000,
  desktop: undefined,
  damaged: 0,
  damagedLearners: 0,
};

describe("where the answers are kept", () => {
  it("says how many there are and what the browser promised", () => {
    render(StoreSection, FACTS);
    expect(screen.getByText("1,234 answers, about 5 MB.")).toBeTruthy();
    expect(screen.getByText(/has promised not to clear them/)).toBeTruthy();
    expect(screen.getByText(/In this browser’s own store/)).toBeTruthy();
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
    render(StoreSection, { ...FACTS, damaged: 2, damagedLearners: 1 });
    expect(screen.getByRole("status").textContent).toContain(
      "2 answers and 1 learner could not be read.",
    );
  });

  it("names the desktop app's folder, and shows it", async () => {
    const showDataFolder = vi.fn<DesktopBridge["showDataFolder"]>(() =>
      Promise.resolve({
        ok: false,
        error: { code: "not-done", reason: "no file manager" },
      }),
    );
    const desktop = standInDesktop({
      info: () =>
        Promise.resolve({
          ok: true,
          value: { version: "1", dataFolder: "C:\\Ann\\Turnwise" },
        }),
      showDataFolder,
    });
    render(StoreSection, { ...FACTS, desktop });
    expect(await screen.findByText("C:\\Ann\\Turnwise")).toBeTruthy();
    expect(screen.queryByText(/this browser’s own store/)).toBeNull();
    await userEvent.click(screen.getByRole("button"));
    expect(showDataFolder).toHaveBeenCalledOnce();
    expect((await screen.findByRole("alert")).textContent).toContain(
      "Open it by its name",
    );
  });
});
