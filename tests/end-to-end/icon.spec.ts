/** The committed icons are pictures, drawn once; this holds them to their drawing. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "./app";

const FOLDER = join(import.meta.dirname, "../../electron/packing");

/** The mean difference of two pictures a channel, 0 to 255, drawn `edge` wide. */
async function meanDifference({
  shown,
  drawn,
  edge,
}: {
  shown: string;
  drawn: string;
  edge: number;
}): Promise<number> {
  const [a, b] = await Promise.all(
    [shown, drawn].map(async (address) => {
      const image = new Image();
      image.src = address;
      await image.decode();
      const context = new OffscreenCanvas(edge, edge).getContext("2d");
      if (context === null) throw new Error("there is no canvas");
      context.drawImage(image, 0, 0, edge, edge);
      return context.getImageData(0, 0, edge, edge).data;
    }),
  );
  if (a === undefined || b === undefined) throw new Error("two were drawn");
  return a.reduce((sum, x, i) => sum + Math.abs(x - (b[i] ?? 0)), 0) / a.length;
}

test("every committed icon shows what icon.svg draws", async ({ page }) => {
  await page.goto("/");
  const svg = readFileSync(join(FOLDER, "icon.svg"), "utf8");
  const turnedBack = svg.replace('x="338"', 'x="186"');
  expect(turnedBack).not.toBe(svg);
  const names = readdirSync(join(FOLDER, "icons"));
  expect(names.length).toBeGreaterThan(5);
  for (const name of names) {
    const png = readFileSync(join(FOLDER, "icons", name), "base64");
    const difference = (text: string): Promise<number> =>
      page.evaluate(meanDifference, {
        shown: `data:image/png;base64,${png}`,
        drawn: `data:image/svg+xml;base64,${Buffer.from(text).toString("base64")}`,
        edge: Math.min(Number.parseInt(name, 10), 128),
      });
    expect(await difference(svg), name).toBeLessThan(2);
    // The control: the same drawing with its turned layer turned back.
    expect(await difference(turnedBack), name).toBeGreaterThan(4);
  }
});
