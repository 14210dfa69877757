import { render, screen, waitFor, within } from "@testing-library/svelte";
import userEvent from "@testing-library/user-event";
import { describe, expect, it, vi } from "vitest";
import { type Cubies, isSameState } from "../../../core/cube/cubies";
import { FACES } from "../../../core/cube/faces";
import type { HeldCube } from "../../../core/cube/held-cube";
import { ANY_STATE, sampleState } from "../../../core/cube/sample-state";
import { NO_ROTATION } from "../../../core/cube/symmetries";
import { cubePalette } from "../../../core/picture/palette";
import { randomSource } from "../../../core/random-source";
import StickerEntry from "../../../renderer/places/practise/show-my-cube/StickerEntry.svelte";
import { ENTRY_ORDER } from "../../../renderer/state/practise/sticker-entry.svelte";
import { colouredStickers, FACE_COLOURS } from "../../core/cube/entered-cubes";

const CUBE = {
  cubies: sampleState(randomSource(3), ANY_STATE),
  hold: NO_ROTATION,
};
const STICKERS = colouredStickers(CUBE, FACE_COLOURS);
const KEYS = FACES.map((face) => FACE_COLOURS[face]);

function show() {
  const onread = vi.fn<(cube: HeldCube<Cubies>) => void>();
  render(StickerEntry, {
    scheme: FACE_COLOURS,
    palette: cubePalette({ scheme: FACE_COLOURS, theme: "light" }),
    onread,
  });
  return onread;
}

function sticker(name: RegExp | string) {
  return screen.getByRole("button", { name });
}

/** Types all sides as a learner at the keyboard does, with one sticker perhaps mistaken. */
async function typeAll(mistaken?: number) {
  const user = userEvent.setup();
  sticker("Front, top left: empty").focus();
  for (const face of ENTRY_ORDER) {
    const first = 9 * FACES.indexOf(face);
    for (let k = 0; k < 9; k++) {
      if (k === 4) continue;
      const at = first + k;
      const right = KEYS.indexOf(STICKERS[at] ?? "white") + 1;
      await user.keyboard(`${at === mistaken ? (right % 6) + 1 : right}`);
      await waitFor(() =>
        expect(document.activeElement?.getAttribute("data-facelet")).toBe(
          `${k === 8 ? at : k === 3 ? at + 2 : at + 1}`,
        ),
      );
    }
    if (face === "D") continue;
    await user.keyboard("{PageDown}");
    const next = ENTRY_ORDER[ENTRY_ORDER.indexOf(face) + 1] ?? "F";
    await waitFor(() =>
      expect(document.activeElement?.getAttribute("data-facelet")).toBe(
        `${9 * FACES.indexOf(next)}`,
      ),
    );
  }
  return user;
}

