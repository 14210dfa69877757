import { fireEvent, render, screen } from "@testing-library/svelte";
import { describe, expect, it, vi } from "vitest";
import TapPad from "../../../../renderer/places/practise/runs/TapPad.svelte";

function pad() {
  const onpress = vi.fn<(at: number) => void>();
  render(TapPad, { label: "Tap when it is done", onpress });
  return { onpress, button: screen.getByRole("button", { name: /^Tap when/ }) };
}

describe("the pad that is tapped", () => {
  it("hears a press once, at its beginning", async () => {
    const { onpress, button } = pad();
    await fireEvent.pointerDown(button, { button: 0 });
    expect(onpress).toHaveBeenCalledTimes(1);
    await fireEvent.pointerUp(button);
    await fireEvent.click(button);
    expect(onpress).toHaveBeenCalledTimes(1);
  });

  it("hears a click that comes without a press, as a screen reader makes it", async () => {
    const { onpress, button } = pad();
    await fireEvent.click(button);
    expect(onpress).toHaveBeenCalledTimes(1);
  });

  it("hears Space and Enter from anywhere, and a key that is held down once", async () => {
    const { onpress } = pad();
    await fireEvent.keyDown(document.body, { key: " " });
    await fireEvent.keyDown(document.body, { key: "Enter" });
    await fireEvent.keyDown(document.body, { key: " ", repeat: true });
    await fireEvent.keyDown(document.body, { key: "a" });
    expect(onpress).toHaveBeenCalledTimes(2);
  });

  it("leaves keys to another button that has the focus", async () => {
    const { onpress } = pad();
    const other = document.createElement("button");
    document.body.append(other);
    await fireEvent.keyDown(other, { key: "Enter" });
    other.remove();
    expect(onpress).not.toHaveBeenCalled();
  });

  it("takes the focus, and is not pressed by another button of a mouse", async () => {
    const { onpress, button } = pad();
    expect(document.activeElement).toBe(button);
    await fireEvent.pointerDown(button, { button: 2 });
    expect(onpress).not.toHaveBeenCalled();
  });
});
