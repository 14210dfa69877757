import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { parseDeckFile } from "../../../core/deck/deck-file";

it("the deck that README shows can be read", () => {
  const [, text = ""] =
    /```json\n(.*?)```/s.exec(readFileSync("README.md", "utf8")) ?? [];
  const read = parseDeckFile(text);
  expect(read).toMatchObject({ ok: true, value: { unknownCases: [] } });
  expect(read.ok && read.value.deck.cases).toHaveLength(4);
});
