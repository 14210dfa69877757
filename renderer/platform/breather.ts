/**
 * Breaks in long work of the window's own thread, so that it goes on drawing
 * and listening. Streams alone do not make them: reading 18 MB of a file held
 * the thread for 1.1 s.
 */
import { runningTime } from "./clock";

/** How long work goes on before a break. Units: milliseconds. */
const AT_A_STRETCH = 10;

/** Gives what is to be awaited between pieces of work: a break where it is time for one. */
export function breather(): () => Promise<void> {
  let since = runningTime();
  return async () => {
    if (runningTime() - since < AT_A_STRETCH) return;
    await new Promise((resolve) => setTimeout(resolve));
    since = runningTime();
  };
}
