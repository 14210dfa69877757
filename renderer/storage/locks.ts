/**
 * Who is practising: one window for each learner, kept by the browser's own
 * locks, which a crashed window cannot keep.
 */
import * as v from "valibot";
import type { Milliseconds } from "../../core/memory/review";
import { ok, type Result } from "../../core/result";
import { type Locks, webLocks } from "../platform/web-locks";
import type { TurnwiseDatabase } from "./database";
import { readSetting, saveSetting } from "./settings";
import type { StorageError } from "./storage-error";

/** Whether this window may practise, or since when another one does. */
export type PracticeLock =
  | {
      readonly held: true;
      /** Gives the lock back; resolves once it is free. */
      readonly release: () => Promise<void>;
    }
  | {
      readonly held: false;
      /** When the other window began, where it could still say so. */
      readonly since: Milliseconds | undefined;
    };

const HOLDER_SCHEMA = v.object({ since: v.pipe(v.number(), v.finite()) });

/** The lock's name, and the key under which its holder leaves word. */
export function practiceLockName(learner: string): string {
  return `practice:${learner}`;
}

/** Takes a lock where it is free. Resolves with how to release it, or with undefined where another window has it. */
export function takeIfFree(
  locks: Locks,
  name: string,
): Promise<(() => Promise<void>) | undefined> {
  return new Promise((resolve, reject) => {
    const done = locks.request(name, { ifAvailable: true }, (lock) => {
      if (lock === null) {
        resolve(undefined);
        return undefined;
      }
      return new Promise<void>((free) => {
        resolve(async () => {
          free();
          await done;
        });
      });
    });
    done.catch(reject);
  });
}

/**
 * Takes the lock `practice:<learner>` where it is free. The holder leaves
 * word since when it practises; the word is only read while somebody holds
 * the lock, so that of a crashed window misleads nobody.
 *
 * A browser without Web Locks cannot keep two windows apart: it always holds.
 */
export async function takePracticeLock(
  database: TurnwiseDatabase,
  learner: string,
  now: Milliseconds,
  locks: Locks | undefined = webLocks(),
): Promise<Result<PracticeLock, StorageError>> {
  const release =
    locks === undefined
      ? () => Promise.resolve()
      : await takeIfFree(locks, practiceLockName(learner));
  if (release !== undefined) {
    const saved = await saveSetting(database, practiceLockName(learner), {
      since: now,
    });
    if (saved.ok) return ok({ held: true, release });
    await release();
    return saved;
  }
  const holder = await readSetting(database, practiceLockName(learner));
  if (!holder.ok) return holder;
  const parsed = v.safeParse(HOLDER_SCHEMA, holder.value);
  return ok({
    held: false,
    since: parsed.success ? (parsed.output.since as Milliseconds) : undefined,
  });
}
