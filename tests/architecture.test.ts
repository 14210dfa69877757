import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { breaches, type SourceFiles } from "./architecture-rules";

const ROOT = join(import.meta.dirname, "..");

function checkout(): SourceFiles {
  const files = new Map<string, string>();
  for (const folder of ["core", "renderer", "electron", "tests/oracles"]) {
    const entries = readdirSync(join(ROOT, folder), { recursive: true });
    for (const entry of entries) {
      const path = `${folder}/${String(entry).replaceAll("\\", "/")}`;
      if (/\.(ts|svelte)$/.test(path)) {
        files.set(path, readFileSync(join(ROOT, path), "utf8"));
      }
    }
  }
  return files;
}

function rulesBrokenBy(files: Record<string, string>): string[] {
  return breaches(new Map(Object.entries(files))).map(({ rule }) => rule);
}

describe("the checkout", () => {
  it("keeps every rule of the house that can be read off its text", () => {
    const files = checkout();
    expect(files.size).toBeGreaterThan(20);
    expect(breaches(files)).toEqual([]);
  });
});

describe("the checker", () => {
  it.each([
    ["core imports renderer", "core/a.ts", "../renderer/b"],
    ["core imports electron", "core/a.ts", "../electron/b"],
    ["renderer imports electron", "renderer/a.ts", "../electron/b"],
    ["electron imports renderer", "electron/a.ts", "../renderer/b"],
    ["core imports tests", "core/a.ts", "../tests/b"],
  ])("refuses that %s, type imports included", (_what, path, specifier) => {
    const rule = ["imports go down only"];
    const value = `import { b } from "${specifier}"; b();`;
    const type = `import type { B } from "${specifier}"; let b: B;`;
    const inline = `let b: import("${specifier}").B;`;
    const dynamic = `void import("${specifier}");`;
    const reExport = `export { b } from "${specifier}"; let c = 1;`;
    for (const text of [value, type, inline, dynamic]) {
      expect(rulesBrokenBy({ [path]: text }), text).toEqual(rule);
    }
    expect(rulesBrokenBy({ [path]: reExport })).toContain(rule[0]);
  });

  it("reads the script of a component", () => {
    const script = `<script lang="ts">import b from "../electron/b";</script>`;
    expect(rulesBrokenBy({ "renderer/A.svelte": script })).toEqual([
      "imports go down only",
    ]);
  });

  it("lets renderer and electron import core", () => {
    const text = `import { b } from "../core/b"; b();`;
    expect(
      rulesBrokenBy({ "renderer/a.ts": text, "electron/a.ts": text }),
    ).toEqual([]);
  });

  it.each(["node:fs", "electron", "svelte", "dexie", "@scope/any"])(
    "refuses the library %s in core, and only there",
    (library) => {
      const text = `import x from "${library}"; x();`;
      expect(rulesBrokenBy({ "core/a.ts": text })).toEqual([
        "core imports pure libraries only",
      ]);
      expect(rulesBrokenBy({ "renderer/a.ts": text })).toEqual([]);
      expect(rulesBrokenBy({ "core/a.generate.ts": text })).toEqual([]);
    },
  );

  it.each([
    "Date.now()",
    "new Date()",
    "new Date",
    "Date()",
    "Math.random()",
    "[1].map(Math.random)",
    "performance.now()",
    "f(performance)",
  ])("refuses %s in core, and only there", (expression) => {
    const text = `const x = ${expression};`;
    expect(rulesBrokenBy({ "core/a.ts": text })).toEqual([
      "core has no clock and no chance",
    ]);
    expect(rulesBrokenBy({ "renderer/a.ts": text })).toEqual([]);
  });

  it("takes no comment, string or date with a given instant for a breach", () => {
    const text = `// Date.now()
      const x = "Math.random()"; const y = new Date(0); const z = a.performance;`;
    expect(rulesBrokenBy({ "core/a.ts": text })).toEqual([]);
  });

  it("refuses a cycle of any length, type imports included", () => {
    const cycle = "no cycles, type imports included";
    expect(
      rulesBrokenBy({
        "core/a.ts": `import { b } from "./b"; b();`,
        "core/b.ts": `import type { C } from "./deep/c"; let c: C;`,
        "core/deep/c.ts": `import { a } from "../a"; a();`,
      }),
    ).toEqual([cycle]);
    expect(
      rulesBrokenBy({
        "renderer/A.svelte": `<script lang="ts">import { b } from "./b.svelte";</script>`,
        "renderer/b.svelte.ts": `import A from "./A.svelte"; A();`,
      }),
    ).toEqual([cycle]);
    expect(
      rulesBrokenBy({
        "renderer/a.ts": `new Worker(new URL("./b.ts", import.meta.url));`,
        "renderer/b.ts": `import { a } from "./a"; a();`,
      }),
    ).toEqual([cycle]);
  });

  it("takes two ways to one file for no cycle", () => {
    expect(
      rulesBrokenBy({
        "core/a.ts": `import { b } from "./b"; import { c } from "./c"; b(c);`,
        "core/b.ts": `import { c } from "./c"; c();`,
        "core/c.ts": `const c = 1;`,
      }),
    ).toEqual([]);
  });

  it("refuses an oracle that imports core", () => {
    expect(
      rulesBrokenBy({
        "tests/oracles/a.ts": `import { b } from "../../core/b"; b();`,
      }),
    ).toEqual(["an oracle never imports core"]);
    expect(
      rulesBrokenBy({
        "tests/oracles/a.test.ts": `import { b } from "../../core/b"; b();`,
      }),
    ).toEqual([]);
  });

  it("refuses barrel files and catch-all files", () => {
    expect(
      rulesBrokenBy({ "core/index.ts": `export { b } from "./b";` }),
    ).toContain("no barrel files");
    expect(rulesBrokenBy({ "core/utils.ts": "const a = 1;" })).toEqual([
      "no catch-all files",
    ]);
  });

  it("refuses an export without a docstring", () => {
    expect(rulesBrokenBy({ "core/a.ts": "export const a = 1;" })).toEqual([
      "every export says what it means",
    ]);
    expect(
      rulesBrokenBy({ "core/a.ts": "/** One. */ export const a = 1;" }),
    ).toEqual([]);
    const table = `/** Ones. */ export const ONES = ["one"] as const;
      export type One = (typeof ONES)[number];`;
    expect(rulesBrokenBy({ "core/a.ts": table })).toEqual([]);
  });
});
