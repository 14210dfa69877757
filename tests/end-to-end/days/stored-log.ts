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
import { learnerSettingsKey } from "../../../renderer/storage/learners";
import { storedRows } from "../page-store";

/** Everything that a learner's states are computed from. */
export interface Stored {
  readonly learner: string;
  /** In the order of replay, sealed blocks included. */
  readonly log: readonly Review[];
  readonly settings: LearnerSettings;
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
  const rows = await storedRows(page, [
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
  const { rounds } = await storedRows(page, ["rounds"]);
  const parsed = parseRound(field(rounds?.[0], "round"));
  if (!parsed.ok) throw new Error(`the round's ${parsed.error.field}`);
  return present(currentItem(parsed.value), "something is asked");
}
