/**
 * Word between the windows of one browser: that something in the store has
 * changed. A window that hears it reads again; nothing else is passed on.
 */
import * as v from "valibot";

const NEWS_SCHEMA = v.variant("changed", [
  v.object({ changed: v.literal("learners") }),
  v.object({ changed: v.literal("decks") }),
  v.object({ changed: v.literal("learner"), id: v.string() }),
]);

/** What changed: who the learners are, the decks, or something of one learner's. */
export type News = Readonly<v.InferOutput<typeof NEWS_SCHEMA>>;

const CHANNEL = "turnwise";

let speaking: BroadcastChannel | undefined;

function channel(): BroadcastChannel | undefined {
  if (typeof BroadcastChannel === "undefined") return undefined;
  speaking ??= new BroadcastChannel(CHANNEL);
  return speaking;
}

/** Tells the other windows that something changed. */
export function tellOtherWindows(news: News): void {
  channel()?.postMessage(news);
}

/** Listens to the other windows, never to this one. Returns how to stop. */
export function hearOtherWindows(listener: (news: News) => void): () => void {
  const heard = (event: MessageEvent<unknown>) => {
    const parsed = v.safeParse(NEWS_SCHEMA, event.data);
    // A newer Turnwise may have news that this one does not know.
    if (parsed.success) listener(parsed.output);
  };
  const own = channel();
  own?.addEventListener("message", heard);
  return () => own?.removeEventListener("message", heard);
}
