/** What the page has stored, read from outside and believed only once it is parsed. */
import type { Page } from "@playwright/test";
import { present } from "../../../core/invariant";
import type { Review } from "../../../core/memory/review";
import { parseReview } from "../../../core/memory/review-schema";
import { currentItem, type RoundItem } from "../../../core/memory/round";
import { parseRound } from "../../../core/memory/round-schema";
import { inReplayOrder } from "../../../core/memory/schedule";
import {
  type LearnerSettings,
  parseLearnerSettings,
} from "../../../renderer/state/learner-settings";
import { DATABASE_NAME } from "../../../renderer/storage/database";
import { learnerSettingsKey } from "../../../renderer/storage/learners";

/** Everything that a learner's states are computed from. */
export interface Stored {
  readonly learner: string;
  /** In the order of replay, sealed blocks included. */
  readonly log: readonly Review[];
  readonly settings: LearnerSettings;
}

async function rowsOf(
  page: Page,
  stores: readonly string[],
): Promise<Readonly<Record<string, readonly unknown[]>>> {
  return page.evaluate(
    async ({ name, stores }) => {
      const done = <T>(request: IDBRequest<T>) =>
        new Promise<T>((resolve, reject) => {
          request.onsuccess = () => resolve(request.result);
          request.onerror = () => reject(new Error(request.error?.name));
        });
      const database = await done(indexedDB.open(name));
      const reading = database.transaction(stores);
      const rows: Record<string, unknown[]> = {};
      for (const store of stores)
        rows[store] = await done<unknown[]>(
          reading.objectStore(store).getAll(),
        );
      database.close();
      return rows;
    },
    { name: DATABASE_NAME, stores: [...stores] },
  );
}

function field(row: unknown, name: string): unknown {
  return Reflect.get(Object(row), name);
}

function reviewIn(row: unknown): Review {
  const parsed = parseReview(row);
  if (!parsed.ok)
    throw new Error(`${parsed.error.field}: ${JSON.stringify(row)}`);
  return parsed.value;
}

/** Reads the only learner's log and settings. */
export async function readStored(page: Page): Promise<Stored> {
  const rows = await rowsOf(page, [
    "learners",
    "reviews",
    "blocks",
    "settings",
  ]);
  const learner = String(field(rows["learners"]?.[0], "id"));
  const sealed = (rows["blocks"] ?? []).flatMap((block) => {
    const reviews = field(block, "reviews");
    return Array.isArray(reviews) ? (reviews as unknown[]) : [];
  });
  const own = rows["settings"]?.find(
    (row) => field(row, "key") === learnerSettingsKey(learner),
  );
  return {
    learner,
    log: inReplayOrder([...sealed, ...(rows["reviews"] ?? [])].map(reviewIn)),
    settings: parseLearnerSettings(field(own, "value")),
  };
}

/** What is asked now, as the round under way is stored before it is shown. */
export async function storedItem(page: Page): Promise<RoundItem> {
  const { rounds } = await rowsOf(page, ["rounds"]);
  const parsed = parseRound(field(rounds?.[0], "round"));
  if (!parsed.ok) throw new Error(`the round's ${parsed.error.field}`);
  return present(currentItem(parsed.value), "something is asked");
}
