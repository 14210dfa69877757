import { createHash } from "node:crypto";
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { answerMessage } from "../../electron/answer-message";
import { parseKeptFolder, sharedFolder } from "../../electron/shared-folder";
import { temporaryFolder } from "./page-folder";
import { standInDesk } from "./stand-in-desk";

const BYTES = new Uint8Array([0x1f, 0x8b, 8, 0]);
const ID = createHash("sha256").update(BYTES).digest("hex");
const NAME = `${ID}.turnwise-results`;

async function chosen(files: Record<string, string> = {}) {
  const folder = temporaryFolder(files);
  const own = temporaryFolder({});
  const shared = sharedFolder(own);
  const named = await shared.choose(folder);
  if (!named.ok) throw new Error(named.error.code);
  return { folder, own, shared, name: named.value.name };
}

describe("the shared folder", () => {
  it("is remembered, and the window learns its name alone", async () => {
    const { folder, own, name } = await chosen();
    expect(await sharedFolder(own).chosen()).toEqual({ name });
    expect(folder.endsWith(name)).toBe(true);
    expect(name).not.toContain("/");
  });

  it("that was left is forgotten, with all that is in it kept", async () => {
    const { folder, shared } = await chosen();
    await shared.write(NAME, BYTES);
    await shared.leave();
    expect(await shared.chosen()).toBeNull();
    for (const asked of [
      shared.list(),
      shared.read(NAME),
      shared.write(NAME, BYTES),
      shared.remove(NAME),
    ])
      expect(await asked).toMatchObject({
        error: { code: "no-shared-folder" },
      });
    expect(readdirSync(folder)).toEqual([NAME]);
  });

  it("shows files of results, and nothing else that lies in it", async () => {
    const { folder, shared } = await chosen({
      [NAME]: "a",
      [`${ID} (1).turnwise-results`]: "a",
      "Mia.turnwise-results": "b",
      "._x.turnwise-results": "hidden",
      "notes.txt": "c",
      "deep/x.turnwise-results": "d",
    });
    mkdirSync(join(folder, "folder.turnwise-results"));
    symlinkSync("/etc/hostname", join(folder, "link.turnwise-results"));
    const listed = await shared.list();
    expect(listed.ok && [...listed.value].sort()).toEqual(
      [NAME, `${ID} (1).turnwise-results`, "Mia.turnwise-results"].sort(),
    );
    expect(await shared.read("link.turnwise-results")).toMatchObject({
      error: { code: "not-a-file" },
    });
    expect(await shared.read("folder.turnwise-results")).toMatchObject({
      error: { code: "not-a-file" },
    });
    for (const name of ["notes.txt", "../x.turnwise-results"])
      expect(await shared.read(name)).toEqual({
        ok: false,
        error: { code: "not-results", name },
      });
  });

  it("gives back what was written, whole", async () => {
    const { folder, shared } = await chosen({ [NAME]: "half" });
    expect(await shared.write(NAME, BYTES)).toEqual({
      ok: true,
      value: { name: NAME },
    });
    expect(readdirSync(folder)).toEqual([NAME]);
    expect(await shared.read(NAME)).toEqual({
      ok: true,
      value: { name: NAME, bytes: BYTES },
    });
  });

  it("takes nothing under another name than its digest, and removes nothing else", async () => {
    const { folder, shared } = await chosen({ "Mia.turnwise-results": "m" });
    const other = `${"0".repeat(64)}.turnwise-results`;
    const otherBack = `${"0".repeat(64)}-back-${ID.slice(0, 16)}.turnwise-results`;
    for (const name of [
      ...[other, otherBack, "Mia.turnwise-results", `../${NAME}`],
      ID,
    ])
      expect(await shared.write(name, BYTES)).toEqual({
        ok: false,
        error: { code: "not-results", name },
      });
    expect(await shared.remove("Mia.turnwise-results")).toMatchObject({
      error: { code: "not-results" },
    });
    expect(readFileSync(join(folder, "Mia.turnwise-results"), "utf8")).toBe(
      "m",
    );
    const back = `${ID}-back-0123456789abcdef.turnwise-results`;
    expect(await shared.write(back, BYTES)).toMatchObject({ ok: true });
    await shared.write(NAME, BYTES);
    expect(await shared.remove(NAME)).toEqual({ ok: true, value: null });
    expect(await shared.remove(NAME)).toEqual({ ok: true, value: null });
    expect(existsSync(join(folder, NAME))).toBe(false);
  });

  it("that is gone is said with the system’s code", async () => {
    const { folder, shared, name } = await chosen();
    rmSync(folder, { recursive: true });
    expect(await shared.list()).toEqual({
      ok: false,
      error: { code: "not-read", name, reason: "ENOENT" },
    });
    expect(await shared.write(NAME, BYTES)).toMatchObject({
      error: { code: "not-written", reason: "ENOENT" },
    });
    mkdirSync(folder);
    mkdirSync(join(folder, NAME));
    writeFileSync(join(folder, NAME, "inside"), "");
    expect(await shared.remove(NAME)).toMatchObject({
      error: { code: "not-written", name: NAME },
    });
  });

  it("is chosen by the person, who may close the dialog", async () => {
    const folder = temporaryFolder({});
    const ask = (choices: { readonly folder?: string }) =>
      answerMessage(
        standInDesk({ choices }).desk,
        { kind: "choose-shared-folder" },
        (error) => {
          throw error;
        },
      );
    expect(await ask({})).toEqual({ ok: true, value: null });
    expect(await ask({ folder })).toMatchObject({ ok: true });
  });
});

describe("what was remembered", () => {
  it.each(["", "{", "{}", '{"path":1}', '{"path":"here"}'])(
    "is as good as nothing where it is %j",
    (text) => expect(parseKeptFolder(text)).toBeUndefined(),
  );
});
