import { describe, expect, it } from "vitest";
import {
  idInFileName,
  isOwnResultsFileName,
  isResultsFileName,
  markInFileName,
  resultsFileName,
  withdrawalFileName,
} from "../../../core/sharing/results-file-name";

const ID = "0123456789abcdef".repeat(4);

describe("the name of a file of results", () => {
  it("tells its content, for copies too", () => {
    for (const name of [
      resultsFileName(ID),
      `${ID} (1).turnwise-results`,
      `${ID} (conflicted copy 2026-11-12).turnwise-results`,
      `${ID}-SCHOOL-PC.turnwise-results`,
      `${ID}.sync-conflict-20261112-101010-ABCDEFG.turnwise-results`,
      resultsFileName(ID).toUpperCase(),
    ]) {
      expect(isResultsFileName(name), name).toBe(true);
      expect(idInFileName(name), name).toBe(ID);
    }
  });

  it("tells of a withdrawal whose it is, for copies too", () => {
    const mark = "fedcba9876543210";
    const own = withdrawalFileName(ID, mark);
    for (const name of [own, own.replace(".", " (1)."), own.toUpperCase()]) {
      expect(isResultsFileName(name), name).toBe(true);
      expect(idInFileName(name), name).toBe(ID);
      expect(markInFileName(name), name).toBe(mark);
    }
    expect(isOwnResultsFileName(own)).toBe(true);
    for (const name of [
      resultsFileName(ID),
      `${ID}-back-${mark}0.turnwise-results`,
      `${ID}-back-up.turnwise-results`,
      `a${own}`,
    ])
      expect(markInFileName(name), name).toBeUndefined();
  });

  it("may be somebody’s own, and then tells nothing", () => {
    for (const name of ["Mia.turnwise-results", `${ID}f.turnwise-results`]) {
      expect(isResultsFileName(name)).toBe(true);
      expect(idInFileName(name)).toBeUndefined();
    }
  });

  it("never leads out of its folder, and is no hidden or unfinished file’s", () => {
    for (const name of [
      "../a.turnwise-results",
      "a/b.turnwise-results",
      "a\\b.turnwise-results",
      "C:a.turnwise-results",
      `._${ID}.turnwise-results`,
      ".turnwise-results",
      `${ID}.turnwise-results.tmp`,
      "a\u0000.turnwise-results",
      `${"a".repeat(255)}.turnwise-results`,
      "notes.txt",
      "",
    ])
      expect(isResultsFileName(name), name).toBe(false);
  });

  it("is ours alone where it is the digest and nothing else", () => {
    expect(isOwnResultsFileName(resultsFileName(ID))).toBe(true);
    for (const name of [
      `${ID} (1).turnwise-results`,
      `../${ID}.turnwise-results`,
      `${ID}.turnwise-results\n`,
      `${ID}-back-0123.turnwise-results`,
      "a.turnwise-results",
    ])
      expect(isOwnResultsFileName(name), name).toBe(false);
  });
});
