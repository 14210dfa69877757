import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import * as v from "valibot";

const SHIPPED = readFileSync("renderer/public/licences.txt", "utf8");

const PACKAGE = v.object({
  version: v.string(),
  dependencies: v.optional(v.record(v.string(), v.string()), {}),
});

function sourceFiles(folder: string): readonly string[] {
  return (
    readdirSync(folder, { recursive: true, encoding: "utf8" })
      // What writes a table stands beside it and is not in the page.
      .filter((name) => /(?<!\.generate)\.(ts|svelte)$/.test(name))
      .map((name) => readFileSync(join(folder, name), "utf8"))
  );
}

/** The packages that the window's own code imports, styles included. */
function importedPackages(): ReadonlySet<string> {
  const names = [...sourceFiles("core"), ...sourceFiles("renderer")].flatMap(
    (source) =>
      [
        ...source.matchAll(
          /\b(?:from|^import|^\s+import)\s+"((?:@[\w-]+\/)?[a-z][\w-]*)(?:\/[^"]*)?";/gm,
        ),
      ].map(([, name]) => name ?? ""),
  );
  return new Set(names);
}

const manifestOf = (name: string) =>
  v.parse(
    PACKAGE,
    JSON.parse(
      readFileSync(join("node_modules", name, "package.json"), "utf8"),
    ),
  );

/** What of a package's needs is in the page where not all are: the others are its compiler's or its command line's, and stay at home. */
const IN_THE_PAGE: Readonly<Record<string, readonly string[]>> = {
  svelte: ["clsx", "esm-env"],
  "d3-dsv": [],
};

/** With what those need in turn. */
function bundledPackages(): readonly string[] {
  const found = new Set(importedPackages());
  for (const name of found) {
    const own = Object.keys(manifestOf(name).dependencies).filter(
      (needed) => IN_THE_PAGE[name]?.includes(needed) ?? true,
    );
    for (const needed of own)
      if (!needed.startsWith("@types/")) found.add(needed);
  }
  return [...found].sort();
}

describe("the licences that the page carries", () => {
  it("are looked for among what is really imported", () => {
    expect(bundledPackages()).toEqual(
      expect.arrayContaining([
        "@fontsource-variable/atkinson-hyperlegible-next",
        "dexie",
        "pure-rand",
        "svelte",
        "ts-fsrs",
        "valibot",
      ]),
    );
  });

  it.each(bundledPackages())(
    "hold %s, its version and its whole notice",
    (name) => {
      expect(SHIPPED).toContain(`${name} ${manifestOf(name).version}`);
      const notices = readdirSync(join("node_modules", name)).filter((file) =>
        /^(licen[cs]e|notice)(\.\w+)?$/i.test(file),
      );
      expect(notices).not.toEqual([]);
      for (const file of notices)
        expect(SHIPPED).toContain(
          readFileSync(join("node_modules", name, file), "utf8")
            .replaceAll("\r\n", "\n")
            .trim(),
        );
    },
  );

  it("begin with Turnwise's own", () => {
    expect(SHIPPED).toContain(readFileSync("LICENSE", "utf8").trim());
  });
});
