import { describe, expect, it } from "vitest";
import { showKey } from "../../../../renderer/state/show/show-keys";

function pressed(key: string, target: EventTarget = document.body) {
  const plain = { ctrlKey: false, metaKey: false, altKey: false };
  return showKey({ ...plain, key, target });
}

describe("keys while a case is shown", () => {
  it("go from case to case by the arrows", () => {
    expect(pressed("ArrowRight")).toBe("next");
    expect(pressed("ArrowLeft")).toBe("previous");
  });

  it("go on and back through everything by the two that every presenter's remote sends", () => {
    expect(pressed("PageDown")).toBe("on");
    expect(pressed("PageUp")).toBe("back");
  });

  it("go on, take back, blank, fill the screen and leave", () => {
    expect(pressed(" ")).toBe("on");
    expect(pressed("Enter")).toBe("on");
    expect(pressed("Backspace")).toBe("back");
    expect(pressed("f")).toBe("full-screen");
    for (const key of ["b", "B", "."]) expect(pressed(key)).toBe("blank");
    expect(pressed("F5")).toBe("full-screen");
    expect(pressed("Escape")).toBe("leave");
  });

  it("press the button that has the focus instead of revealing", () => {
    const button = document.createElement("button");
    expect(pressed("Enter", button)).toBeUndefined();
    expect(pressed(" ", button)).toBeUndefined();
    expect(pressed("PageDown", button)).toBe("on");
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
