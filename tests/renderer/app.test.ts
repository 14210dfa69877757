import { render, screen } from "@testing-library/svelte";
import { tick } from "svelte";
import { beforeEach, describe, expect, it, vi } from "vitest";
import App from "../../renderer/App.svelte";

const { places } = vi.hoisted(() => ({ places: { fail: false } }));

vi.mock("../../renderer/state/app-state.svelte", () => ({
  openApp: () => Promise.resolve({ ok: true, value: {} }),
}));
vi.mock("../../renderer/places/Places.svelte", () => ({
  default: () => {
    if (places.fail) throw new Error("a bug in a place");
  },
}));

async function openedWindow() {
  render(App);
  await Promise.resolve();
}

async function expectNotice() {
  const notice = await screen.findByRole("alert");
  expect(notice.textContent).toContain("Every answer that was kept is still");
  expect(screen.getByRole("button", { name: "Reload" })).toBeTruthy();
}

describe("what nobody caught", () => {
  beforeEach(() => {
    places.fail = false;
  });

  it("in a place leaves a notice and a way on instead of an empty window", async () => {
    places.fail = true;
    await openedWindow();
    await expectNotice();
  });

  it("in a handler is told above the place", async () => {
    await openedWindow();
    window.dispatchEvent(
      new ErrorEvent("error", { error: new Error("a bug in a handler") }),
    );
    await expectNotice();
  });

  it("in a promise is told above the place", async () => {
    await openedWindow();
    window.dispatchEvent(new Event("unhandledrejection"));
    await expectNotice();
  });

  it("does not take the browser's late measuring for a fault", async () => {
    await openedWindow();
    window.dispatchEvent(
      new ErrorEvent("error", { message: "ResizeObserver loop" }),
    );
    await tick();
    expect(screen.queryByRole("alert")).toBeNull();
  });
});
