/**
 * The house rules that can be read off the source text, as functions from a
 * set of files to a list of breaches. The test beside this file runs them on
 * the checkout and, to prove that each can fail, on small files of its own.
 *
 * Parsed with the compiler's own parser and not with patterns, so that a word
 * in a comment or a string is never taken for code.
 */
import { posix } from "node:path";
import ts from "typescript";

/** Source files by their path from the checkout's root, with their text. */
export type SourceFiles = ReadonlyMap<string, string>;

/** A broken rule: which, and in which file or files. */
export interface Breach {
  readonly rule: string;
  readonly where: string;
}

/** Libraries that are pure in core's sense: no clock, no chance, no platform. */
const PURE_LIBRARIES = ["pure-rand", "ts-fsrs", "valibot"];

/** Which top-level folders a top-level folder may import from. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  core: ["core"],
  renderer: ["renderer", "core"],
  electron: ["electron", "core"],
};

interface ParsedFile {
  readonly path: string;
  readonly source: ts.SourceFile;
  readonly imports: readonly string[];
}

/** Every breach in the files. */
export function breaches(files: SourceFiles): Breach[] {
  const parsed = [...files].map(([path, text]) => parse(path, text));
  return [
    ...parsed.flatMap((file) => [
      ...forbiddenImports(file),
      ...impurities(file),
      ...nameBreaches(file),
      ...undocumentedExports(file),
    ]),
    ...cycles(parsed, files),
  ];
}

function parse(path: string, text: string): ParsedFile {
  const code = path.endsWith(".svelte") ? scriptsOf(text) : text;
  const source = ts.createSourceFile(path, code, ts.ScriptTarget.Latest, true);
  const imports: string[] = [];
  visit(source, (node) => {
    const specifier = importedBy(node);
    if (specifier !== undefined && ts.isStringLiteral(specifier)) {
      imports.push(resolveFrom(path, specifier.text));
    }
  });
  return { path, source, imports };
}

function scriptsOf(component: string): string {
  const scripts = component.matchAll(/<script[^>]*>(.*?)<\/script>/gs);
  return [...scripts].map((match) => match[1] ?? "").join("\n");
}

function importedBy(node: ts.Node): ts.Node | undefined {
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) {
    return node.moduleSpecifier;
  }
  if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
    return node.argument.literal;
  }
  const isDynamic =
    ts.isCallExpression(node) &&
    node.expression.kind === ts.SyntaxKind.ImportKeyword;
  // A worker is started from `new URL("./worker.ts", import.meta.url)`.
  const isAddress =
    ts.isNewExpression(node) &&
    node.expression.getText() === "URL" &&
    node.arguments?.[1]?.getText() === "import.meta.url";
  return isDynamic || isAddress ? node.arguments?.[0] : undefined;
}

function resolveFrom(path: string, specifier: string): string {
  if (!specifier.startsWith(".")) return specifier;
  const bare = specifier.split("?", 1)[0] ?? specifier;
  return `/${posix.join(posix.dirname(path), bare)}`;
}

function forbiddenImports({ path, imports }: ParsedFile): Breach[] {
  const folder = path.split("/", 1)[0] ?? "";
  const allowed = MAY_IMPORT[folder];
  if (path.startsWith("tests/oracles/") && !path.endsWith(".test.ts")) {
    return imports
      .filter((imported) => imported.startsWith("/core/"))
      .map((imported) => ({
        rule: "an oracle never imports core",
        where: `${path} imports ${imported}`,
      }));
  }
  if (allowed === undefined) return [];
  return imports.flatMap((imported) => {
    const where = `${path} imports ${imported}`;
    if (imported.startsWith("/")) {
      const target = imported.slice(1).split("/", 1)[0] ?? "";
      return allowed.includes(target)
        ? []
        : [{ rule: "imports go down only", where }];
    }
    if (folder !== "core" || isGenerator(path)) return [];
    const library = imported.split("/", 1)[0] ?? "";
    return PURE_LIBRARIES.includes(library)
      ? []
      : [{ rule: "core imports pure libraries only", where }];
  });
}

/** Table generators stand beside their table, outside the pure build. */
function isGenerator(path: string): boolean {
  return path.endsWith(".generate.ts");
}

