// @vitest-environment node
import { describe, expect, it } from "vitest";
import type { ResultsBlock } from "../../../core/sharing/results-block";
import { resultsFileName } from "../../../core/sharing/results-file-name";
import {
  packBundle,
  readResultsIn,
} from "../../../renderer/storage/results-bundle";
import { packResults } from "../../../renderer/storage/results-files";
import { ANN, answersOf, BEN } from "../../core/backup/sample-backup";
import { answersBlock, withdrawnBlock } from "../../core/sharing/sample-block";

const BLOCKS = [1, 2, 3].map((madeAt) =>
  answersBlock(madeAt, answersOf(ANN, madeAt)),
);

const filesOf = (blocks: readonly ResultsBlock[]) =>
  Promise.all(blocks.map((block) => packResults(block)));

async function bundleOf(blocks: readonly ResultsBlock[]) {
  const files = await filesOf(blocks);
  return packBundle(files.map(({ bytes }) => bytes));
}

describe("a bundle", () => {
  it("holds the blocks of its files under the same ids", async () => {
    const { id, bytes } = await bundleOf(BLOCKS);
    const files = await filesOf(BLOCKS);
    expect(await readResultsIn(resultsFileName(id), bytes)).toEqual({
      ok: true,
      value: {
        id,
        isBundle: true,
        blocks: BLOCKS.map((block, i) => ({ id: files[i]?.id, block })),
      },
    });
  });

  it("and a block's own file are told apart by what is in them", async () => {
    const [file] = await filesOf(BLOCKS);
    if (file === undefined) throw new Error("no file");
    expect(await readResultsIn("x", file.bytes)).toMatchObject({
      value: { id: file.id, isBundle: false, blocks: [{ id: file.id }] },
    });
  });

  it("cut off anywhere, or with something behind it, is not read at all", async () => {
    const { id, bytes } = await bundleOf(BLOCKS);
    for (let end = 0; end < bytes.length; end += 1) {
      const cut = bytes.slice(0, end);
      expect((await readResultsIn("x", cut)).ok, String(end)).toBe(false);
    }
    const half = bytes.slice(0, -1);
    expect(await readResultsIn("x", half)).toMatchObject({
      error: { code: "truncated", line: 1 },
    });
    expect(await readResultsIn(resultsFileName(id), half)).toMatchObject({
      error: { code: "not-whole" },
    });
    const more = new Uint8Array([...bytes, 0]);
    expect(await readResultsIn("x", more)).toMatchObject({
      error: { code: "lines-after-end", line: 1 },
    });
  });

  it("with a damaged part, a withdrawal or somebody else's block in it is refused", async () => {
    const [first, second] = await filesOf(BLOCKS);
    if (first === undefined || second === undefined) throw new Error("no file");
    const damaged = await packBundle([first.bytes, second.bytes.slice(0, -9)]);
    expect(await readResultsIn("x", damaged.bytes)).toMatchObject({
      error: { code: "bad-gzip" },
    });
    for (const odd of [
      withdrawnBlock(9),
      answersBlock(9, answersOf(BEN, 1), { learner: BEN.id }),
    ]) {
      const { bytes } = await bundleOf([...BLOCKS, odd]);
      expect(await readResultsIn("x", bytes)).toMatchObject({
        error: { code: "not-results" },
      });
    }
  });

  it("has no part that is larger than a part may be", async () => {
    const { bytes } = await packBundle([new Uint8Array(300_001)]);
    expect(await readResultsIn("x", bytes)).toMatchObject({
      error: { code: "packed-too-large", limit: 300_000 },
    });
    const large = new Uint8Array(25_000_001).fill("{".charCodeAt(0));
    expect(await readResultsIn("x", large)).toMatchObject({
      error: { code: "packed-too-large", limit: 25_000_000 },
    });
  });
});
