import "fake-indexeddb/auto";
import { Dexie } from "dexie";
import {
  DATABASE_NAME,
  openDatabase,
  type TurnwiseDatabase,
} from "../../../renderer/storage/database";
import { windowLocks } from "./window-locks";

/** Begins with an empty browser. Windows of the test before it are closed by it. */
export async function forgetDatabases(): Promise<void> {
  await Dexie.delete(DATABASE_NAME);
}

/** Opens the database, as the only window of a browser. */
export async function openTestDatabase(): Promise<TurnwiseDatabase> {
  const opened = await openDatabase({}, windowLocks());
  if (!opened.ok)
    throw new Error(`the store did not open: ${opened.error.code}`);
  return opened.value;
}