function impurities({ path, source }: ParsedFile): Breach[] {
  if (!path.startsWith("core/") || isGenerator(path)) return [];
  const found: Breach[] = [];
  visit(source, (node) => {
    const impure = impurityOf(node);
    if (impure !== undefined) {
      found.push({
        rule: "core has no clock and no chance",
        where: `${path} uses ${impure}`,
      });
    }
  });
  return found;
}

function impurityOf(node: ts.Node): string | undefined {
  if (ts.isNewExpression(node) && node.expression.getText() === "Date") {
    const count = node.arguments?.length ?? 0;
    return count === 0 ? "new Date()" : undefined;
  }
  if (ts.isCallExpression(node) && node.expression.getText() === "Date") {
    return "Date()";
  }
  if (ts.isPropertyAccessExpression(node)) {
    const text = node.getText().replace(/\s+/g, "");
    return ["Date.now", "Math.random"].find((impure) => text === impure);
  }
  const isName =
    ts.isIdentifier(node) && !ts.isPropertyAccessExpression(node.parent);
  const isObject =
    ts.isIdentifier(node) &&
    ts.isPropertyAccessExpression(node.parent) &&
    node.parent.expression === node;
  if ((isName || isObject) && node.text === "performance") return node.text;
  return undefined;
}

function nameBreaches({ path, source }: ParsedFile): Breach[] {
  const found: Breach[] = [];
  if (/(^|\/)(utils?|types|helpers)\.ts$/.test(path)) {
    found.push({ rule: "no catch-all files", where: path });
  }
  const { statements } = source;
  const onlyReExports =
    statements.length > 0 &&
    statements.every(
      (statement) =>
        ts.isExportDeclaration(statement) &&
        statement.moduleSpecifier !== undefined,
    );
  if (onlyReExports) found.push({ rule: "no barrel files", where: path });
  return found;
}

function undocumentedExports({ path, source }: ParsedFile): Breach[] {
  if (!/^(core|renderer|electron)\/.*\.ts$/.test(path)) return [];
  return source.statements.flatMap((statement, i) => {
    // A union derived from the table right above shares the table's docstring.
    const isDerived =
      ts.isTypeAliasDeclaration(statement) &&
      /\btypeof\b/.test(statement.type.getText()) &&
      i > 0;
    if (isDerived) return [];
    const isExported =
      ts.canHaveModifiers(statement) &&
      ts
        .getModifiers(statement)
        ?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) === true;
    if (!isExported || ts.getJSDocCommentsAndTags(statement).length > 0) {
      return [];
    }
    const name =
      statement
        .getText()
        .split(/[={;(]/, 1)[0]
        ?.trim() ?? "";
    return [
      { rule: "every export says what it means", where: `${path}: ${name}` },
    ];
  });
}

/** Tarjan's strongly connected components; more than one file is a cycle. */
function cycles(parsed: readonly ParsedFile[], files: SourceFiles): Breach[] {
  const edges = new Map(
    parsed.map(({ path, imports }) => [
      path,
      imports.flatMap((imported) => fileOf(imported, files) ?? []),
    ]),
  );
  const order = new Map<string, number>();
  const lowest = new Map<string, number>();
  const stack: string[] = [];
  const found: Breach[] = [];
  const enter = (path: string): number => {
    const own = order.size;
    order.set(path, own);
    stack.push(path);
    let low = own;
    for (const next of edges.get(path) ?? []) {
      if (!order.has(next)) low = Math.min(low, enter(next));
      else if (stack.includes(next)) {
        low = Math.min(low, order.get(next) ?? low);
      }
    }
    lowest.set(path, low);
    if (low === own) {
      const component = stack.splice(stack.indexOf(path));
      const importsItself = edges.get(path)?.includes(path) === true;
      if (component.length > 1 || importsItself) {
        const where = component.sort().join(", ");
        found.push({ rule: "no cycles, type imports included", where });
      }
    }
    return low;
  };
  for (const path of edges.keys()) if (!order.has(path)) enter(path);
  return found;
}

function fileOf(imported: string, files: SourceFiles): string | undefined {
  if (!imported.startsWith("/")) return undefined;
  const path = imported.slice(1);
  return [path, `${path}.ts`, `${path}.svelte.ts`].find((candidate) =>
    files.has(candidate),
  );
}

function visit(node: ts.Node, see: (node: ts.Node) => void): void {
  see(node);
  ts.forEachChild(node, (child) => visit(child, see));
}
