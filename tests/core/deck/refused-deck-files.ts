import type { DeckFileError } from "../../../core/deck/deck-file";

/** A small good file, with some of its lines replaced or added before the cases. */
export function fileWith(fields: string, cases = '{"case":"C1"}'): string {
  return `{"turnwise":"deck","version":1,"name":"Monday",\n${fields}\n"cases":[\n${cases}]}`;
}

type Refusal = readonly [
  what: string,
  text: string,
  error: Partial<DeckFileError>,
];

const inCase = (fields: string) => fileWith("", `{"case":"E8a",\n${fields}}`);

/** One bad file for each cause, and for each place where a cause is worth telling apart. */
export const REFUSED: readonly Refusal[] = [
  ["nothing", " \n", { code: "empty" }],
  [
    "a file of more than a megabyte",
    fileWith(`"note":"${"a".repeat(1_000_000)}",`),
    { code: "too-large", most: 1_000_000 },
  ],
  [
    "a file cut short",
    '{"turnwise":"deck",\n"version"',
    { code: "ends-early", line: 2, column: 10 },
  ],
  [
    "a text that is not closed",
    '{"turnwise":"deck",\r\n "name":"Monday\r\n}',
    { code: "text-not-closed", line: 2, column: 9 },
  ],
  [
    "a comma too many",
    fileWith("", '{"case":"C1",}'),
    { code: "not-json", line: 4, column: 14, found: "}]}" },
  ],
  ["a page", "<!doctype html>", { code: "not-turnwise" }],
  ["a letter", "Dear coach,\nhere they are.", { code: "not-turnwise" }],
  [
    "a comma too few at the end of a line",
    '{"turnwise":"deck"\n  "name":"Monday"}',
    {
      code: "not-json",
      line: 2,
      column: 3,
      found: '"name":"Monday"}',
      missingComma: "line-before",
    },
  ],
  [
    "a comma too few on a line",
    '{"turnwise":"deck" "name":"Monday"}',
    { code: "not-json", line: 1, column: 20, missingComma: "same-line" },
  ],
  [
    "a colon too few",
    '{"turnwise"\n"deck"}',
    { code: "not-json", line: 2, column: 1, found: '"deck"}' },
  ],
  [
    "lists nested without end",
    "[".repeat(500_000),
    { code: "nested-too-deep", line: 1, column: 33 },
  ],
  [
    "a field written twice",
    fileWith('"name":"Tuesday",'),
    { code: "duplicate-key", line: 2, column: 1 },
  ],
  [
    "a key that means something to the machine",
    fileWith('"__proto__":{"hold":"up"},'),
    { code: "reserved-key", line: 2, column: 1 },
  ],
  [
    "the same key in disguise",
    inCase('"constr\\u0075ctor":1'),
    { code: "reserved-key", line: 5, column: 1 },
  ],
  [
    "a number beyond all numbers",
    inCase('"target":1e999'),
    { code: "number-too-large", line: 5, column: 10, found: "1e999}]}" },
  ],
  ["JSON of something else", "[1]", { code: "not-turnwise" }],
  ["no fields at all", "null", { code: "not-turnwise" }],
  [
    "a file of another kind",
    '{"turnwise":"backup"}',
    { code: "other-kind", kind: "backup" },
  ],
  [
    "a kind that cannot be written as a word",
    '{"turnwise":{"toString":1,"valueOf":1}}',
    { code: "other-kind", kind: "" },
  ],
  [
    "a file of a newer form",
    '{"turnwise":"deck","version":3,"readableFrom":2}',
    { code: "newer-version", version: 3, readableFrom: 2 },
  ],
  [
    "a newer form that does not say from when it can be read",
    '{"turnwise":"deck","version":2}',
    { code: "newer-version", version: 2, readableFrom: 2 },
  ],
  [
    "a file without a version",
    '{"turnwise":"deck"}',
    { code: "missing-field", field: "version", line: 1, column: 1 },
  ],
  [
    "a file without cases",
    '{"turnwise":"deck","version":1,"name":"A"}',
    { code: "missing-field", field: "cases" },
  ],
  [
    "a case without its id",
    fileWith("", '{"target":20}'),
    { code: "missing-field", field: "cases[0].case", line: 4, column: 1 },
  ],
  [
    "a slip of the pen",
    inCase('"taget":20'),
    { code: "unknown-field", field: "cases[0].taget", line: 5, column: 9 },
  ],
  [
    "a field named like one that every object has",
    fileWith('"toString":1,'),
    { code: "unknown-field", field: "toString" },
  ],
  [
    "a face for the first colour",
    fileWith('"first colour":"U",'),
    {
      code: "unknown-value",
      field: "first colour",
      expected: { kind: "one-of", options: ["the learner's"] },
    },
  ],
  [
    "a text where a number belongs",
    inCase('"target":"20"'),
    {
      code: "wrong-type",
      field: "cases[0].target",
      line: 5,
      column: 10,
      found: "20",
      expected: { kind: "number", least: 0.5, most: 600, whole: false },
    },
  ],
  [
    "a list where fields belong",
    fileWith('"every case at least":[7],'),
    {
      code: "wrong-type",
      field: "every case at least",
      expected: { kind: "fields", known: ["days", "until", "note"] },
    },
  ],
  [
    "fields where a list belongs",
    '{"turnwise":"deck","version":1,"name":"A","cases":{}}',
    {
      code: "wrong-type",
      field: "cases",
      expected: { kind: "list", most: 500 },
    },
  ],
  [
    "a word that means nothing there",
    inCase('"home":"behind"'),
    {
      code: "unknown-value",
      field: "cases[0].home",
      found: "behind",
      expected: { kind: "one-of", options: ["in front", "anywhere"] },
    },
  ],
  [
    "a target of no time",
    inCase('"target":0'),
    { code: "out-of-range", field: "cases[0].target", found: "0" },
  ],
  [
    "half a new case",
    fileWith('"new a round":1.5,'),
    {
      code: "out-of-range",
      field: "new a round",
      expected: { kind: "number", least: 0, most: 12, whole: true },
    },
  ],
  [
    "an empty name",
    '{"turnwise":"deck","version":1,"name":"  ","cases":[]}',
    { code: "blank-text", field: "name" },
  ],
  [
    "a note longer than its place",
    inCase(`"note":"${"a".repeat(281)}"`),
    {
      code: "text-too-long",
      field: "cases[0].note",
      expected: { kind: "text", most: 280 },
    },
  ],
  [
    "a control character",
    fileWith('"message":"a\\u0007b",'),
    { code: "unwanted-character", field: "message", found: "\u0007" },
  ],
  [
    "half a surrogate pair",
    fileWith('"message":"a\\ud83db",'),
    { code: "unwanted-character", field: "message", found: "\ud83d" },
  ],
  [
    "a line break in a text of one line",
    fileWith('"description":"a\\nb",'),
    { code: "unwanted-character", field: "description", found: "\n" },
  ],
  [
    "a character that turns the rest of the line round",
    inCase('"note":"a\\u202Eb"'),
    { code: "unwanted-character", field: "cases[0].note", found: "\u202e" },
  ],
  [
    "a character that nobody sees",
    fileWith('"description":"a\\u200Bb",'),
    { code: "unwanted-character", field: "description", found: "\u200b" },
  ],
  [
    "a joiner with nothing to join",
    fileWith('"message":"a \\u200Db",'),
    { code: "unwanted-character", field: "message", found: "\u200d" },
  ],
  [
    "a name that nobody sees",
    '{"turnwise":"deck","version":1,"name":"\\u200B \\u2060\\u200D","cases":[]}',
    { code: "blank-text", field: "name" },
  ],
  [
    "an id of its own invention",
    fileWith('"id":"my deck",'),
    { code: "malformed-id", field: "id", found: "my deck" },
  ],
  [
    "no way of answering",
    inCase('"ways of answering":[]'),
    { code: "empty-list", field: "cases[0].ways of answering" },
  ],
  [
    "more cases than a deck holds",
    fileWith("", Array(501).fill('{"case":"C1"}').join(",")),
    { code: "list-too-long", field: "cases" },
  ],
  [
    "a stage twice",
    fileWith('"stages":["first-layer edges","first-layer edges"],'),
    { code: "duplicate-value", field: "stages" },
  ],
  [
    "a case twice, after one that nobody knows",
    fileWith("", '{"case":"X9"},{"case":"C1"},\n{"case":"C1"}'),
    {
      code: "duplicate-case",
      field: "cases[2].case",
      found: "C1",
      line: 5,
      column: 9,
    },
  ],
  [
    "more others placed than the case allows",
    inCase('"others placed":3'),
    {
      code: "too-many-placed",
      field: "cases[0].others placed",
      expected: { kind: "number", least: 0, most: 2, whole: true },
    },
  ],
  [
    "a day that the calendar does not have",
    fileWith('"every case at least":{"days":7,"until":"2027-02-30"},'),
    {
      code: "impossible-day",
      field: "every case at least.until",
      found: "2027-02-30",
    },
  ],
  [
    "a day written another way",
    fileWith('"every case at least":{"days":7,"until":"1.2.2027"},'),
    { code: "impossible-day", field: "every case at least.until" },
  ],
  [
    "a way that is not notation",
    inCase('"way":"R U Q"'),
    {
      code: "way-not-notation",
      field: "cases[0].way",
      notation: { code: "unknown-character", offset: 4, text: "Q" },
    },
  ],
  [
    "a way that only turns the whole cube",
    inCase('"way":"y"'),
    { code: "way-without-turns", field: "cases[0].way" },
  ],
  [
    "a way for two corners",
    fileWith("", '{"case":"S1","way":"R U"}'),
    { code: "no-one-way", field: "cases[0].way", found: "R U" },
  ],
];
