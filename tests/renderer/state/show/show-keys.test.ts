import { describe, expect, it } from "vitest";
import { showKey } from "../../../../renderer/state/show/show-keys";

function pressed(key: string, target: EventTarget = document.body) {
  const plain = { ctrlKey: false, metaKey: false, altKey: false };
  return showKey({ ...plain, key, target });
}

describe("keys while a case is shown", () => {
  it("go from case to case by the arrows, and by what a presenter's remote sends", () => {
    expect(pressed("ArrowRight")).toBe("next");
    expect(pressed("PageDown")).toBe("next");
    expect(pressed("ArrowLeft")).toBe("previous");
    expect(pressed("PageUp")).toBe("previous");
  });

  it("reveal, take back, blank, fill the screen and leave", () => {
    expect(pressed(" ")).toBe("reveal");
    expect(pressed("Enter")).toBe("reveal");
    expect(pressed("Backspace")).toBe("take-back");
    for (const key of ["b", "B", "."]) expect(pressed(key)).toBe("blank");
    expect(pressed("F5")).toBe("full-screen");
    expect(pressed("Escape")).toBe("leave");
  });

  it("press the button that has the focus instead of revealing", () => {
    const button = document.createElement("button");
    expect(pressed("Enter", button)).toBeUndefined();
    expect(pressed(" ", button)).toBeUndefined();
    expect(pressed("PageDown", button)).toBe("next");
  });

  it("mean nothing else, and nothing together with Control", () => {
    expect(pressed("x")).toBeUndefined();
    expect(
      showKey({
        key: "b",
        ctrlKey: true,
        metaKey: false,
        altKey: false,
        target: document.body,
      }),
    ).toBeUndefined();
  });
});
