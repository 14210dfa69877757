import { EventEmitter } from "node:events";
import { describe, expect, it, vi } from "vitest";
import {
  askByDialog,
  CHOICE_WORDS,
  TROUBLE_DIALOGS,
  type TroubleChoice,
  type TroubleDeeds,
  troubleDesk,
  watchProcess,
  watchWindow,
} from "../../electron/trouble";
import type { Trouble } from "../../electron/trouble-log";

const TROUBLE: Trouble = { kind: "error", text: "it broke" };

/** A desk whose person makes the given choices in turn. */
function standInDesk(...choices: TroubleChoice[]) {
  const done: string[] = [];
  const deeds = {
    log: ({ text }) => `log of ${text}`,
    keep: (log) => {
      done.push(`keep ${log}`);
      return Promise.resolve();
    },
    ask: ({ message }) => {
      done.push(message);
      return Promise.resolve(choices.shift() ?? "go-on");
    },
    saveLog: (log) => {
      done.push(`save ${log}`);
      return Promise.resolve();
    },
    loadAgain: () => void done.push("load again"),
    quit: () => void done.push("quit"),
  } satisfies TroubleDeeds;
  return { done, deeds, desk: troubleDesk(deeds) };
}

describe("trouble", () => {
  it.each([
    ["go-on", []],
    ["load-again", ["load again"]],
    ["quit", ["quit"]],
  ] as const)("is kept and shown, and %s is done", async (choice, deeds) => {
    const { desk, done } = standInDesk(choice);
    await desk.report(TROUBLE);
    expect(done).toEqual([
      "keep log of it broke",
      TROUBLE_DIALOGS.error.message,
      ...deeds,
    ]);
  });

  it("is asked about again after its log was saved", async () => {
    const { desk, done } = standInDesk("save-log", "load-again");
    await desk.report({ kind: "page-gone", text: "crashed" });
    const { message } = TROUBLE_DIALOGS["page-gone"];
    expect(done).toEqual([
      "keep log of crashed",
      message,
      "save log of crashed",
      message,
      "load again",
    ]);
  });

  it("in a swarm is asked about once, and all of it is kept", async () => {
    const { desk, done, deeds } = standInDesk();
    const ask = vi.spyOn(deeds, "ask");
    await Promise.all([
      desk.report(TROUBLE),
      desk.report(TROUBLE),
      desk.report(TROUBLE),
    ]);
    expect(ask).toHaveBeenCalledTimes(1);
    expect(done.filter((deed) => deed.startsWith("keep"))).toHaveLength(3);
    await desk.report(TROUBLE);
    expect(ask).toHaveBeenCalledTimes(2);
  });

  it("with the dialog itself is said on the console, and does not come back", async () => {
    const error = vi.spyOn(console, "error").mockReturnValue();
    const { desk, deeds } = standInDesk();
    vi.spyOn(deeds, "ask").mockRejectedValueOnce(new Error("no screen"));
    await desk.report(TROUBLE);
    expect(error).toHaveBeenCalledOnce();
    error.mockRestore();
    await desk.report(TROUBLE);
    expect(deeds.ask).toHaveBeenCalledTimes(2);
  });

  it("that somebody else says is kept and not shown", async () => {
    const error = vi.spyOn(console, "error").mockReturnValue();
    const { desk, done, deeds } = standInDesk();
    await desk.note(TROUBLE);
    expect(done).toEqual(["keep log of it broke"]);
    vi.spyOn(deeds, "keep").mockRejectedValueOnce(new Error("no disk"));
    await desk.note(TROUBLE);
    expect(error).toHaveBeenCalledOnce();
    error.mockRestore();
  });

  it("is asked by the system's dialog, whose buttons are the choices", async () => {
    const words = TROUBLE_DIALOGS["page-gone"];
    const ask = (response: number) => {
      const showMessageBox = vi.fn(() =>
        Promise.resolve({ response, checkboxChecked: false }),
      );
      return { showMessageBox, choice: askByDialog({ showMessageBox }, words) };
    };
    const { showMessageBox, choice } = ask(1);
    expect(await choice).toBe("save-log");
    expect(showMessageBox).toHaveBeenCalledWith(
      expect.objectContaining({
        message: words.message,
        buttons: ["Load the page again", "Save the log…", "Quit"],
      }),
    );
    expect(await ask(2).choice).toBe("quit");
    // A button that is not there does nothing.
    expect(await ask(9).choice).toBe("go-on");
  });

  it("always has a way on, and a log to save", () => {
    for (const { choices } of Object.values(TROUBLE_DIALOGS)) {
      expect(choices).toContain("save-log");
      expect(choices).toContain("load-again");
      expect(new Set(choices).size).toBe(choices.length);
      for (const choice of choices) expect(CHOICE_WORDS[choice]).not.toBe("");
    }
  });
});

describe("watching", () => {
  it("notices that the page is gone or stuck", () => {
    const seen: Trouble[] = [];
    const window = Object.assign(new EventEmitter(), {
      webContents: new EventEmitter(),
    });
    watchWindow(window, (trouble) => seen.push(trouble));
    const gone = (reason: string) =>
      window.webContents.emit(
        "render-process-gone",
        {},
        { reason, exitCode: 5 },
      );
    gone("clean-exit");
    gone("crashed");
    window.emit("unresponsive");
    expect(seen).toEqual([
      { kind: "page-gone", text: "crashed, exit code 5" },
      { kind: "page-stuck", text: "unresponsive" },
    ]);
  });

  it("notices errors that nothing caught", () => {
    const seen: Trouble[] = [];
    const process = new EventEmitter();
    watchProcess(process, (trouble) => seen.push(trouble));
    process.emit("uncaughtException", new Error("one"));
    process.emit("unhandledRejection", "two");
    expect(seen).toMatchObject([
      { kind: "error", text: expect.stringContaining("Error: one") as string },
      { kind: "error", text: "unhandledRejection: Thrown: two" },
    ]);
  });
});
