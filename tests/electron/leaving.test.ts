import { EventEmitter } from "node:events";
import { describe, expect, it, vi } from "vitest";
import { askBeforeLeaving } from "../../electron/leaving";

describe("a page that refuses to be left", () => {
  it.each([
    [0, false],
    [1, true],
  ])("answered by button %i is left: %s", (button, isLeft) => {
    const page = new EventEmitter();
    const showMessageBoxSync = vi.fn(() => button);
    askBeforeLeaving(page, { showMessageBoxSync });
    const preventDefault = vi.fn();
    page.emit("will-prevent-unload", { preventDefault });
    expect(preventDefault).toHaveBeenCalledTimes(isLeft ? 1 : 0);
    // Escape and Enter stay.
    expect(showMessageBoxSync).toHaveBeenCalledWith(
      expect.objectContaining({ defaultId: 0, cancelId: 0 }),
    );
  });
});
