import { gunzipSync, gzipSync } from "node:zlib";
import type { BackupContents } from "../../../core/backup/backup-reader";
import type { TurnwiseDatabase } from "../../../renderer/storage/database";
import { readBackup } from "../../../renderer/storage/read-backup";
import { writeBackup } from "../../../renderer/storage/write-backup";

type Bytes = Uint8Array<ArrayBuffer>;

/** A file's bytes as a stream, and how many of them were asked for. */
export function streamOf(
  bytes: Bytes,
  piece = 1000,
): { readonly stream: ReadableStream<Bytes>; readonly asked: () => number } {
  let at = 0;
  const stream = new ReadableStream<Bytes>(
    {
      pull(controller) {
        if (at >= bytes.length) controller.close();
        else controller.enqueue(bytes.slice(at, at + piece));
        at = Math.min(bytes.length, at + piece);
      },
    },
    { highWaterMark: 0 },
  );
  return { stream, asked: () => at };
}

/** Text under gzip. */
export function packed(text: string | Bytes): Bytes {
  return new Uint8Array(gzipSync(text));
}

/** Everything in the store, as a backup's bytes. */
export async function backedUp(
  database: TurnwiseDatabase,
  learner?: string,
): Promise<Bytes> {
  const written = await writeBackup(
    database,
    learner === undefined ? { madeAt: 5 } : { madeAt: 5, learner },
  );
  if (!written.ok) throw new Error(written.error.code);
  return new Uint8Array(await written.value.file.arrayBuffer());
}

/** A backup's bytes, read. */
export async function contentsOf(bytes: Bytes): Promise<BackupContents> {
  const read = await readBackup(streamOf(bytes).stream);
  if (!read.ok) throw new Error(read.error.code);
  return read.value;
}

/** A backup's lines. */
export function linesOf(bytes: Bytes): readonly string[] {
  return gunzipSync(bytes).toString("utf8").trimEnd().split("\n");
}

/** Every row of every table. */
export async function dumpOf(
  database: TurnwiseDatabase,
): Promise<Readonly<Record<string, readonly unknown[]>>> {
  const tables = database.tables.map(async (table) => {
    const rows: readonly unknown[] = await table.toArray();
    return [table.name, rows] as const;
  });
  return Object.fromEntries(await Promise.all(tables));
}
