import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fireEvent, render } from "@testing-library/svelte";
import { afterEach, describe, expect, it, vi } from "vitest";
import RunReport from "../../../renderer/places/practise/runs/RunReport.svelte";
import TapPad from "../../../renderer/places/practise/runs/TapPad.svelte";
import TimedRun from "../../../renderer/places/practise/runs/TimedRun.svelte";
import { deskKey } from "../../../renderer/places/practise/desk-keys";
import {
  isDialogOpen,
  isDialogsKey,
} from "../../../renderer/platform/open-dialog";
import type { RunDesk } from "../../../renderer/state/runs/run-desk.svelte";
import { showKey } from "../../../renderer/state/show/show-keys";

/** A question that is open, with a button in it. */
function question(): { dialog: HTMLDialogElement; button: HTMLElement } {
  const dialog = document.createElement("dialog");
  dialog.open = true;
  const button = document.createElement("button");
  dialog.append(button);
  document.body.append(dialog);
  return { dialog, button };
}

afterEach(() =>
  document.querySelectorAll("dialog").forEach((one) => one.remove()),
);

/** What a run's pages ask of their desk. */
function standIn() {
  const leave = vi.fn();
  const takeTapBack = vi.fn();
  const desk = {
    kind: "cross",
    rules: "plain",
    stage: { kind: "ready" },
    withParts: true,
    parts: 4,
    wasHidden: false,
    learner: { settings: { clockRunning: false } },
    leave,
    takeTapBack,
  } as unknown as RunDesk;
  return { desk, leave, takeTapBack };
}

const RUN = {
  id: "a run",
  kind: "cross",
  rules: "practice",
  startedAt: 1000,
  splits: [2000],
};

describe("a key while a question is open", () => {
  it("is the question's, wherever the focus is", () => {
    const { dialog, button } = question();
    expect(isDialogOpen()).toBe(true);
    expect(isDialogsKey({ target: button })).toBe(true);
    // The focus falls back to the page where nothing in the dialog has it.
    expect(isDialogsKey({ target: document.body })).toBe(true);
    dialog.open = false;
    expect(isDialogOpen()).toBe(false);
    expect(isDialogsKey({ target: document.body })).toBe(false);
    // The press that closed it is still its own.
    expect(isDialogsKey({ target: button })).toBe(true);
  });

  it("asks nothing of the desk, nor of a case that is shown", () => {
    const pressed = (key: string) =>
      ({ key, target: document.body }) as unknown as KeyboardEvent;
    expect(deskKey(pressed("Escape"))).toBe("leave");
    expect(showKey(pressed("Escape"))).toBe("leave");
    question();
    expect(deskKey(pressed("Escape"))).toBeUndefined();
    expect(showKey(pressed("Escape"))).toBeUndefined();
  });

  it("neither stops a run nor takes a tap of it back", async () => {
    const { desk, leave, takeTapBack } = standIn();
    render(TimedRun, {
      desk,
      stage: { kind: "running", run: RUN } as never,
    });
    const { dialog, button } = question();
    for (const target of [button, document.body])
      for (const key of ["Escape", "Backspace"])
        await fireEvent.keyDown(target, { key });
    expect(leave).not.toHaveBeenCalled();
    expect(takeTapBack).not.toHaveBeenCalled();
    dialog.remove();
    await fireEvent.keyDown(document.body, { key: "Backspace" });
    expect(takeTapBack).toHaveBeenCalledTimes(1);
    await fireEvent.keyDown(document.body, { key: "Escape" });
    expect(leave).toHaveBeenCalledTimes(1);
  });

  it("does not throw away a run that waits to be reported", async () => {
    const { desk, leave, takeTapBack } = standIn();
    render(RunReport, { desk, onkeep: vi.fn() });
    const { dialog } = question();
    await fireEvent.keyDown(document.body, { key: "Escape" });
    await fireEvent.keyDown(document.body, { key: "Backspace" });
    expect(leave).not.toHaveBeenCalled();
    expect(takeTapBack).not.toHaveBeenCalled();
    dialog.remove();
    await fireEvent.keyDown(document.body, { key: "Escape" });
    expect(leave).toHaveBeenCalledTimes(1);
  });

  it("is no tap of the clock", async () => {
    const onpress = vi.fn();
    render(TapPad, { label: "Tap when it is done", onpress });
    const { dialog } = question();
    await fireEvent.keyDown(document.body, { key: " " });
    expect(onpress).not.toHaveBeenCalled();
    dialog.remove();
    await fireEvent.keyDown(document.body, { key: " " });
    expect(onpress).toHaveBeenCalledTimes(1);
  });
});

/** Ways to ask it: the rule itself, and the lists of keys that do. */
const ASKS = ["isDialogsKey", "isDialogOpen", "deskKey", "showKey"];

describe("every page that hears keys pressed anywhere", () => {
  const root = join(process.cwd(), "renderer");
  const pages = readdirSync(root, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".svelte"))
    .map((name) => ({ name, text: readFileSync(join(root, name), "utf8") }))
    .filter(({ text }) => /<svelte:window\b[^>]*\bonkeydown=/.test(text));

  it("is known to this test", () => expect(pages.length).toBeGreaterThan(7));

  it.each(pages)("asks whether a question is open: $name", ({ text }) => {
    expect(ASKS.some((name) => text.includes(`${name}(`))).toBe(true);
  });
});
