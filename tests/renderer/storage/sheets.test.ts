import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import type { Milliseconds } from "../../../core/memory/review";
import type { KeptSheet } from "../../../core/paper/kept-sheet";
import { type CodedSheet, sheetCode } from "../../../core/paper/sheet-code";
import {
  keepSheet,
  readSheet,
  readSheets,
} from "../../../renderer/storage/sheets";
import { forgetDatabases, openTestDatabase } from "./fresh-database";

function sheet(number: number, printedAt: number): KeptSheet {
  const coded: CodedSheet = {
    kind: "cases",
    cases: [{ case: "E1", target: 8 }],
    hold: "up",
    number,
    count: 12,
    opening: "front",
  };
  return {
    ...coded,
    code: sheetCode(coded),
    deck: "some-deck",
    deckName: "Some deck",
    printedAt: printedAt as Milliseconds,
  };
}

beforeEach(forgetDatabases);

describe("printed sheets", () => {
  it("are found by their codes, the last printed first; printed again, one stays one", async () => {
    const database = await openTestDatabase();
    const [a, b] = [sheet(1, 100), sheet(2, 200)];
    for (const one of [a, b, { ...a, printedAt: 300 as Milliseconds }])
      expect(await keepSheet(database, one)).toEqual({
        ok: true,
        value: one.code,
      });
    const again = { ...a, printedAt: 300 };
    expect(await readSheets(database)).toEqual({ ok: true, value: [again, b] });
    expect(await readSheet(database, b.code)).toEqual({ ok: true, value: b });
    expect(await readSheet(database, sheet(3, 1).code)).toEqual({
      ok: true,
      value: undefined,
    });
  });

  it("that cannot be read are left out, and stay as they are", async () => {
    const database = await openTestDatabase();
    const damaged = { ...sheet(1, 100), cases: "gone" };
    await database.sheets.put({ ...damaged });
    expect(await readSheet(database, damaged.code)).toEqual({
      ok: true,
      value: undefined,
    });
    expect(await readSheets(database)).toEqual({ ok: true, value: [] });
    expect(await database.sheets.get(damaged.code)).toEqual(damaged);
  });

  it("of a closed store are not read, and it is said", async () => {
    const database = await openTestDatabase();
    database.close();
    const closed = { ok: false, error: { code: "closed" } };
    expect(await readSheet(database, sheet(1, 1).code)).toEqual(closed);
    expect(await readSheets(database)).toEqual(closed);
  });
});
