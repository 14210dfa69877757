/**
 * What can go wrong with the store, as codes. The library and the browser
 * throw; everything is caught at this folder's functions and named here, so
 * that nobody above ever looks at an exception.
 */
import { err, ok, type Result } from "../../core/result";

/** Why the store did not do what it was asked. */
export type StorageError =
  /** The browser gives this page no store. */
  | { readonly code: "unavailable"; readonly reason: string }
  /** The disk or this page's share of it is full. */
  | { readonly code: "full" }
  /** A newer Turnwise wrote this data. */
  | { readonly code: "newer-version"; readonly version: number }
  /** The store was closed: a newer window took over, or the browser cleared it. */
  | { readonly code: "closed" }
  /** Anything else while writing; nothing was written. */
  | { readonly code: "not-written"; readonly reason: string }
  /** Anything else while opening or reading. */
  | { readonly code: "not-read"; readonly reason: string }
  /** The learner whose answer it is has been deleted. */
  | { readonly code: "learner-gone" };

/** What the store was asked to do. */
type StorageDeed = "read" | "write";

function nameOf(thrown: unknown): string {
  if (thrown instanceof Error) return thrown.name;
  // A DOMException is no Error in every environment.
  if (typeof thrown === "object" && thrown !== null && "name" in thrown)
    return String(thrown.name);
  return "unknown";
}

/** Shape: the library keeps what the browser threw in `inner`. */
function namesOf(thrown: unknown): readonly string[] {
  const inner =
    typeof thrown === "object" && thrown !== null && "inner" in thrown
      ? thrown.inner
      : undefined;
  return inner === undefined
    ? [nameOf(thrown)]
    : [nameOf(thrown), nameOf(inner)];
}

/** The code for something thrown by the library or the browser. */
export function storageErrorFrom(
  thrown: unknown,
  deed: StorageDeed,
): StorageError {
  const names = namesOf(thrown);
  const has = (...wanted: readonly string[]) =>
    wanted.some((name) => names.includes(name));
  const reason = names[names.length - 1] ?? "unknown";
  if (has("QuotaExceededError")) return { code: "full" };
  if (has("DatabaseClosedError", "InvalidStateError"))
    return { code: "closed" };
  if (has("MissingAPIError", "SecurityError", "OpenFailedError"))
    return { code: "unavailable", reason };
  return { code: deed === "read" ? "not-read" : "not-written", reason };
}

async function tryStorage<T>(
  deed: StorageDeed,
  run: () => PromiseLike<T>,
): Promise<Result<T, StorageError>> {
  try {
    return ok(await run());
  } catch (thrown) {
    return err(storageErrorFrom(thrown, deed));
  }
}

/** Reads something from the store and says how it went. */
export function tryReading<T>(
  run: () => PromiseLike<T>,
): Promise<Result<T, StorageError>> {
  return tryStorage("read", run);
}

/** Writes something to the store and says how it went. */
export function tryWriting<T>(
  run: () => PromiseLike<T>,
): Promise<Result<T, StorageError>> {
  return tryStorage("write", run);
}
