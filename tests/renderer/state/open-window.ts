/** A window of the app over a fresh store, for tests of what it knows. */
import { beforeEach } from "vitest";
import {
  type AppState,
  openApp,
} from "../../../renderer/state/app-state.svelte";
import { forgetDatabases } from "../storage/fresh-database";
import { windowLocks } from "../storage/window-locks";

/** Begins every test of a file with an empty browser, which has one set of locks. */
export function beginEmpty(): void {
  beforeEach(async () => {
    await forgetDatabases();
    Object.defineProperty(navigator, "locks", {
      configurable: true,
      value: windowLocks(),
    });
  });
}

/** Opens the app, as a window does. */
export async function openWindow(): Promise<AppState> {
  const opened = await openApp();
  if (!opened.ok) throw new Error(opened.error.code);
  return opened.value;
}

/** The names of the learners on the machine, oldest first. */
export function names(app: AppState): readonly string[] {
  return app.learners.map(({ name }) => name);
}
