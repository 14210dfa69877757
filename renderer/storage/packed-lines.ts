/**
 * Reading a packed file of lines: a stream with a limit on what goes in and one
 * on what comes out, so that a small file which unpacks without end is refused
 * early. A file that some system has unpacked already is read as it is.
 */
import { err, type Result } from "../../core/result";
import { breather } from "../platform/breather";

/** Why a file's lines could not be read, whatever they say. */
export type PackedFileError =
  /** Units: bytes, of the file itself and of what it unpacks to. */
  | { readonly code: "packed-too-large"; readonly limit: number }
  | { readonly code: "unpacked-too-large"; readonly limit: number }
  /** Begins as gzip and cannot be unpacked: damaged, or cut off. */
  | { readonly code: "bad-gzip" }
  /** Not text as Unicode writes it. */
  | { readonly code: "not-text"; readonly line: number }
  /** The system did not give the file. */
  | { readonly code: "file-not-read"; readonly reason: string };

/** How large a file may be. Units: bytes. */
export interface PackedFileLimits {
  readonly packed: number;
  readonly unpacked: number;
}

/** Reads lines piece by piece, and says at the end what they made or what is wrong. */
export interface LineReader<T, E> {
  /** The line that is being read, counted from 1. */
  readonly line: number;
  push(text: string): Result<void, E>;
  finish(): Result<T, E>;
}

type Bytes = Uint8Array<ArrayBuffer>;

/**
 * So much of the file is unpacked at once. Deflate makes at most 1032 bytes of
 * one (zlib's own documentation), so 17 MB come out at most before they are
 * counted.
 */
const SLICE = 16_384;

/** The file in slices, and what went wrong with it, if anything did. */
interface SlicedFile {
  readonly slices: ReadableStream<Bytes>;
  readonly isGzip: boolean;
  /** Asks for no more of the file: its slices end. */
  readonly giveUp: () => Promise<void>;
  trouble: PackedFileError | undefined;
}

async function sliced(
  file: ReadableStream<Bytes>,
  limit: number,
): Promise<SlicedFile> {
  const reader = file.getReader();
  let size = 0;
  let rest: Bytes = new Uint8Array(0);
  /** Adds the next piece to the rest; says whether there was one. */
  const readOn = async (): Promise<boolean> => {
    if (self.trouble !== undefined) return false;
    try {
      const { done, value } = await reader.read();
      if (done) return false;
      size += value.length;
      const joined = new Uint8Array(rest.length + value.length);
      joined.set(rest);
      joined.set(value, rest.length);
      rest = joined;
    } catch (thrown) {
      const reason = thrown instanceof Error ? thrown.name : "unknown";
      self.trouble = { code: "file-not-read", reason };
      return false;
    }
    if (size <= limit) return true;
    self.trouble = { code: "packed-too-large", limit };
    return false;
  };
  const slices = new ReadableStream<Bytes>(
    {
      async pull(controller) {
        while (rest.length === 0)
          if (!(await readOn())) {
            if (self.trouble === undefined) controller.close();
            else controller.error(new Error(self.trouble.code));
            return;
          }
        controller.enqueue(rest.slice(0, SLICE));
        rest = rest.subarray(SLICE);
      },
    },
    { highWaterMark: 0 },
  );
  const self: SlicedFile = {
    slices,
    isGzip: false,
    // A file that failed already says so again.
    giveUp: () => reader.cancel().catch(() => undefined),
    trouble: undefined,
  };
  while (rest.length < 2 && (await readOn()));
  // Source: RFC 1952, the two bytes by which gzip is known.
  return Object.assign(self, { isGzip: rest[0] === 0x1f && rest[1] === 0x8b });
}

/**
 * The slices, unpacked. Fed one by one, each when the one before it is through:
 * a pipe would hand the unpacker of Node 20 thousands ahead of the reader.
 */
function unzipped(slices: ReadableStream<Bytes>): ReadableStream<Bytes> {
  const gzip = new DecompressionStream("gzip");
  const reader = slices.getReader();
  const writer = gzip.writable.getWriter();
  const feed = async () => {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return writer.close();
      await writer.write(value);
    }
  };
  // Whatever fails here fails the unpacked side too, where it is reported.
  feed().catch((thrown: unknown) =>
    writer.abort(thrown).catch(() => undefined),
  );
  return gzip.readable;
}

/** The text in some bytes, or undefined where they are none. No bytes end it. */
function textOf(decoder: TextDecoder, bytes?: Bytes): string | undefined {
  try {
    return decoder.decode(bytes, { stream: bytes !== undefined });
  } catch (thrown) {
    if (thrown instanceof TypeError) return undefined;
    throw thrown;
  }
}

/**
 * Reads a file's lines, to its end or to the first thing that is wrong.
 *
 * Errors: those of the lines, with the line where it is known; the rest of the
 *         file is not read.
 */
export async function readPackedLines<T, E>(
  file: ReadableStream<Bytes>,
  limits: PackedFileLimits,
  lines: LineReader<T, E>,
): Promise<Result<T, E | PackedFileError>> {
  const source = await sliced(file, limits.packed);
  const bytes = source.isGzip ? unzipped(source.slices) : source.slices;
  const reader = bytes.getReader();
  const decoder = new TextDecoder("utf-8", { fatal: true });
  const breathe = breather();
  let size = 0;
  const refuse = async (error: E | PackedFileError) => {
    // Not the unpacked side: Node 20 hands a side that was cancelled the piece
    // it was about to give, and fails where nobody can catch it.
    await source.giveUp();
    return err(source.trouble ?? error);
  };
  for (;;) {
    let piece: ReadableStreamReadResult<Bytes>;
    try {
      piece = await reader.read();
    } catch {
      return refuse({ code: "bad-gzip" });
    }
    size += piece.value?.length ?? 0;
    if (size > limits.unpacked)
      return refuse({ code: "unpacked-too-large", limit: limits.unpacked });
    const text = textOf(decoder, piece.value);
    if (text === undefined)
      return refuse({ code: "not-text", line: lines.line });
    const pushed = lines.push(text);
    if (!pushed.ok) return refuse(pushed.error);
    if (piece.done) return lines.finish();
    await breathe();
  }
}
