import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import {
  keepUsedPaper,
  usedPaper,
} from "../../../../renderer/state/sheets/used-paper";
import { saveSetting } from "../../../../renderer/storage/settings";
import {
  forgetDatabases,
  openTestDatabase,
} from "../../storage/fresh-database";

beforeEach(forgetDatabases);

describe("the paper that was printed on", () => {
  it("is kept for the next sheet, and nobody's before the first", async () => {
    const database = await openTestDatabase();
    expect(await usedPaper(database)).toEqual({ ok: true, value: undefined });
    await keepUsedPaper(database, "letter");
    expect(await usedPaper(database)).toEqual({ ok: true, value: "letter" });
  });

  it("is forgotten where this version does not know it", async () => {
    const database = await openTestDatabase();
    await saveSetting(database, "paper", "a9");
    expect(await usedPaper(database)).toEqual({ ok: true, value: undefined });
  });
});
