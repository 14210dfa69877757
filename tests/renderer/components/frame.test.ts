import { render, screen } from "@testing-library/svelte";
import { createRawSnippet, tick } from "svelte";
import { describe, expect, it, vi } from "vitest";
import Frame from "../../../renderer/components/Frame.svelte";

const children = createRawSnippet(() => ({ render: () => "<p>a place</p>" }));

describe("the frame", () => {
  it("begins a new place at its top, with the focus there and nothing scrolled away", async () => {
    const scroll = vi.spyOn(window, "scrollTo").mockReturnValue();
    const { rerender } = render(Frame, {
      place: "settings",
      who: children,
      children,
    });
    const main = screen.getByRole("main");
    const focus = vi.spyOn(main, "focus");
    await tick();
    expect(scroll).not.toHaveBeenCalled();
    await rerender({ place: "coach" });
    expect(focus).toHaveBeenCalledExactlyOnceWith({ preventScroll: true });
    expect(scroll).toHaveBeenCalledExactlyOnceWith(0, 0);
    scroll.mockRestore();
  });

  it("begins a new page of a place so too, and leaves one that stays where it is", async () => {
    const scroll = vi.spyOn(window, "scrollTo").mockReturnValue();
    const { rerender } = render(Frame, {
      place: "coach",
      who: children,
      children,
    });
    await rerender({ page: "sheets" });
    expect(scroll).toHaveBeenCalledExactlyOnceWith(0, 0);
    await rerender({ page: "sheets" });
    expect(scroll).toHaveBeenCalledOnce();
    await rerender({ page: undefined });
    expect(scroll).toHaveBeenCalledTimes(2);
    scroll.mockRestore();
  });
});
