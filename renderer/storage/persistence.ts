/** Whether the browser promises to keep this page's data, and how much there is. */

/** What the browser says about the store. */
export interface Persistence {
  /** Whether it promised not to clear the data by itself; undefined where it cannot say. */
  readonly persisted: boolean | undefined;
  /** Bytes used by this page, where the browser says. */
  readonly used: number | undefined;
}

/** Asks the browser to keep the data, and says what it answered. */
export async function askToPersist(
  storage: StorageManager | undefined = "storage" in navigator
    ? navigator.storage
    : undefined,
): Promise<Persistence> {
  if (storage === undefined) return { persisted: undefined, used: undefined };
  const persisted = (await storage.persisted()) || (await storage.persist());
  const { usage } = await storage.estimate();
  return { persisted, used: usage };
}
