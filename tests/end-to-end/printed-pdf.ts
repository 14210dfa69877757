/**
 * A printed PDF as tests see it: its pages' sizes, its text, and each page as
 * a picture.
 *
 * Read by pdfjs-dist (Mozilla's reader), which is here for these tests alone:
 * in Node for text, in a blank window of the tested browser for pictures,
 * because it draws on a canvas. Nothing of it is part of the app.
 */
import type { BrowserContext } from "@playwright/test";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

/** A page as it can be read. */
export interface ReadPage {
  /** Units: millimetres. */
  readonly width: number;
  readonly height: number;
  /** Its text as it is selected, spaces made single. */
  readonly text: string;
}

/** A page as it is seen. */
export interface SeenPage {
  /** How much of it is not white, 0 to 1. */
  readonly ink: number;
  /** How much of it has a colour rather than a grey, 0 to 1. */
  readonly colour: number;
  /** What the ink takes up. Units: millimetres from the page's upper left corner. */
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const MM_PER_POINT = 25.4 / 72;

/** The pages of a PDF with their text. */
export async function readPdf(pdf: Uint8Array): Promise<readonly ReadPage[]> {
  // The reader takes the bytes over: it gets a copy.
  const task = getDocument({ data: new Uint8Array(pdf), verbosity: 0 });
  const document = await task.promise;
  const pages: ReadPage[] = [];
  for (let n = 1; n <= document.numPages; n++) {
    const page = await document.getPage(n);
    const { width, height } = page.getViewport({ scale: 1 });
    const { items } = await page.getTextContent();
    const text = items.map((item) => ("str" in item ? item.str : "")).join(" ");
    pages.push({
      width: width * MM_PER_POINT,
      height: height * MM_PER_POINT,
      text: text.replace(/\s+/g, " ").trim(),
    });
  }
  await task.destroy();
  return pages;
}

const READER = join(
  import.meta.dirname,
  "../../node_modules/pdfjs-dist/legacy/build",
);

/** An address that exists in the tested browser only. */
const HOST = "https://reader.invalid";

/** Draws every page at 96 dots to the inch and looks at its dots. */
export async function seePdf(
  context: BrowserContext,
  pdf: Uint8Array,
): Promise<readonly SeenPage[]> {
  const window = await context.newPage();
  await window.route(`${HOST}/**`, async (route) => {
    const name = new URL(route.request().url()).pathname.slice(1);
    if (name === "")
      await route.fulfill({
        contentType: "text/html",
        body: "<!doctype html><link rel=icon href=data:,>",
      });
    else
      await route.fulfill({
        contentType: "text/javascript",
        body: await readFile(join(READER, name)),
      });
  });
  await window.goto(`${HOST}/`);
  const seen = await window.evaluate(
    async ({ host, base64 }) => {
      interface Reader {
        readonly GlobalWorkerOptions: { workerSrc: string };
        getDocument(from: object): {
          readonly promise: Promise<{
            readonly numPages: number;
            getPage(n: number): Promise<{
              getViewport(how: { scale: number }): {
                readonly width: number;
                readonly height: number;
              };
              render(on: object): { readonly promise: Promise<void> };
            }>;
          }>;
        };
      }
      const address = `${host}/pdf.mjs`;
      const reader = (await import(address)) as Reader;
      reader.GlobalWorkerOptions.workerSrc = `${host}/pdf.worker.mjs`;
      const data = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
      const pdf = await reader.getDocument({ data, verbosity: 0 }).promise;
      const pages = [];
      for (let n = 1; n <= pdf.numPages; n++) {
        const page = await pdf.getPage(n);
        const viewport = page.getViewport({ scale: 96 / 72 });
        const canvas = document.createElement("canvas");
        canvas.width = Math.floor(viewport.width);
        canvas.height = Math.floor(viewport.height);
        const { width, height } = canvas;
        const drawn = canvas.getContext("2d", { willReadFrequently: true });
        if (drawn === null) throw new Error("no canvas");
        await page.render({ canvas, canvasContext: drawn, viewport }).promise;
        const dots = drawn.getImageData(0, 0, width, height).data;
        let inked = 0;
        let coloured = 0;
        let [left, top, right, bottom] = [width, height, 0, 0];
        for (let y = 0; y < height; y++)
          for (let x = 0; x < width; x++) {
            const at = 4 * (y * width + x);
            const [r = 0, g = 0, b = 0] = dots.subarray(at, at + 3);
            const low = Math.min(r, g, b);
            if (low > 245) continue;
            inked++;
            if (Math.max(r, g, b) - low > 24) coloured++;
            left = Math.min(left, x);
            right = Math.max(right, x + 1);
            top = Math.min(top, y);
            bottom = Math.max(bottom, y + 1);
          }
        const mm = 25.4 / 96;
        pages.push({
          ink: inked / (width * height),
          colour: coloured / (width * height),
          left: left * mm,
          top: top * mm,
          right: right * mm,
          bottom: bottom * mm,
        });
      }
      return pages;
    },
    { host: HOST, base64: Buffer.from(pdf).toString("base64") },
  );
  await window.close();
  return seen;
}
