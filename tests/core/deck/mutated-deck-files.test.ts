import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DECK_FAULT_CODES } from "../../../core/deck/deck-fault";
import { formatDeckFile, parseDeckFile } from "../../../core/deck/deck-file";
import { JSON_FAULT_CODES } from "../../../core/deck/json-text";
import { ARBITRARY_DECK } from "./arbitrary-decks";
import { mutated } from "./mutated-files";
import { tellSoak, tries } from "../../soak/times";

const FILES = tries(10_000);

const CODES: readonly string[] = [
  ...["too-large", "not-turnwise", "other-kind", "newer-version"],
  ...JSON_FAULT_CODES,
  ...DECK_FAULT_CODES,
];

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

describe("ten thousand damaged deck files", () => {
  it("are each read or refused, with a cause and a place, and none ends the reader", () => {
    const decks = fc.sample(ARBITRARY_DECK, { numRuns: 60, seed: 20260731 });
    const texts = decks.map(formatDeckFile);
    const outcomes = new Map<string, number>();
    let stillJson = 0;
    fc.assert(
      fc.property(mutated(texts), (text) => {
        if (isJson(text)) stillJson++;
        const read = parseDeckFile(text);
        const outcome = read.ok ? "read" : read.error.code;
        outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
        if (read.ok) {
          const { deck } = read.value;
          const again = parseDeckFile(formatDeckFile(deck));
          expect(again).toEqual({
            ok: true,
            value: { deck, unknownCases: [] },
          });
          return;
        }
        expect(CODES).toContain(read.error.code);
        if (!("line" in read.error)) return;
        const line = text.split(/\r\n|\n|\r/)[read.error.line - 1];
        expect(line?.length).toBeGreaterThanOrEqual(read.error.column - 1);
      }),
      { numRuns: FILES },
    );
    tellSoak(
      `${FILES} mutated deck files, ${stillJson} still JSON, ${outcomes.get("read") ?? 0} read, ${outcomes.size} different outcomes`,
    );
    expect(stillJson).toBeGreaterThan(0.3 * FILES);
    expect(outcomes.get("read")).toBeGreaterThan(0.02 * FILES);
    // The rest take a file made for them: `refused-deck-files.ts` has one each.
    const unreached = CODES.filter((code) => !outcomes.has(code));
    expect(unreached.length, unreached.join()).toBeLessThan(10);
  });
});
