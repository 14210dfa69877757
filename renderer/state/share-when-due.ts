/**
 * Sharing by itself: at the start and at a round's end, at most once on a
 * learner's day. Who shares nothing loads nothing for it.
 */
import { readSharing } from "../storage/sent-blocks";
import type { LearnerState } from "./learner.svelte";

/** Shares where it is due. Resolves with what to say of it; undefined where nothing is. */
export async function shareWhenDue(
  learner: LearnerState,
): Promise<string | undefined> {
  const { database, today, reviews } = learner;
  const settings = await readSharing(database, learner.learner.id);
  // What keeps the store from being read is told where answers are kept.
  if (!settings.ok) return undefined;
  const { part, sharedOn } = settings.value;
  if (part === "nothing" || sharedOn === today || reviews.length === 0)
    return undefined;
  const { shareByItself } = await import("./sharing/share-by-itself");
  return shareByItself(learner);
}
