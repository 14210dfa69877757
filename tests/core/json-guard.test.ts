import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nestingDepth, prototypeKeyIn } from "../../core/json-guard";
import { isSameJson } from "../../core/same-json";

/** By the definition, on the parsed value. */
function depthOf(value: unknown): number {
  if (typeof value !== "object" || value === null) return 0;
  return 1 + Math.max(0, ...Object.values(value).map(depthOf));
}

describe("the nesting of a text", () => {
  it("is that of the value it is parsed to", () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), (value) => {
        expect(nestingDepth(JSON.stringify(value), 100)).toBe(depthOf(value));
      }),
    );
  });

  it("does not count brackets in strings, escaped quotes included", () => {
    expect(nestingDepth('{"a\\"[[[": "]{{{\\\\"}', 9)).toBe(1);
  });

  it("is no deeper than one beyond the limit, however deep the text goes on", () => {
    expect(nestingDepth("[".repeat(1_000_000), 5)).toBe(6);
    expect(nestingDepth("[[[[[]]]]]", 5)).toBe(5);
  });
});

describe("a key that reaches a prototype", () => {
  it.each([
    ["__proto__", '{"__proto__": {"a": 1}}'],
    ["__proto__", '{"\\u005f_proto__": 1}'],
    ["a.1.constructor", '{"a": [0, {"constructor": 1}]}'],
    ["b.prototype", '{"a": "__proto__", "b": {"prototype": 1}}'],
  ])("is found at %s", (path, text) => {
    expect(prototypeKeyIn(JSON.parse(text))).toBe(path);
  });

  it("is not found where there is none", () => {
    const text = '{"a": ["constructor", null, {"proto": 1}]}';
    expect(prototypeKeyIn(JSON.parse(text))).toBeUndefined();
  });
});

describe("sameness as JSON", () => {
  it("holds for a value and its copy with the fields the other way round", () => {
    const reversed = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(reversed);
      if (typeof value !== "object" || value === null) return value;
      return Object.fromEntries(
        Object.entries(value)
          .map(([key, inner]) => [key, reversed(inner)])
          .reverse(),
      );
    };
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const copy: unknown = JSON.parse(JSON.stringify(value));
        expect(isSameJson(copy, reversed(copy))).toBe(true);
      }),
    );
  });

  it("holds for no two values that are written differently", () => {
    const values = [null, 0, "", "0", false, [], {}, [0], { a: 0 }, { b: 0 }];
    const more = [[0, 0], { a: 0, b: 0 }, { a: [0] }, { a: null }, { 0: 0 }];
    const all: readonly unknown[] = [...values, ...more];
    for (const [i, a] of all.entries())
      for (const [j, b] of all.entries())
        expect(isSameJson(a, b)).toBe(i === j);
  });

  it("takes an undefined field for one that is not there", () => {
    expect(isSameJson({ a: 1, b: undefined }, { a: 1 })).toBe(true);
    expect(isSameJson({ b: undefined }, { a: 1 })).toBe(false);
  });
});
