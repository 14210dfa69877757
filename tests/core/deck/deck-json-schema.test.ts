import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { Ajv } from "ajv";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { formatDeckFile, parseDeckFile } from "../../../core/deck/deck-file";
import { STARTER_DECKS } from "../../../core/deck/starter-decks";
import { ARBITRARY_DECK } from "./arbitrary-decks";
import { deckJsonSchema } from "./deck-json-schema";
import { mutated } from "./mutated-files";
import { fileWith, REFUSED } from "./refused-deck-files";

const PATH = join(
  import.meta.dirname,
  "../../../core/deck/deck-file.schema.json",
);

/** What the reader refuses and no JSON Schema can say. */
const BEYOND = new Set<string>([
  ...["duplicate-key", "reserved-key", "nested-too-deep", "too-large"],
  ...["duplicate-case", "too-many-placed", "impossible-day"],
  ...["way-not-notation", "way-without-turns", "no-one-way"],
]);

describe("the JSON Schema of deck files", () => {
  let made: string;
  let isRightBySchema: (file: unknown) => boolean;

  beforeAll(async () => {
    made = await deckJsonSchema();
    if (process.env["WRITE_DECK_SCHEMA"] === "1") await writeFile(PATH, made);
    const schema: unknown = JSON.parse(await readFile(PATH, "utf8"));
    isRightBySchema = new Ajv({ strictTypes: false }).compile(
      schema as Record<string, unknown>,
    );
  });

  it("lies beside the reader as it follows from it (to write it again: WRITE_DECK_SCHEMA=1 npx vitest run tests/core/deck/deck-json-schema.test.ts)", async () => {
    expect(await readFile(PATH, "utf8")).toBe(made);
  });

  /** Both must agree on what a schema can say; undefined where the text is none of its business. */
  function compare(text: string): "both" | "neither" | "beyond" | undefined {
    let file: unknown;
    try {
      file = JSON.parse(text);
    } catch (error) {
      expect(error).toBeInstanceOf(SyntaxError);
      return undefined;
    }
    const read = parseDeckFile(text);
    const isRight = isRightBySchema(file);
    const isNewer = read.ok && read.value.deck.extra !== undefined;
    if (isNewer) return undefined;
    if (read.ok) {
      expect(isRight, text).toBe(true);
      return "both";
    }
    if (BEYOND.has(read.error.code)) return "beyond";
    expect(isRight, `${read.error.code}: ${text.slice(0, 2000)}`).toBe(false);
    return "neither";
  }

  it.each(REFUSED)("agrees with the reader on %s", (_what, text) => {
    expect(compare(text)).not.toBe("both");
  });

  it("takes the files that the reader takes", () => {
    const written = STARTER_DECKS.map(formatDeckFile);
    for (const text of [...written, fileWith("")])
      expect(compare(text)).toBe("both");
    fc.assert(
      fc.property(ARBITRARY_DECK, (deck) => {
        expect(compare(formatDeckFile(deck))).toBe("both");
      }),
    );
  });

  it("agrees with the reader on a thousand damaged files", () => {
    const decks = fc.sample(ARBITRARY_DECK, { numRuns: 20, seed: 20260731 });
    const seen = { both: 0, neither: 0, beyond: 0, none: 0 };
    fc.assert(
      fc.property(mutated(decks.map(formatDeckFile)), (text) => {
        seen[compare(text) ?? "none"]++;
      }),
      { numRuns: 1000 },
    );
    expect(seen.both).toBeGreaterThan(20);
    expect(seen.neither).toBeGreaterThan(100);
  });
});
