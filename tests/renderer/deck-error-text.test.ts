import { describe, expect, it } from "vitest";
import { parseDeckFile } from "../../core/deck/deck-file";
import { deckFileErrorText } from "../../renderer/deck-error-text";
import { REFUSED } from "../core/deck/refused-deck-files";

function textFor(what: string): string {
  const text = REFUSED.find(([name]) => name === what)?.[1] ?? "";
  const read = parseDeckFile(text);
  return read.ok ? "read" : deckFileErrorText(read.error);
}

/** What a sentence asks for. */
const NEXT =
  /Add it|Ask for|ask for|Check|Choose|Close it|Get the|Keep it|Leave|Look for|may be missing|Name at|Take|Use|Write|must be|has room for/;

describe("a deck file that was refused", () => {
  it.each(REFUSED)("with %s gets a sentence that says what to do", (what) => {
    const sentence = textFor(what);
    expect(sentence).toMatch(NEXT);
    expect(sentence).not.toMatch(/undefined|NaN|\[object|so many/);
    expect(sentence.length).toBeLessThan(260);
  });

  it.each([
    [
      "a text where a number belongs",
      "Line 5, letter 10: “target” must be a number from 0.5 to 600, without quotation marks.",
    ],
    [
      "a word that means nothing there",
      "Line 5, letter 8: “home” must be “in front” or “anywhere”, not “behind”.",
    ],
    [
      "a way that is not notation",
      /^Line 5, letter 7: This way cannot be read at letter 5\. “Q” is not a turn\./,
    ],
    [
      "a comma too few at the end of a line",
      'Line 2, letter 3: this is not written as a deck file is (it says “"name":"Monday"}”). A comma may be missing at the end of the line before.',
    ],
    ["a comma too few on a line", /A comma may be missing just before it\.$/],
    ["a colon too few", /\(it says “"deck"}”\)\. Look for a comma/],
    ["a letter", "This file is not from Turnwise. Choose a deck file."],
    ["a control character", /“message” has a hidden character \(U\+0007\)/],
    ["a line break in a text of one line", /“description” has a line break/],
    ["more others placed than the case allows", /at most 2 .* not 3\.$/],
    ["a note longer than its place", /Keep it to 280 letters/],
    ["half a new case", /a whole number from 0 to 12, not “1\.5”\.$/],
  ])("names the place and what belongs there for %s", (what, sentence) => {
    expect(textFor(what)).toMatch(sentence);
  });
});
