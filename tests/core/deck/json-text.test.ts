import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  jsonFault,
  offsetOfPath,
  placeInText,
} from "../../../core/deck/json-text";

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch (error) {
    expect(error).toBeInstanceOf(SyntaxError);
    return false;
  }
}

/** What our pass refuses though it is JSON. */
const STRICTER = [
  "nested-too-deep",
  "duplicate-key",
  "reserved-key",
  "number-too-large",
];

const SCRAPS = fc
  .array(
    fc.constantFrom(
      ...Array.from('{}[],:"\\ \n\r\t-+.0123eEtfnua'),
      ...[
        "true",
        "false",
        "null",
        '"a"',
        '"b":',
        "\\u00e9",
        "\u0001",
        "\u2028",
      ],
      ...["[[", "]]", '{"a":', "1.5e3", "\uFEFF", "\ud83d"],
    ),
    { maxLength: 12 },
  )
  .map((scraps) => scraps.join(""));

/** Good JSON in which a few units are dropped, doubled or put elsewhere. */
const DAMAGED = fc
  .tuple(
    fc.json({ maxDepth: 3 }),
    fc.array(fc.tuple(fc.nat(), fc.nat(2), SCRAPS), { maxLength: 2 }),
  )
  .map(([text, cuts]) =>
    cuts.reduce((damaged, [at, length, scrap]) => {
      const place = at % (damaged.length + 1);
      return (
        damaged.slice(0, place) +
        scrap.slice(0, 3) +
        damaged.slice(place + length)
      );
    }, text),
  );

describe("our pass over a text", () => {
  it("takes for JSON exactly what the engine does, but for what it refuses on purpose", () => {
    let good = 0;
    let bad = 0;
    const text = fc.oneof(SCRAPS, DAMAGED, fc.json());
    fc.assert(
      fc.property(text, (written) => {
        const fault = jsonFault(written, 100);
        if (fault !== undefined && STRICTER.includes(fault.code)) return;
        expect(fault === undefined, JSON.stringify([written, fault])).toBe(
          isJson(written),
        );
        if (fault === undefined) good++;
        else bad++;
      }),
      { numRuns: 5000 },
    );
    expect(Math.min(good, bad)).toBeGreaterThan(500);
  });

  it("calls every text that was cut short just that", () => {
    const text = '[{"a":[1,-2.5e3,"b\\u00e9\\n"],"c":{}},true,false,null,[]]';
    for (let length = 1; length < text.length; length++) {
      const cut = text.slice(0, length);
      const fault = jsonFault(cut, 10);
      // After `2.` and `5e` a number is over, and something wrong follows.
      if (!/\d[.e]$/.test(cut)) expect(fault?.code, cut).toBe("ends-early");
    }
  });

  it("reads what is nested as deep as allowed, and nothing deeper", () => {
    const nested = (depth: number) => "[".repeat(depth) + "]".repeat(depth);
    expect(jsonFault(nested(32), 32)).toBeUndefined();
    expect(jsonFault(nested(33), 32)).toEqual({
      code: "nested-too-deep",
      offset: 32,
      found: "[" + "]".repeat(19),
    });
  });

  it.each([
    ['{"a":1,"\\u0061":2}', "duplicate-key", 7],
    ['[{"prototype":1}]', "reserved-key", 2],
    ["[1, -1e309]", "number-too-large", 4],
    ['{"a":"b}', "ends-early", 5],
    ['["b\n"]', "text-not-closed", 1],
    ['["a\tb"]', "not-json", 3],
    ['["\\x41"]', "not-json", 2],
    ["[1,]", "not-json", 3],
    ["[1]]", "not-json", 3],
    ["{'a':1}", "not-json", 1],
    ["[// no\n]", "not-json", 1],
    ["\n ", "empty", 2],
  ])("refuses %j: %s at %i", (text, code, offset) => {
    expect(jsonFault(text, 10)).toMatchObject({ code, offset });
  });

  it("takes one name twice in a row of lists for no fault", () => {
    expect(jsonFault('[{"a":1},{"a":2,"b":{"a":3}}]', 10)).toBeUndefined();
  });
});

describe("the place of a value", () => {
  const text = '{\n "a": [1, {"b": 2}],\r\n "c d": "x",\r"e": 3}';

  it.each([
    [[], 1, 1],
    [["a"], 2, 7],
    [["a", 0], 2, 8],
    [["a", 1, "b"], 2, 17],
    [["a", 1, "missing"], 2, 11],
    [["a", 7], 2, 7],
    [["c d"], 3, 9],
    [["e"], 4, 6],
    [["missing"], 1, 1],
  ])("%j begins at line %i, column %i", (path, line, column) => {
    const offset = offsetOfPath(text, path);
    expect(placeInText(text, offset)).toEqual({ line, column });
  });
});
