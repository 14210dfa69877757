import { describe, expect, it } from "vitest";
import type { DesktopError } from "../../core/desktop-bridge";
import { desktopErrorText } from "../../renderer/desktop-error-text";

const NAMED = { name: "mine.json" } as const;

describe("why the desktop app did not do what was asked", () => {
  it.each<[DesktopError, RegExp]>([
    [{ code: "wrong-ending", ...NAMED }, /mine\.json.*\.turnwise-deck/],
    [{ code: "not-a-file", ...NAMED }, /mine\.json.*Choose a file/],
    [{ code: "file-too-large", ...NAMED, most: 1e8 }, /mine\.json.*100 MB/],
    [{ code: "file-too-large", name: "", most: 4e6 }, /^This is larger.*4 MB/],
    [{ code: "not-text", ...NAMED }, /mine\.json.*Ask for the file again/],
    [{ code: "not-read", ...NAMED, reason: "ENOENT" }, /not there any more/],
    [{ code: "not-read", ...NAMED, reason: "EIO" }, /EIO.*another folder/],
    [{ code: "no-room", ...NAMED }, /mine\.json.*Make some room/],
    [
      { code: "not-written", ...NAMED, reason: "EACCES" },
      /EACCES.*Try another/,
    ],
    [{ code: "no-such-backup", ...NAMED }, /Look at the list again/],
    [{ code: "no-shared-folder", ...NAMED }, /Choose one first/],
    [{ code: "not-results", ...NAMED }, /mine\.json.*\.turnwise-results/],
    [{ code: "not-done", reason: "no printer" }, /no printer.*Try again/],
    [{ code: "foreign-sender" }, /Load the page again/],
    [{ code: "unreadable-message", field: "a" }, /Load the page again/],
  ])("%j is said with what to do", (error, words) => {
    expect(desktopErrorText(error)).toMatch(words);
  });
});
