/**
 * Whether a text is JSON that is safe to read, and where in it things stand.
 *
 * A pass of our own before the engine's `JSON.parse`, because that one takes a
 * nesting a million deep, keeps the last of two fields with one name, reads
 * 1e999 as infinity, and names a place only in sentences that differ from
 * engine to engine. No recursion and no pattern that backtracks: a text of a
 * megabyte costs 5 to 60 ms, however it is built.
 */
import { err, ok, type Result } from "../result";

/** Every cause for which a text is not taken for JSON. */
export const JSON_FAULT_CODES = [
  /** Nothing but white space. */
  "empty",
  /** The text stops in the middle: cut short on its way, most often. */
  "ends-early",
  /** A quotation mark that is not closed on its line. */
  "text-not-closed",
  /** Anything else that JSON does not have. */
  "not-json",
  /** Lists and fields within one another deeper than allowed. */
  "nested-too-deep",
  /** Two fields with one name. */
  "duplicate-key",
  /** `__proto__`, `constructor`, `prototype`: they mean something to the machine. */
  "reserved-key",
  /** A number that no computer can count with, 1e999. */
  "number-too-large",
] as const;

export type JsonFaultCode = (typeof JSON_FAULT_CODES)[number];

/** Why a text is not taken for JSON. Units: `offset` in UTF-16 units; `found` is what stands there, cut short. */
export interface JsonFault {
  readonly code: JsonFaultCode;
  readonly offset: number;
  readonly found: string;
  /** With `not-json`, where a text begins and a comma was due before it: at the end of a line before, or on the same one. */
  readonly missingComma?: "line-before" | "same-line";
}

/** Called at the beginning of each value; the path is valid only until it returns. */
type ValueVisitor = (
  path: readonly (string | number)[],
  offset: number,
) => void;

const RESERVED: readonly string[] = ["__proto__", "constructor", "prototype"];
const WORDS = ["true", "false", "null"] as const;
const NUMBER = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9A-Fa-f]{4})/y;
const ESCAPE_BEGUN = /^\\(?:u[0-9A-Fa-f]{0,3})?$/;
const FOUND_LENGTH = 20;

class JsonScan {
  readonly #text: string;
  readonly #deepest: number;
  readonly #visit: ValueVisitor;
  readonly #path: (string | number)[] = [];
  /** For each open list undefined, for each open set of fields its keys so far. */
  readonly #open: (Set<string> | undefined)[] = [];
  #at = 0;

  constructor(text: string, deepest: number, visit: ValueVisitor) {
    this.#text = text;
    this.#deepest = deepest;
    this.#visit = visit;
  }

  run(): JsonFault | undefined {
    this.#skipSpace();
    if (this.#at === this.#text.length) return this.#fault("empty");
    for (;;) {
      const fault = this.#value() ?? this.#afterValue();
      if (fault !== "next") return fault === "done" ? undefined : fault;
    }
  }

  #fault(code: JsonFaultCode, offset = this.#at): JsonFault {
    const found = this.#text.slice(offset, offset + FOUND_LENGTH);
    const isAtEnd = code === "not-json" && offset === this.#text.length;
    return { code: isAtEnd ? "ends-early" : code, offset, found };
  }

