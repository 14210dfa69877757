/**
 * What a place puts at the right end of the top bar: the deck's name, or, on
 * a narrow window, the marks of the round. The place says it, the frame shows
 * it, and it goes when the place goes.
 */
import { createContext, type Snippet } from "svelte";

/** The frame's right end. `content` is a snippet of the place that is shown. */
export interface TopBarAside {
  content: Snippet | undefined;
}

/** The frame's own end, read by places and set by the frame. */
export const [getTopBarAside, setTopBarAside] = createContext<TopBarAside>();
