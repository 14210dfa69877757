// @vitest-environment node
import { describe, expect, it, vi } from "vitest";
import { answersOf, ANN, sampleLines } from "../../core/backup/sample-backup";
import {
  BACKUP_FILE_LIMITS,
  type BackupFileLimits,
  readBackup,
} from "../../../renderer/storage/read-backup";
import { packed, streamOf } from "./backup-files";

const TEXT = `${sampleLines().join("\n")}\n`;
const HEADER = sampleLines()[0] ?? "";

function read(
  bytes: Uint8Array<ArrayBuffer>,
  limits: Partial<BackupFileLimits> = {},
) {
  return readBackup(streamOf(bytes).stream, {
    ...BACKUP_FILE_LIMITS,
    ...limits,
  });
}

const utf8 = (text: string) => new Uint8Array(new TextEncoder().encode(text));

describe("a file", () => {
  it("is read as a backup, packed or already unpacked by the system", async () => {
    const whole = await read(packed(TEXT));
    expect(whole.ok && whole.value.reviews.size).toBe(3);
    expect(await read(utf8(TEXT))).toEqual(whole);
  });

  it("is read alike in pieces of any size", async () => {
    const whole = await read(packed(TEXT));
    for (const piece of [1, 2, 7, 100_000])
      expect(await readBackup(streamOf(packed(TEXT), piece).stream)).toEqual(
        whole,
      );
  });

  it("that is empty, text, or of another kind is no backup", async () => {
    for (const bytes of [
      utf8(""),
      utf8("{"),
      utf8("hello\n"),
      packed(""),
      packed('{"turnwise":"deck"}\n'),
    ])
      expect(await read(bytes)).toEqual({
        ok: false,
        error: { code: "not-a-backup" },
      });
  });

  it("cut off or changed anywhere within its packing is refused", async () => {
    const bytes = packed(TEXT);
    for (let length = 2; length < bytes.length; length += 7)
      expect(await read(bytes.slice(0, length))).toEqual({
        ok: false,
        error: { code: "bad-gzip" },
      });
    const changed = bytes.slice();
    // The checksum: the last eight bytes but four (RFC 1952).
    changed[bytes.length - 6] = (changed[bytes.length - 6] ?? 0) ^ 1;
    expect(await read(changed)).toEqual({
      ok: false,
      error: { code: "bad-gzip" },
    });
  });

  it("that is not Unicode text is refused with the line", async () => {
    const latin = new Uint8Array(Buffer.from(`${HEADER}\n\xe9\n`, "latin1"));
    for (const bytes of [latin, packed(latin)])
      expect(await read(bytes)).toEqual({
        ok: false,
        error: { code: "not-text", line: expect.any(Number) as number },
      });
  });

  it("with an error in a line says which", async () => {
    expect(await read(packed(`${HEADER}\n{\n`))).toEqual({
      ok: false,
      error: { code: "line-not-json", line: 2 },
    });
    expect(await read(packed(`${HEADER}\n`))).toEqual({
      ok: false,
      error: { code: "truncated", line: 2 },
    });
  });

  it("larger than the limit is refused before it is read to its end", async () => {
    const noise = utf8(`${HEADER}\n${"{}\n".repeat(100_000)}`);
    const { stream, asked } = streamOf(noise);
    const limits = { ...BACKUP_FILE_LIMITS, packed: 5000 };
    expect(await readBackup(stream, limits)).toMatchObject({ ok: false });
    expect(asked()).toBeLessThan(10_000);
    const reviews = answersOf(ANN, 200).map((review) =>
      JSON.stringify({ review }),
    );
    for (const bytes of [packed, utf8].map((to) =>
      to([HEADER, ...reviews].join("\n")),
    ))
      expect(await read(bytes, { packed: 1000 })).toEqual({
        ok: false,
        error: { code: "packed-too-large", limit: 1000 },
      });
  });

  it("that unpacks without end is refused without unpacking it", async () => {
    const review = JSON.stringify({ review: answersOf(ANN, 1)[0] });
    // 60 MB of one answer, the same again and again: valid line by line.
    const endless = packed(
      `${HEADER}\n${`${review}\n`.repeat(60_000_000 / review.length)}`,
    );
    const { stream, asked } = streamOf(endless, 100);
    const unpacked = 1_000_000;
    expect(
      await readBackup(stream, { ...BACKUP_FILE_LIMITS, unpacked }),
    ).toEqual({
      ok: false,
      error: { code: "unpacked-too-large", limit: unpacked },
    });
    expect(asked()).toBeLessThan(endless.length / 2);
  });

  it("that unpacks to zeros without end is refused after a line's length", async () => {
    const zeros = packed(new Uint8Array(50_000_000));
    const { stream, asked } = streamOf(zeros, 100);
    expect(await readBackup(stream)).toEqual({
      ok: false,
      error: { code: "not-a-backup" },
    });
    expect(asked()).toBeLessThan(zeros.length / 2);
  });

  it("that is given up while more lies unpacked fails nowhere else", async () => {
    const clock = vi.spyOn(performance, "now");
    // Every piece is followed by a break, in which the unpacker gets ahead.
    let time = 0;
    clock.mockImplementation(() => (time += 1000));
    const failed = vi.fn();
    process.on("uncaughtException", failed);
    try {
      const zeros = packed(new Uint8Array(50_000_000));
      expect(await readBackup(streamOf(zeros).stream)).toMatchObject({
        ok: false,
      });
      await new Promise((resolve) => setImmediate(resolve));
    } finally {
      process.off("uncaughtException", failed);
      clock.mockRestore();
    }
    expect(failed).not.toHaveBeenCalled();
  });

  it("that the system stops giving is an error with its name", async () => {
    const failing = (first: Uint8Array<ArrayBuffer>) => {
      let pulls = 0;
      return new ReadableStream<Uint8Array<ArrayBuffer>>({
        pull(controller) {
          pulls += 1;
          if (pulls === 1) controller.enqueue(first);
          else controller.error(new DOMException("…", "NotReadableError"));
        },
      });
    };
    for (const first of [packed(TEXT).slice(0, 50), utf8(HEADER)])
      expect(await readBackup(failing(first))).toEqual({
        ok: false,
        error: { code: "file-not-read", reason: "NotReadableError" },
      });
  });
});
