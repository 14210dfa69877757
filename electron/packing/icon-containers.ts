/**
 * The icon files of Windows and macOS, written around PNGs.
 *
 * Both formats may hold PNGs as they are, so each is a short header and the
 * pictures behind it. The packer would make them itself, but with a tool that
 * it downloads, and a checkout should pack the same icon everywhere.
 */
import { invariant, present } from "../../core/invariant";

/** A square picture. */
export interface SquarePng {
  /** The length of an edge in pixels. */
  readonly size: number;
  readonly png: Uint8Array;
}

/** The sizes that Windows looks for, in pixels; 256 is the format's largest. */
export const ICO_SIZES = [16, 24, 32, 48, 64, 128, 256] as const;

/**
 * The entries of a macOS icon: four letters and the size in pixels. A size
 * stands twice where it is also the double of a smaller one on a fine screen.
 *
 * Source: Apple's icon image format, from memory; the small entries that
 *         hold no PNG on every system (icp4, icp5) are left out.
 */
export const ICNS_ENTRIES = [
  ["ic11", 32],
  ["ic12", 64],
  ["ic07", 128],
  ["ic13", 256],
  ["ic08", 256],
  ["ic14", 512],
  ["ic09", 512],
  ["ic10", 1024],
] as const;

const ICO_HEADER_BYTES = 6;
const ICO_ENTRY_BYTES = 16;

/**
 * A Windows icon.
 *
 * Shape:  `pictures` hold at least `ICO_SIZES`.
 * Source: the ICO format (a header, one entry of 16 bytes a picture, the
 *         pictures); PNGs are read since Windows Vista.
 */
export function icoFrom(pictures: readonly SquarePng[]): Uint8Array {
  const chosen = ICO_SIZES.map((size) => pngOf(pictures, size));
  const head = new DataView(
    new ArrayBuffer(ICO_HEADER_BYTES + ICO_ENTRY_BYTES * chosen.length),
  );
  head.setUint16(2, 1, true); // an icon and not a pointer
  head.setUint16(4, chosen.length, true);
  let offset = head.byteLength;
  ICO_SIZES.forEach((size, i) => {
    const length = present(chosen[i], "each size has its picture").byteLength;
    const entry = ICO_HEADER_BYTES + ICO_ENTRY_BYTES * i;
    // One byte each for width and height, where 0 stands for 256.
    head.setUint8(entry, size % 256);
    head.setUint8(entry + 1, size % 256);
    head.setUint16(entry + 4, 1, true); // colour planes
    head.setUint16(entry + 6, 32, true); // bits a pixel
    head.setUint32(entry + 8, length, true);
    head.setUint32(entry + 12, offset, true);
    offset += length;
  });
  return joined([new Uint8Array(head.buffer), ...chosen]);
}

/**
 * A macOS icon.
 *
 * Shape:  `pictures` hold at least the sizes of `ICNS_ENTRIES`.
 * Source: Apple's icon image format (the word "icns" and the whole length,
 *         then for each picture its four letters, its length and itself).
 */
export function icnsFrom(pictures: readonly SquarePng[]): Uint8Array {
  const entries = ICNS_ENTRIES.map(([name, size]) =>
    icnsBlock(name, pngOf(pictures, size)),
  );
  return icnsBlock("icns", joined(entries));
}

function icnsBlock(name: string, content: Uint8Array): Uint8Array {
  const head = new DataView(new ArrayBuffer(8));
  [...name].forEach((letter, i) => head.setUint8(i, letter.charCodeAt(0)));
  head.setUint32(4, 8 + content.byteLength);
  return joined([new Uint8Array(head.buffer), content]);
}

function pngOf(pictures: readonly SquarePng[], size: number): Uint8Array {
  const picture = pictures.find((candidate) => candidate.size === size);
  invariant(picture !== undefined, `there is a picture of ${size} pixels`);
  return picture.png;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(
    parts.reduce((sum, part) => sum + part.byteLength, 0),
  );
  let offset = 0;
  for (const part of parts) {
    whole.set(part, offset);
    offset += part.byteLength;
  }
  return whole;
}
