import { describe, expect, it } from "vitest";
import {
  backupFileErrorText,
  restoreErrorText,
} from "../../renderer/backup-error-text";
import type { BackupFileError } from "../../renderer/storage/read-backup";

const ERRORS: readonly BackupFileError[] = [
  { code: "not-a-backup" },
  { code: "newer-backup", version: 7 },
  { code: "truncated", line: 12 },
  { code: "lines-after-end", line: 12 },
  { code: "unknown-line", line: 12 },
  { code: "too-many-lines", line: 12 },
  { code: "too-many-reviews", line: 12 },
  { code: "wrong-counts", line: 12, field: "reviews", said: 30, found: 29 },
  { code: "line-not-json", line: 12 },
  { code: "line-too-deep", line: 12 },
  { code: "line-too-long", line: 12 },
  { code: "forbidden-key", line: 12, field: "deck.__proto__" },
  { code: "wrong-field", line: 12, field: "review.at", problem: "wrong-type" },
  { code: "packed-too-large", limit: 100_000_000 },
  { code: "unpacked-too-large", limit: 1_000_000_000 },
  { code: "bad-gzip" },
  { code: "not-text", line: 12 },
  { code: "file-not-read", reason: "NotReadableError" },
];

describe("the sentence about a restore that is not taken back", () => {
  it("says why, and that nothing was changed", () => {
    expect(restoreErrorText({ code: "nothing-to-undo" })).toMatch(
      /no restore to take back.*Nothing was changed/,
    );
    expect(restoreErrorText({ code: "practised-since" })).toMatch(
      /practised since.*delete that learner.*Nothing was changed/,
    );
    expect(restoreErrorText({ code: "full" })).toMatch(/Make some room/);
  });
});

describe("the sentence about a file that is no good backup", () => {
  it.each(ERRORS)(
    "for $code says where, what to do, and that nothing was changed",
    (error) => {
      const text = backupFileErrorText(error);
      expect(text).toMatch(/ Nothing was changed\.$/);
      expect(text).toMatch(
        /another backup|older backup|Choose a file|choose it again|newer Turnwise\.|one learner at a time/,
      );
      if ("line" in error) expect(text).toMatch(/line 12/i);
      if ("field" in error && error.code !== "wrong-counts")
        expect(text).toContain(`“${error.field}”`);
      expect(text).not.toContain(error.code);
    },
  );

  it("gives the numbers that do not agree", () => {
    expect(backupFileErrorText(ERRORS[7] ?? { code: "bad-gzip" })).toMatch(
      /30 answers, and there are 29/,
    );
  });

  it("gives sizes in megabytes and the system's own word", () => {
    const texts = ERRORS.map(backupFileErrorText).join("\n");
    expect(texts).toMatch(/larger than 100 MB/);
    expect(texts).toMatch(/more than 1000 MB/);
    expect(texts).toMatch(/NotReadableError/);
  });
});
