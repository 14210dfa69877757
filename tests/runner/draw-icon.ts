/**
 * The program behind `npm run draw-icon`: draws `electron/packing/icon.svg` in
 * every size that the packers want, and writes the icon files of the three
 * systems beside it. They are committed, so that packing needs no browser.
 */
import { chromium, type Browser } from "@playwright/test";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import {
  ICNS_ENTRIES,
  icnsFrom,
  ICO_SIZES,
  icoFrom,
  type SquarePng,
} from "../../electron/packing/icon-containers";
import { chromiumOptions } from "./chromium";

// The built file is `dist/tools/draw-icon.js`.
const FOLDER = join(import.meta.dirname, "../../electron/packing");
const PNG_FOLDER = join(FOLDER, "icons");

const drawing = readFileSync(join(FOLDER, "icon.svg"), "base64");
const sizes = new Set([...ICO_SIZES, ...ICNS_ENTRIES.map(([, size]) => size)]);

async function draw(browser: Browser, size: number): Promise<SquarePng> {
  const page = await browser.newPage({
    viewport: { width: size, height: size },
  });
  await page.setContent(
    `<body style="margin: 0"><img src="data:image/svg+xml;base64,${drawing}" style="display: block; width: 100%">`,
  );
  await page
    .locator("img")
    .evaluate((image: HTMLImageElement) => image.decode());
  const png = await page.screenshot({ omitBackground: true });
  await page.close();
  return { size, png };
}

const browser = await chromium.launch(chromiumOptions());
const pictures: SquarePng[] = [];
for (const size of sizes) pictures.push(await draw(browser, size));
await browser.close();

mkdirSync(PNG_FOLDER, { recursive: true });
for (const { size, png } of pictures) {
  writeFileSync(join(PNG_FOLDER, `${size}x${size}.png`), png);
}
writeFileSync(join(FOLDER, "icon.ico"), icoFrom(pictures));
writeFileSync(join(FOLDER, "icon.icns"), icnsFrom(pictures));
console.log(`Drawn in ${pictures.length} sizes.`);
