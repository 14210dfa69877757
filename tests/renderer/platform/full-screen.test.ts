import { describe, expect, it } from "vitest";
import { ok } from "../../../core/result";
import {
  canFillScreen,
  fillScreen,
  onScreenGivenBack,
} from "../../../renderer/platform/full-screen";
import { standInDesktop } from "./stand-in-desktop";

describe("the whole screen", () => {
  it("is asked of the desktop app's shell where there is one, and given back to it", async () => {
    const asked: boolean[] = [];
    const shell = standInDesktop({
      setFullScreen: (on) => {
        asked.push(on);
        return Promise.resolve(ok(null));
      },
    });
    expect(canFillScreen(shell)).toBe(true);
    expect(await fillScreen(true, shell)).toBe(true);
    expect(await fillScreen(false, shell)).toBe(true);
    expect(asked).toEqual([true, false]);
  });

  it("is told not to be filled where the shell does not do it, or the browser refuses", async () => {
    expect(await fillScreen(true, standInDesktop({}))).toBe(false);
    Object.defineProperty(document.documentElement, "requestFullscreen", {
      configurable: true,
      value: () => Promise.reject(new TypeError("no press")),
    });
    expect(await fillScreen(true, undefined)).toBe(false);
  });

  it("is heard of when the browser gives it back, until nobody listens", () => {
    let heard = 0;
    Object.defineProperty(document, "fullscreenElement", {
      configurable: true,
      value: null,
    });
    const stop = onScreenGivenBack(() => heard++);
    document.dispatchEvent(new Event("fullscreenchange"));
    expect(heard).toBe(1);
    stop();
    document.dispatchEvent(new Event("fullscreenchange"));
    expect(heard).toBe(1);
  });
});
