import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import { FIRST_COURSE } from "../../../../core/deck/starter-decks";
import { practiseLesson } from "../../../../renderer/state/class/practise-lesson";
import { learnerSettingsKey } from "../../../../renderer/storage/learners";
import {
  readSetting,
  saveSetting,
} from "../../../../renderer/storage/settings";
import {
  forgetDatabases,
  openTestDatabase,
} from "../../storage/fresh-database";

beforeEach(forgetDatabases);

describe("a lesson's deck", () => {
  it("goes before the decks that each learner practises, once, and leaves what else they chose", async () => {
    const database = await openTestDatabase();
    const chosen = { decks: ["a", "lesson", "b"], minutes: 20, later: true };
    await saveSetting(database, learnerSettingsKey("ann"), chosen);
    const done = await practiseLesson(database, ["ann", "ben"], "lesson");
    expect(done).toEqual({ ok: true, value: undefined });
    const settingsOf = async (id: string) => {
      const read = await readSetting(database, learnerSettingsKey(id));
      return read.ok ? read.value : undefined;
    };
    expect(await settingsOf("ann")).toEqual({
      ...chosen,
      decks: ["lesson", "a", "b"],
    });
    // Who has chosen nothing yet goes on with the first course behind it.
    expect(await settingsOf("ben")).toEqual({
      decks: ["lesson", ...FIRST_COURSE.map(({ id }) => id)],
    });
    expect(await settingsOf("cam")).toBeUndefined();
  });
});
