import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import {
  openRoundsOf,
  removeRound,
  type RoundRow,
  saveRound,
} from "../../../renderer/storage/rounds";
import { forgetDatabases, openTestDatabase } from "./fresh-database";

const row = (savedAt: number, learner = "ann"): RoundRow => ({
  id: crypto.randomUUID(),
  learner,
  savedAt,
  round: { queue: [1, 2] },
  desk: { step: savedAt },
});

beforeEach(forgetDatabases);

describe("the round a learner is in", () => {
  it("comes back as it was saved last", async () => {
    const database = await openTestDatabase();
    const round = row(1);
    await saveRound(database, round);
    await saveRound(database, { ...round, savedAt: 2, desk: { step: 2 } });
    await saveRound(database, row(9, "ben"));
    expect(await openRoundsOf(database, "ann")).toEqual({
      ok: true,
      value: {
        rows: [{ ...round, savedAt: 2, desk: { step: 2 } }],
        damaged: [],
      },
    });
  });

  it("is gone once it is over", async () => {
    const database = await openTestDatabase();
    const round = row(1);
    await saveRound(database, round);
    await removeRound(database, round.id);
    expect(await openRoundsOf(database, "ann")).toEqual({
      ok: true,
      value: { rows: [], damaged: [] },
    });
  });

  it("that cannot be read is reported, and stays where it is", async () => {
    const database = await openTestDatabase();
    await database.rounds.put({ id: "r", learner: "ann", savedAt: "later" });
    expect(await openRoundsOf(database, "ann")).toEqual({
      ok: true,
      value: {
        rows: [],
        damaged: [{ table: "rounds", key: "r", field: "id" }],
      },
    });
    expect(await database.rounds.count()).toBe(1);
  });
});
