import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import {
  ICNS_ENTRIES,
  icnsFrom,
  ICO_SIZES,
  icoFrom,
} from "../../../electron/packing/icon-containers";

const FOLDER = join(import.meta.dirname, "../../../electron/packing");

function committedPng(size: number): Buffer {
  return readFileSync(join(FOLDER, "icons", `${size}x${size}.png`));
}

/** The width and height that a PNG gives for itself. */
function pngEdges(png: Buffer): readonly [number, number] {
  // Source: the PNG specification: signature, then IHDR with both edges.
  expect(png.subarray(0, 8).toString("latin1")).toBe("\x89PNG\r\n\x1a\n");
  expect(png.subarray(12, 16).toString("latin1")).toBe("IHDR");
  return [png.readUInt32BE(16), png.readUInt32BE(20)];
}

describe("the committed pictures", () => {
  it("are as large as their names say", () => {
    const names = readdirSync(join(FOLDER, "icons"));
    expect(names).toHaveLength(9);
    for (const name of names) {
      const edges = pngEdges(readFileSync(join(FOLDER, "icons", name)));
      expect(`${edges[0]}x${edges[1]}.png`).toBe(name);
    }
  });
});

describe("the committed Windows icon", () => {
  const icon = readFileSync(join(FOLDER, "icon.ico"));

  // Source: the ICO format: ICONDIR and ICONDIRENTRY.
  it("holds every size's committed picture where its entry says", () => {
    expect([icon.readUInt16LE(0), icon.readUInt16LE(2)]).toEqual([0, 1]);
    expect(icon.readUInt16LE(4)).toBe(ICO_SIZES.length);
    ICO_SIZES.forEach((size, i) => {
      const entry = icon.subarray(6 + 16 * i, 22 + 16 * i);
      expect([entry[0], entry[1]]).toEqual([size % 256, size % 256]);
      const offset = entry.readUInt32LE(12);
      const picture = icon.subarray(offset, offset + entry.readUInt32LE(8));
      expect(picture.equals(committedPng(size))).toBe(true);
    });
  });
});

describe("the committed macOS icon", () => {
  const icon = readFileSync(join(FOLDER, "icon.icns"));

  it("holds every size's committed picture under its four letters", () => {
    expect(icon.subarray(0, 4).toString("latin1")).toBe("icns");
    expect(icon.readUInt32BE(4)).toBe(icon.byteLength);
    let offset = 8;
    for (const [name, size] of ICNS_ENTRIES) {
      expect(icon.subarray(offset, offset + 4).toString("latin1")).toBe(name);
      const end = offset + icon.readUInt32BE(offset + 4);
      const picture = icon.subarray(offset + 8, end);
      expect(picture.equals(committedPng(size))).toBe(true);
      offset = end;
    }
    expect(offset).toBe(icon.byteLength);
  });
});

describe("an icon file", () => {
  it("is refused where a size has no picture", () => {
    const pictures = [{ size: 16, png: new Uint8Array(1) }];
    expect(() => icoFrom(pictures)).toThrow("24 pixels");
    expect(() => icnsFrom(pictures)).toThrow("32 pixels");
  });
});