  /** What is missing where a text begins right after another value. */
  #missingComma(): Pick<JsonFault, "missingComma"> {
    if (this.#text[this.#at] !== '"') return {};
    let before = this.#at;
    while (" \t".includes(this.#text[before - 1] ?? "x")) before--;
    const isFirst = "\r\n".includes(this.#text[before - 1] ?? "x");
    return { missingComma: isFirst ? "line-before" : "same-line" };
  }

  #skipSpace(): void {
    while (" \t\n\r".includes(this.#text[this.#at] ?? "x")) this.#at++;
  }

  /** Reads a scalar, or opens lists and fields down to the first one; an empty one is left to be closed. */
  #value(): JsonFault | undefined {
    for (;;) {
      this.#visit(this.#path, this.#at);
      const begin = this.#text[this.#at];
      if (begin !== "{" && begin !== "[") return this.#scalar(begin);
      if (this.#open.length === this.#deepest)
        return this.#fault("nested-too-deep");
      const keys = begin === "{" ? new Set<string>() : undefined;
      this.#open.push(keys);
      this.#path.push(begin === "{" ? "" : 0);
      this.#at++;
      this.#skipSpace();
      if (this.#text[this.#at] === closing(keys)) return undefined;
      const fault = keys === undefined ? undefined : this.#key(keys);
      if (fault !== undefined) return fault;
    }
  }

  #scalar(begin: string | undefined): JsonFault | undefined {
    if (begin === '"') {
      const text = this.#string();
      return text.ok ? undefined : text.error;
    }
    const rest = this.#text.slice(this.#at, this.#at + 5);
    const word = WORDS.find((known) => rest.startsWith(known));
    NUMBER.lastIndex = this.#at;
    const written = word ?? NUMBER.exec(this.#text)?.[0];
    if (written === undefined) {
      const isCutShort = [...WORDS, "-"].some((known) =>
        known.startsWith(rest),
      );
      return this.#fault(isCutShort ? "ends-early" : "not-json");
    }
    if (word === undefined && !Number.isFinite(Number(written)))
      return this.#fault("number-too-large");
    this.#at += written.length;
    return undefined;
  }

  #string(): Result<string, JsonFault> {
    const begin = this.#at;
    this.#at++;
    for (;;) {
      const character = this.#text[this.#at];
      if (character === undefined) return err(this.#fault("ends-early", begin));
      if (character === "\n" || character === "\r")
        return err(this.#fault("text-not-closed", begin));
      if (character < " ") return err(this.#fault("not-json"));
      if (character === "\\") {
        ESCAPE.lastIndex = this.#at;
        const escape = ESCAPE.exec(this.#text)?.[0];
        if (escape === undefined) {
          const isCutShort = ESCAPE_BEGUN.test(this.#text.slice(this.#at));
          return err(this.#fault(isCutShort ? "ends-early" : "not-json"));
        }
        this.#at += escape.length;
      } else this.#at++;
      if (character === '"') return ok(this.#text.slice(begin, this.#at));
    }
  }

  #key(keys: Set<string>): JsonFault | undefined {
    const begin = this.#at;
    if (this.#text[begin] !== '"') return this.#fault("not-json");
    const written = this.#string();
    if (!written.ok) return written.error;
    // A written string is JSON by itself: its escapes are the engine's to read.
    const key = JSON.parse(written.value) as string;
    if (RESERVED.includes(key)) return this.#fault("reserved-key", begin);
    if (keys.has(key)) return this.#fault("duplicate-key", begin);
    keys.add(key);
    this.#path[this.#path.length - 1] = key;
    this.#skipSpace();
    if (this.#text[this.#at] !== ":") return this.#fault("not-json");
    this.#at++;
    this.#skipSpace();
    return undefined;
  }

  /** Closes what ends here; "next" where another value follows. */
  #afterValue(): JsonFault | "next" | "done" {
    for (;;) {
      this.#skipSpace();
      if (this.#open.length === 0)
        return this.#at === this.#text.length
          ? "done"
          : this.#fault("not-json");
      const keys = this.#open.at(-1);
      const character = this.#text[this.#at];
      if (character !== "," && character !== closing(keys))
        return { ...this.#fault("not-json"), ...this.#missingComma() };
      this.#at++;
      if (character === ",") {
        this.#skipSpace();
        const place = this.#path.at(-1);
        if (typeof place === "number")
          this.#path[this.#path.length - 1] = place + 1;
        return (keys === undefined ? undefined : this.#key(keys)) ?? "next";
      }
      this.#open.pop();
      this.#path.pop();
    }
  }
}

function closing(keys: Set<string> | undefined): "}" | "]" {
  return keys === undefined ? "]" : "}";
}

/** The first fault of a text; undefined where it is JSON and safe to read. Units: `deepest` in lists and fields within one another. */
export function jsonFault(
  text: string,
  deepest: number,
): JsonFault | undefined {
  return new JsonScan(text, deepest, () => undefined).run();
}

/** Where the value of a path begins in a text without faults; for a field that is not there, where what should hold it begins. Units: UTF-16 units. */
export function offsetOfPath(
  text: string,
  wanted: readonly (string | number)[],
): number {
  let offset = 0;
  let found = -1;
  new JsonScan(text, Infinity, (path, at) => {
    if (path.length !== found + 1 || path.length > wanted.length) return;
    if (path.some((step, i) => step !== wanted[i])) return;
    found = path.length;
    offset = at;
  }).run();
  return offset;
}

/** A place in a text as an editor counts it: from 1, columns in UTF-16 units. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

/** The line and column of an offset; a line ends with LF, CR LF or CR. */
export function placeInText(text: string, offset: number): TextPlace {
  const lines = text.slice(0, offset).split(/\r\n|\n|\r/);
  return { line: lines.length, column: (lines.at(-1) ?? "").length + 1 };
}
