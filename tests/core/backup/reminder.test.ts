import { describe, expect, it } from "vitest";
import { shouldRemind } from "../../../core/backup/reminder";

const DAY = 86_400_000;
const SINCE = 1_764_057_600_000;

describe("the reminder of a backup", () => {
  it.each([
    [0, 1, false],
    [6.99, 199, false],
    [7, 1, true],
    [0, 200, true],
    [400, 0, false],
    // A clock set back.
    [-30, 199, false],
    [-30, 200, true],
  ])(
    "after %d days and %d answers and runs: %s",
    (days, keptSince, reminds) => {
      const now = SINCE + days * DAY;
      expect(shouldRemind({ since: SINCE, keptSince, now })).toBe(reminds);
    },
  );
});
