/**
 * Files that the system gives the app, before and after there is a window: by
 * the command line, by a second start, and by macOS's own event.
 */
import { deckFilesIn, type DeckInbox } from "./deck-files";

/** As much of Electron's `app` as being given files needs. */
interface GivenApp {
  on(
    event: "open-file",
    listener: (event: { preventDefault(): void }, path: string) => void,
  ): unknown;
  on(
    event: "second-instance",
    listener: (
      event: unknown,
      words: readonly string[],
      folder: string,
    ) => void,
  ): unknown;
}

/** How the app was started. */
export interface Start {
  readonly words: readonly string[];
  readonly folder: string;
}

/**
 * Puts every deck file that the system gives into the inbox. To be called
 * before the app is ready: macOS's event for the first file comes that early.
 */
export function takeGivenFiles(
  app: GivenApp,
  inbox: DeckInbox,
  start: Start,
  toFront: () => void,
): void {
  app.on("open-file", (event, path) => {
    event.preventDefault();
    inbox.add([path]);
  });
  app.on("second-instance", (_event, words, folder) => {
    toFront();
    inbox.add(deckFilesIn(words, folder));
  });
  inbox.add(deckFilesIn(start.words, start.folder));
}