describe("entering a cube by tapping", () => {
  it("a colour is chosen, then its stickers are tapped, and each says its place and colour", async () => {
    show();
    await userEvent.click(screen.getByRole("radio", { name: /^red/ }));
    await userEvent.click(sticker("Front, top left: empty"));
    await userEvent.click(sticker("Front, top right: empty"));
    expect(sticker("Front, top left: red")).toBeTruthy();
    expect(screen.getByRole("radio", { name: "red 3 of 9" })).toBeTruthy();
    await userEvent.click(screen.getByRole("radio", { name: "rub out" }));
    await userEvent.click(sticker("Front, top left: red"));
    expect(sticker("Front, top left: empty")).toBeTruthy();
    await userEvent.click(screen.getByRole("button", { name: "Take back" }));
    expect(sticker("Front, top left: red")).toBeTruthy();
    await userEvent.click(
      screen.getByRole("button", { name: "Clear this side" }),
    );
    expect(screen.getByRole("radio", { name: "red 1 of 9" })).toBeTruthy();
  });

  it("the side that is asked for is the only one the Tab key comes to", async () => {
    const user = userEvent.setup();
    show();
    const stops = () =>
      [...document.querySelectorAll('[data-facelet][tabindex="0"]')].map(
        (one) => one.getAttribute("aria-label"),
      );
    expect(stops()).toEqual(["Front, top left: empty"]);
    await user.click(
      screen.getByRole("button", { name: "Right side, 1 of 9" }),
    );
    await waitFor(() =>
      expect(stops()).toEqual(["Right side, top left: empty"]),
    );
  });

  it("each side says how the cube is held for it", async () => {
    show();
    expect(
      screen.getByRole("heading", {
        name: "Front: green facing you, white on top",
      }),
    ).toBeTruthy();
    await userEvent.click(screen.getByRole("button", { name: "Next side" }));
    expect(
      screen.getByRole("heading", {
        name: "Right side: red facing you, white on top",
      }),
    ).toBeTruthy();
    expect(
      screen.getByText(
        "Keep white on top and turn the whole cube to the left: red faces you.",
      ),
    ).toBeTruthy();
    await userEvent.click(
      screen.getByRole("button", { name: /^Bottom, . of 9/ }),
    );
    expect(
      screen.getByRole("grid", {
        name: "Bottom: yellow facing you, green on top",
      }),
    ).toBeTruthy();
    expect(
      screen.getByText(/Hold your cube so, and enter this side/),
    ).toBeTruthy();
  });

  it("what must follow is filled in at a tap", async () => {
    show();
    // White on top and red on the right of one corner: its front is green.
    await userEvent.click(screen.getByRole("radio", { name: /^white/ }));
    await userEvent.click(sticker("Top, bottom right: empty"));
    await userEvent.click(screen.getByRole("radio", { name: /^red/ }));
    await userEvent.click(sticker("Right side, top left: empty"));
    await userEvent.click(
      screen.getByRole("button", { name: "Fill in one that must follow" }),
    );
    expect(sticker("Front, top right: green")).toBeTruthy();
    expect(screen.queryByRole("button", { name: /must follow/ })).toBeNull();
  });
});

describe("entering a cube by the keyboard alone", () => {
  it("arrows move within a side, numbers give colours, and the whole cube is handed on", async () => {
    const onread = show();
    const user = userEvent.setup();
    sticker("Front, top left: empty").focus();
    await user.keyboard("{ArrowDown}{ArrowRight}{ArrowRight}{ArrowRight}");
    expect(document.activeElement).toBe(sticker("Front, middle right: empty"));
    await user.keyboard("{Home}{ArrowUp}{ArrowUp}");
    expect(document.activeElement).toBe(sticker("Front, top left: empty"));
    expect(screen.queryByRole("button", { name: /Go on/ })).toBeNull();
    await typeAll();
    const goOn = screen.getByRole("button", { name: "Go on with this cube" });
    expect(screen.getByText("All 54 stickers fit together.")).toBeTruthy();
    goOn.focus();
    await user.keyboard("{Enter}");
    expect(onread).toHaveBeenCalledOnce();
    const [cube] = onread.mock.calls[0] ?? [];
    expect(cube && isSameState(cube.cubies, CUBE.cubies)).toBe(true);
  });

  it("a wrong sticker is said, outlined and led to; put right, the cube can go on", async () => {
    const onread = show();
    const user = await typeAll(20);
    const news = screen.getByRole("status");
    expect(
      within(news).getByText(/Look at this sticker again: Front, top right/),
    ).toBeTruthy();
    expect(screen.queryByRole("button", { name: /Go on/ })).toBeNull();
    expect(
      screen.getByRole("button", { name: "Front, 9 of 9, look again" }),
    ).toBeTruthy();
    await user.click(screen.getByRole("button", { name: "Show me where" }));
    await waitFor(() =>
      expect(document.activeElement?.getAttribute("aria-label")).toMatch(
        /^Front, top right: .*, look again$/,
      ),
    );
    await user.keyboard(`${KEYS.indexOf(STICKERS[20] ?? "white") + 1}`);
    expect(screen.getByText("All 54 stickers fit together.")).toBeTruthy();
    await user.keyboard("{Control>}z{/Control}");
    expect(screen.queryByText("All 54 stickers fit together.")).toBeNull();
    expect(onread).not.toHaveBeenCalled();
  });
});
