import { fireEvent, render, screen } from "@testing-library/svelte";
import { tick } from "svelte";
import { describe, expect, it, vi } from "vitest";
import { FACES, type Face } from "../../../core/cube/faces";
import { USUAL_SCHEME } from "../../../core/picture/colour-sets";
import {
  cubePicture,
  type CubePictureInput,
} from "../../../core/picture/cube-picture";
import { cubePalette } from "../../../core/picture/palette";
import { faceletPoint } from "../../../core/picture/pointing";
import { usualView } from "../../../core/picture/projection";
import CubeView from "../../../renderer/cube-view/CubeView.svelte";

const PICTURE: CubePictureInput = {
  stickers: FACES.flatMap((face) => new Array<Face>(9).fill(face)),
  view: usualView(73),
  palette: cubePalette({ scheme: USUAL_SCHEME, theme: "light" }),
  pieces: [[26, 15, 29]],
  home: [8, 9, 20],
  mirrors: { floor: true, left: true },
};
const FRAME = { left: -320, top: -180, right: 260, bottom: 320 };

/** Events as a pointer gives them; the test page lays nothing out by itself. */
function laidOut(svg: HTMLElement): void {
  svg.getBoundingClientRect = () => new DOMRect(100, 50, 580, 500);
  svg.setPointerCapture = vi.fn();
}

function at(facelet: number) {
  const point = faceletPoint(cubePicture(PICTURE), facelet);
  if (point === undefined) throw new Error(`${facelet} is not seen`);
  return {
    clientX: 100 + point.x - FRAME.left,
    clientY: 50 + point.y - FRAME.top,
  };
}

describe("a cube on the screen", () => {
  it("is a picture with a text, and is placed by the cube's own centre", () => {
    render(CubeView, {
      picture: PICTURE,
      label: "A cube with a corner to bring home",
      frame: FRAME,
    });
    const svg = screen.getByRole("img", {
      name: "A cube with a corner to bring home",
    });
    expect(svg.getAttribute("viewBox")).toBe("-320 -180 580 500");
    expect(svg.getAttribute("width")).toBe("580");
  });

  it("keeps out of the way of a screen reader where the text is beside it", () => {
    render(CubeView, { picture: PICTURE, label: "" });
    expect(screen.queryByRole("img")).toBeNull();
  });

  it("carries no inline style, which the content policy forbids", () => {
    const { container } = render(CubeView, { picture: PICTURE, label: "" });
    expect(container.querySelectorAll("path").length).toBeGreaterThan(60);
    expect(container.querySelectorAll("[style], style").length).toBe(0);
  });

  it("has ids of its own when there are two of them", () => {
    const { container } = render(CubeView, { picture: PICTURE, label: "" });
    const second = render(CubeView, { picture: PICTURE, label: "" });
    const ids = [container, second.container].flatMap((part) =>
      [...part.querySelectorAll("[id]")].map((element) => element.id),
    );
    expect(ids.length).toBeGreaterThan(4);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("turns the right side down when its front corner is dragged down, and taps where nothing is dragged", async () => {
    const onturn = vi.fn();
    const ontap = vi.fn();
    render(CubeView, {
      picture: PICTURE,
      label: "cube",
      frame: FRAME,
      onturn,
      ontap,
    });
    const svg = screen.getByRole("img");
    laidOut(svg);
    const from = at(26);
    await fireEvent.pointerDown(svg, { pointerId: 1, button: 0, ...from });
    await fireEvent.pointerMove(svg, {
      pointerId: 1,
      clientX: from.clientX,
      clientY: from.clientY + 25,
    });
    await fireEvent.pointerUp(svg, { pointerId: 1, ...from });
    expect(onturn).toHaveBeenCalledTimes(1);
    expect(onturn.mock.calls[0]?.[0]).toEqual({ layer: "R", quarters: 3 });
    expect(typeof onturn.mock.calls[0]?.[1]).toBe("number");
    expect(ontap).not.toHaveBeenCalled();

    await fireEvent.pointerDown(svg, { pointerId: 1, button: 0, ...at(4) });
    await fireEvent.pointerUp(svg, { pointerId: 1, ...at(4) });
    expect(ontap.mock.calls[0]?.[0]).toBe(4);
  });

  it("looks around when it is dragged beside the cube", async () => {
    const onlook = vi.fn();
    const onturn = vi.fn();
    render(CubeView, {
      picture: PICTURE,
      label: "cube",
      frame: FRAME,
      onturn,
      onlook,
    });
    const svg = screen.getByRole("img");
    laidOut(svg);
    await fireEvent.pointerDown(svg, {
      pointerId: 1,
      button: 0,
      clientX: 660,
      clientY: 520,
    });
    await fireEvent.pointerMove(svg, {
      pointerId: 1,
      clientX: 620,
      clientY: 520,
    });
    expect(onlook.mock.calls[0]?.[0]).toEqual({
      dx: -40,
      dy: 0,
      phase: "start",
    });
    expect(onturn).not.toHaveBeenCalled();
  });
});

describe("a view far from the last", () => {
  /** What is seen on the screen: the first path of the cube. */
  const drawing = (container: HTMLElement) =>
    [...container.querySelectorAll("path")]
      .map((path) => path.getAttribute("d"))
      .join();
  const behind = { ...PICTURE, view: { ...usualView(73), yaw: 205 } };

  it("is there at once unless motion is wanted", async () => {
    const { container, rerender } = render(CubeView, {
      picture: PICTURE,
      label: "",
    });
    await rerender({ picture: behind });
    const there = render(CubeView, { picture: behind, label: "" });
    // Ids differ, shapes do not.
    expect(drawing(container)).toBe(drawing(there.container));
  });

  it("is reached by and by where motion is wanted, and quite reached in the end", async () => {
    const frames: FrameRequestCallback[] = [];
    vi.stubGlobal("requestAnimationFrame", (draw: FrameRequestCallback) =>
      frames.push(draw),
    );
    try {
      const { container, rerender } = render(CubeView, {
        picture: PICTURE,
        label: "",
        glides: true,
      });
      const front = drawing(container);
      await rerender({ picture: behind });
      expect(drawing(container)).toBe(front);
      const there = drawing(
        render(CubeView, { picture: behind, label: "" }).container,
      );
      const step = async (time: number) => {
        frames.shift()?.(time);
        await tick();
        return drawing(container);
      };
      await step(1000);
      const half = await step(1160);
      expect(half).not.toBe(front);
      expect(half).not.toBe(there);
      expect(await step(1400)).toBe(there);
      expect(frames).toEqual([]);
    } finally {
      vi.unstubAllGlobals();
    }
  });
});
