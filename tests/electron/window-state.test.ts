import { describe, expect, it } from "vitest";
import {
  formatWindowState,
  LEAST_SIZE,
  parseWindowState,
  usableBounds,
} from "../../electron/window-state";

const STATE = {
  bounds: { x: 10, y: -20, width: 800, height: 600 },
  maximized: false,
};

describe("a kept window state", () => {
  it("is read back as it was written", () => {
    expect(parseWindowState(formatWindowState(STATE))).toEqual({
      ok: true,
      value: STATE,
    });
  });

  it.each(["", "{", "undefined"])("is refused as no JSON: %j", (text) => {
    expect(parseWindowState(text)).toEqual({
      ok: false,
      error: { code: "not-json" },
    });
  });

  it.each([
    ["", null],
    ["bounds", []],
    ["bounds", { maximized: true }],
    ["bounds.x", { ...STATE, bounds: { ...STATE.bounds, x: "10" } }],
    ["bounds.x", { ...STATE, bounds: { ...STATE.bounds, x: 1.5 } }],
    ["bounds.y", { ...STATE, bounds: { ...STATE.bounds, y: 1e9 } }],
    ["bounds.width", { ...STATE, bounds: { ...STATE.bounds, width: 0 } }],
    ["maximized", { ...STATE, maximized: 1 }],
  ])("is refused at %j: %j", (field, value) => {
    expect(parseWindowState(JSON.stringify(value))).toEqual({
      ok: false,
      error: { code: "not-a-window-state", field },
    });
  });
});

describe("the bounds of the next window", () => {
  const left = { x: 0, y: 0, width: 1920, height: 1040 };
  const right = { x: 1920, y: 0, width: 1280, height: 1000 };

  it("are the kept ones where a display shows them", () => {
    const kept = { x: 2000, y: 50, width: 800, height: 600 };
    expect(usableBounds(kept, [left, right])).toEqual(kept);
  });

  it("are dropped where the display is gone or the top edge is out of reach", () => {
    const size = { width: 800, height: 600 };
    for (const place of [
      { x: 2000, y: 50 },
      { x: 100, y: -40 },
      { x: 100, y: 1020 },
      { x: 1900, y: 0 },
      { x: -790, y: 0 },
    ]) {
      expect(usableBounds({ ...place, ...size }, [left])).toBeUndefined();
    }
    expect(usableBounds({ x: 0, y: 0, ...size }, [])).toBeUndefined();
  });

  it("never exceed the display and never fall below the least size", () => {
    expect(
      usableBounds({ x: 0, y: 0, width: 5000, height: 5000 }, [left]),
    ).toEqual({ x: 0, y: 0, width: 1920, height: 1040 });
    expect(usableBounds({ x: 0, y: 0, width: 50, height: 50 }, [left])).toEqual(
      { x: 0, y: 0, ...LEAST_SIZE },
    );
  });
});
