/**
 * A store for somebody of whom nothing is kept: a database of its own, with the
 * shape of the other, so that a guest practises like anybody else. It goes when
 * they leave; where the window was closed or killed under them, at the next
 * start of any window.
 *
 * Everything of a guest is written there and nothing elsewhere, so that nothing
 * has to remember not to write. The lock of the same name says that a window
 * still has it.
 */
import { Dexie } from "dexie";
import { ok, type Result } from "../../core/result";
import { type Locks, webLocks } from "../platform/web-locks";
import { openDatabase, type TurnwiseDatabase } from "./database";
import { takeIfFree } from "./locks";
import { type StorageError, tryWriting } from "./storage-error";

/** What the names of such databases begin with. */
const GUEST = "turnwise-guest-";

/** The store of one guest. */
export interface GuestStore {
  readonly database: TurnwiseDatabase;
  /** Deletes it. Later writes to it fail. */
  readonly leave: () => Promise<Result<void, StorageError>>;
}

/** Opens a store for a guest. `id` is theirs, and new. */
export async function openGuestStore(
  id: string,
  locks: Locks | undefined = webLocks(),
): Promise<Result<GuestStore, StorageError>> {
  const name = `${GUEST}${id}`;
  const release = locks && (await takeIfFree(locks, name));
  const opened = await openDatabase({}, locks, name);
  if (!opened.ok) {
    await release?.();
    return opened;
  }
  const database = opened.value;
  const leave = async () => {
    database.close();
    const deleted = await tryWriting(() => Dexie.delete(name));
    await release?.();
    return deleted;
  };
  return ok({ database, leave });
}

/** Deletes what guests left whose window is gone. Resolves with how many there were. */
export function clearGuestStores(
  locks: Locks | undefined = webLocks(),
): Promise<Result<number, StorageError>> {
  return tryWriting(async () => {
    const all = await indexedDB.databases();
    const left = all.flatMap(({ name }) =>
      name?.startsWith(GUEST) === true ? [name] : [],
    );
    let deleted = 0;
    for (const name of left) {
      const release =
        locks === undefined ? async () => {} : await takeIfFree(locks, name);
      if (release === undefined) continue;
      await Dexie.delete(name);
      await release();
      deleted += 1;
    }
    return deleted;
  });
}
