/**
 * The names that both ends of the wire know; apart from what reads messages,
 * which the page's end needs none of.
 */

/** The one channel that messages travel on. */
export const MESSAGE_CHANNEL = "turnwise";

/** The one channel that the shell's news travels on. */
export const NEWS_CHANNEL = "turnwise-news";
