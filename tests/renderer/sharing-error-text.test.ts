import { describe, expect, it } from "vitest";
import type { FolderError } from "../../renderer/platform/results-folder";
import {
  resultsFileErrorText,
  sharingErrorText,
} from "../../renderer/sharing-error-text";
import type { SharingError } from "../../renderer/state/sharing/sharing-error";
import type { ResultsFileError } from "../../renderer/storage/results-files";

describe("why nothing was shared or taken in", () => {
  it.each<[SharingError, RegExp]>([
    [{ code: "no-folder" }, /Choose the folder first/],
    [{ code: "nothing-chosen" }, /Choose what to share/],
    [{ code: "taken-back-elsewhere" }, /To share.*again, choose/],
    [{ code: "folder-gone" }, /not there.*choose another.*Nothing is lost/],
    [{ code: "not-allowed" }, /press “Open the folder”/],
    [{ code: "folder-full" }, /Make some room/],
    [{ code: "folder-file-too-large", name: "a" }, /Ask for it again/],
    [{ code: "folder-failed", reason: "EIO" }, /EIO.*Try again/],
    [
      { code: "desktop", error: { code: "no-shared-folder", name: "" } },
      /Choose one first/,
    ],
    [{ code: "closed" }, /Reload this window/],
  ])("%j is said with what to do", (error, words) => {
    expect(sharingErrorText(error)).toMatch(words);
  });
});

describe("why a file of results was not read", () => {
  it.each<[ResultsFileError | FolderError, RegExp]>([
    [{ code: "not-whole" }, /not arrived whole.*read again at the next look/],
    [{ code: "not-results" }, /no file of results.*Settings/],
    [{ code: "newer-results", version: 4 }, /number 4.*up to date/],
    [{ code: "truncated", line: 12 }, /line 12.*Ask for it again/],
    [{ code: "lines-after-end", line: 12 }, /line 12.*Ask for it again/],
    [{ code: "unknown-line", line: 12 }, /Line 12.*Ask for it again/],
    [{ code: "too-many-answers", line: 12 }, /line 12.*Ask for it again/],
    [
      { code: "wrong-counts", line: 12, said: 30, found: 29 },
      /30 answers.*are 29/,
    ],
    [{ code: "line-not-json", line: 12 }, /Line 12.*Ask for it again/],
    [
      { code: "wrong-field", line: 12, field: "a", problem: "wrong-type" },
      /Line 12.*Ask for it again/,
    ],
    [{ code: "line-too-deep", line: 12 }, /Line 12.*changed it/],
    [{ code: "line-too-long", line: 12 }, /Line 12.*changed it/],
    [{ code: "forbidden-key", line: 12, field: "a.b" }, /“a.b”.*Do not use/],
    [{ code: "packed-too-large", limit: 25_000_000 }, /25 MB.*Do not use/],
    [{ code: "unpacked-too-large", limit: 1e8 }, /100 MB.*Do not use/],
    [{ code: "bad-gzip" }, /cannot be unpacked.*Ask for it again/],
    [{ code: "not-text", line: 12 }, /line 12.*damaged/],
    [{ code: "file-not-read", reason: "EIO" }, /EIO.*choose it again/],
    [{ code: "folder-gone" }, /Look again/],
    [{ code: "folder-file-too-large", name: "a" }, /Ask for it again/],
    [{ code: "not-allowed" }, /Open the folder/],
    [{ code: "folder-full" }, /Make some room/],
    [{ code: "folder-failed", reason: "EIO" }, /EIO/],
    [
      { code: "desktop", error: { code: "not-done", reason: "x" } },
      /Try again/,
    ],
  ])("%j is said with what to do", (error, words) => {
    expect(resultsFileErrorText(error)).toMatch(words);
  });
});
