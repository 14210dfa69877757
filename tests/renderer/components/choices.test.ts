import { render, screen } from "@testing-library/svelte";
import userEvent from "@testing-library/user-event";
import { describe, expect, it, vi } from "vitest";
import { COLOUR_NAMES, USUAL_SCHEME } from "../../../core/picture/colour-sets";
import ChoiceSwitch from "../../../renderer/components/ChoiceSwitch.svelte";
import ColourTaps from "../../../renderer/components/ColourTaps.svelte";
import TextField from "../../../renderer/components/TextField.svelte";

describe("a switch", () => {
  const options = [
    { value: "up", label: "On top" },
    { value: "down", label: "At the bottom" },
  ] as const;

  it("is one group in which exactly one word is chosen", () => {
    render(ChoiceSwitch, {
      label: "The first layer is",
      options,
      value: "down",
      onchange: vi.fn(),
    });
    expect(
      screen.getByRole("group", { name: "The first layer is" }),
    ).toBeTruthy();
    const chosen = screen
      .getAllByRole<HTMLInputElement>("radio")
      .filter(({ checked }) => checked);
    expect(chosen).toEqual([
      screen.getByRole("radio", { name: "At the bottom" }),
    ]);
  });

  it("tells what was chosen", async () => {
    const onchange = vi.fn();
    render(ChoiceSwitch, { label: "Hold", options, value: "up", onchange });
    await userEvent.click(screen.getByText("At the bottom"));
    expect(onchange).toHaveBeenCalledExactlyOnceWith("down");
  });
});

describe("a cube's colours in six taps", () => {
  async function tap(...colours: readonly string[]) {
    for (const colour of colours)
      await userEvent.click(screen.getByRole("button", { name: colour }));
  }

  it("are asked side by side and told after the sixth", async () => {
    const oncomplete = vi.fn();
    render(ColourTaps, { oncomplete });
    expect(screen.getByText("on top")).toBeTruthy();
    await tap("white", "green", "red", "blue", "orange");
    expect(screen.getByText("at the bottom")).toBeTruthy();
    expect(oncomplete).not.toHaveBeenCalled();
    await tap("yellow");
    expect(oncomplete).toHaveBeenCalledExactlyOnceWith(USUAL_SCHEME);
  });

  it("cannot be the same twice, and a tap can be taken back", async () => {
    render(ColourTaps, { oncomplete: vi.fn() });
    await tap("pink");
    const pink = screen.getByRole("button", { name: "pink" });
    expect(pink.getAttribute("aria-disabled")).toBe("true");
    await tap("pink");
    expect(screen.getByText("1 of 6")).toBeTruthy();
    expect(screen.getByRole("img", { name: "pink on top" })).toBeTruthy();
    await tap("One tap back");
    expect(pink.getAttribute("aria-disabled")).toBe("false");
    expect(screen.getByRole("img", { name: "No colours yet" })).toBeTruthy();
  });

  it("are one stop for the Tab key, in which the arrows go round", async () => {
    const user = userEvent.setup();
    const oncomplete = vi.fn();
    render(ColourTaps, { oncomplete });
    const focused = () => document.activeElement?.textContent.trim();
    await user.tab();
    const [first] = COLOUR_NAMES;
    expect(focused()).toBe(first);
    await user.keyboard("{ArrowLeft}");
    expect(focused()).toBe(COLOUR_NAMES.at(-1));
    await user.keyboard("{ArrowRight}");
    expect(focused()).toBe(first);
    await user.keyboard("{ArrowRight}{Enter}");
    expect(screen.getByText("1 of 6")).toBeTruthy();
    await user.tab();
    expect(focused()).toBe("One tap back");
    await user.tab({ shift: true });
    expect(focused()).toBe(COLOUR_NAMES[1]);
    await user.keyboard("{ArrowRight}{Enter}".repeat(4) + "{End}{Enter}");
    expect(oncomplete).toHaveBeenCalledOnce();
  });

  it("that are set up are shown, and asked again only when wanted", async () => {
    render(ColourTaps, { scheme: USUAL_SCHEME, oncomplete: vi.fn() });
    expect(
      screen.getByRole("img", { name: /white on top, red on the right/ }),
    ).toBeTruthy();
    expect(screen.queryByRole("button", { name: "pink" })).toBeNull();
    await tap("Tap the colours again");
    expect(screen.getByRole("button", { name: "pink" })).toBeTruthy();
    await tap("Keep the old colours");
    expect(screen.queryByRole("button", { name: "pink" })).toBeNull();
  });
});

describe("a text that is asked for", () => {
  it("says why it is refused, and takes what is good", async () => {
    const onsubmit = vi.fn((text: string) => text !== "");
    render(TextField, {
      label: "Name",
      value: "Ann",
      button: "Change",
      refusal: "A name has 1 to 40 letters.",
      onsubmit,
    });
    const field = screen.getByRole("textbox", { name: "Name" });
    await userEvent.clear(field);
    await userEvent.click(screen.getByRole("button", { name: "Change" }));
    expect(screen.getByRole("alert").textContent).toBe(
      "A name has 1 to 40 letters.",
    );
    await userEvent.type(field, "Ada{Enter}");
    expect(onsubmit).toHaveBeenLastCalledWith("Ada");
    expect(screen.queryByRole("alert")).toBeNull();
  });
});
