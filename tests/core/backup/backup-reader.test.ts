import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  BACKUP_LIMITS,
  backupReader,
} from "../../../core/backup/backup-reader";
import { DEEPEST_LINE, LONGEST_LINE } from "../../../core/backup/backup-line";
import { backupWriter } from "../../../core/backup/backup-writer";
import { ANSWER_WAYS, ASKINGS } from "../../../core/memory/review";
import { sampleReview } from "../memory/sample-review";
import {
  ANN,
  answersOf,
  BEN,
  CLUB_DECK,
  readLines,
  sampleLines,
} from "./sample-backup";

type Change = (line: Record<string, unknown>) => Record<string, unknown>;

/** The lines with one of them changed, counted from 1. */
function withLine(number: number, change: Change | string): readonly string[] {
  return sampleLines().map((text, i) =>
    i !== number - 1
      ? text
      : typeof change === "string"
        ? change
        : JSON.stringify(change(JSON.parse(text) as Record<string, unknown>)),
  );
}

/** The lines with more of them before the last; the end says what it said. */
function withMore(...more: readonly string[]): readonly string[] {
  const lines = sampleLines();
  return [...lines.slice(0, -1), ...more, ...lines.slice(-1)];
}

const HEADER = 1;
const LEARNER = 2;
const SETTINGS = 4;
const DECK = 5;
const REVIEW = 6;
const DAMAGED = 9;
const END = 10;

describe("a backup", () => {
  it("gives back everything that was written, the damaged as text", () => {
    const read = readLines(sampleLines());
    expect(read).toEqual({
      ok: true,
      value: {
        header: {
          turnwise: "backup",
          version: 2,
          readableFrom: 2,
          madeAt: 5,
          learners: 2,
          reviews: 4,
          decks: 1,
          runs: 0,
        },
        learners: new Map([
          [ANN.id, ANN],
          [BEN.id, BEN],
        ]),
        settings: new Map([[ANN.id, { hold: "down" }]]),
        decks: new Map([["club", CLUB_DECK]]),
        reviews: new Map(answersOf(ANN, 3).map((one) => [one.id, one])),
        runs: new Map(),
        sheets: new Map(),
        classmates: new Map(),
        heard: new Map(),
        unfinished: 0,
        damaged: [
          {
            table: "reviews",
            key: "torn",
            row: JSON.stringify({ id: "torn", learner: ANN.id }),
          },
        ],
        conflicts: [],
        unknownLines: 0,
      },
    });
  });

  it("gives back answers of every way and asking as they were given", () => {
    const answers = ANSWER_WAYS.flatMap((answerWay) =>
      ASKINGS.map((asking) =>
        sampleReview(20_000, {
          id: `${answerWay} ${asking}`,
          learner: ANN.id,
          answerWay,
          asking,
          verdict: "missed",
          ...(answerWay === "which-is-it" ? { answeredAs: "E2a" } : {}),
          ...(answerWay === "find-it" || answerWay === "where-is-home"
            ? { mistook: { piece: "UF", for: "UR" } }
            : {}),
        }),
      ),
    );
    const writer = backupWriter();
    const lines = [
      writer.header({
        madeAt: 5,
        learners: 1,
        reviews: answers.length,
        decks: 0,
        runs: 0,
      }),
      writer.row({ kind: "learner", content: ANN, table: "learners", key: "" }),
      ...answers.map((content) =>
        writer.row({ kind: "review", content, table: "reviews", key: "" }),
      ),
      writer.end(),
    ].map((line) => line.trimEnd());
    const read = readLines(lines);
    expect(read.ok && [...read.value.reviews.values()]).toEqual(answers);
  });

  it("is the same however its text is cut into pieces", () => {
    const text = `${sampleLines().join("\n")}\n`;
    const whole = readLines(sampleLines());
    fc.assert(
      fc.property(fc.array(fc.nat(text.length)), (places) => {
        const cuts = [0, ...places.sort((a, b) => a - b), text.length];
        const reader = backupReader();
        cuts.forEach((cut, i) => reader.push(text.slice(cut, cuts[i + 1])));
        expect(reader.finish()).toEqual(whole);
      }),
      { numRuns: 50 },
    );
  });

  it("needs no line feed at its end, and bears those of another system", () => {
    const whole = readLines(sampleLines());
    for (const text of [sampleLines().join("\n"), sampleLines().join("\r\n")]) {
      const reader = backupReader();
      reader.push(text);
      expect(reader.finish()).toEqual(whole);
    }
  });

  it("keeps fields of a newer version, inner ones included", () => {
    const lines = withLine(REVIEW, ({ review }) => {
      const old = review as { variant: object };
      return {
        review: { ...old, mood: "good", variant: { ...old.variant, lit: 1 } },
      };
    });
    const read = readLines(lines);
    expect(read.ok && read.value.reviews.get("Ann-0")).toMatchObject({
      mood: "good",
      variant: { home: 0, lit: 1 },
    });
  });

  it("of a newer version that this one can read leaves out lines of a new kind, and counts them", () => {
    const lines = withLine(HEADER, (header) => ({ ...header, version: 7 }));
    const end = lines.at(-1) ?? "";
    const read = readLines([...lines.slice(0, -1), '{"photo":1}', end]);
    expect(read.ok && read.value.unknownLines).toBe(1);
  });

  it("takes a line that stands there twice for one", () => {
    const review = sampleLines()[REVIEW - 1] ?? "";
    const lines = withLine(HEADER, (header) => ({ ...header, reviews: 5 }));
    const twice = [...lines.slice(0, -1), review].concat(
      JSON.stringify({
        end: { learners: 2, settings: 1, decks: 1, reviews: 4, damaged: 1 },
      }),
    );
    const read = readLines(twice);
    expect(read.ok && read.value.reviews.size).toBe(3);
    expect(read.ok && read.value.conflicts).toEqual([]);
  });

  it.each([
    ["learner", LEARNER, { learner: { ...ANN, name: "Anna" } }, ANN.id],
    [
      "settings",
      SETTINGS,
      { settings: { learner: ANN.id, value: { hold: "up" } } },
      ANN.id,
    ],
    ["deck", DECK, { deck: { ...CLUB_DECK, name: "other" } }, "club"],
    [
      "review",
      REVIEW,
      { review: { ...answersOf(ANN, 1)[0], verdict: "missed" } },
      "Ann-0",
    ],
  ] as const)(
    "keeps the first of two lines of one %s that disagree, and says so",
    (kind, place, second, id) => {
      const counts = { learners: 2, settings: 1, decks: 1, reviews: 3 };
      const field = kind === "settings" ? kind : (`${kind}s` as const);
      const more = { ...counts, [field]: counts[field] + 1, damaged: 1 };
      const lines = withLine(HEADER, (header) => ({
        ...header,
        learners: more.learners,
        decks: more.decks,
        reviews: more.reviews + 1,
      }));
      const first = readLines(sampleLines());
      const read = readLines([
        ...lines.slice(0, -1),
        JSON.stringify(second),
        JSON.stringify({ end: more }),
      ]);
      if (!read.ok || !first.ok) throw new Error("both can be read");
      expect(read.value.conflicts).toEqual([{ kind, id, line: END }]);
      expect({ ...read.value, header: 0, conflicts: 0 }).toEqual({
        ...first.value,
        header: 0,
        conflicts: 0,
      });
      expect(place).toBeLessThan(END);
    },
  );
});

const deep = (depth: number) => "[".repeat(depth) + "]".repeat(depth);

describe("a backup is refused", () => {
  it.each<[string, readonly string[]]>([
    ["is empty", []],
    ["holds an empty line", [""]],
    ["is text", ["Dear Ann,", "…"]],
    ["is another kind of file", ['{"turnwise":"deck","version":1}']],
    ["begins with a list", ["[1]"]],
    ["is one line without end", ["x".repeat(LONGEST_LINE + 1)]],
    ["begins nested too deep", [`{"turnwise":"backup","a":${deep(40)}}`]],
  ])("as none where it %s", (_what, lines) => {
    expect(readLines(lines)).toEqual({
      ok: false,
      error: { code: "not-a-backup" },
    });
  });

  it("where a newer version wrote it that this one cannot read", () => {
    const lines = withLine(HEADER, (header) => ({
      ...header,
      version: 9,
      readableFrom: 3,
    }));
    expect(readLines(lines)).toEqual({
      ok: false,
      error: { code: "newer-backup", version: 9 },
    });
  });

  it("as cut off wherever it ends before its end", () => {
    const text = sampleLines().join("\n");
    const header = text.indexOf("\n");
    for (let length = header; length < text.length; length += 1) {
      const reader = backupReader();
      reader.push(text.slice(0, length));
      const line = text.slice(0, length).split("\n").length;
      expect(reader.finish()).toEqual({
        ok: false,
        error: { code: "truncated", line },
      });
    }
  });

  it.each<[string, readonly string[], object]>([
    [
      "lines-after-end",
      [...sampleLines(), '{"deck":{"id":"a"}}'],
      { line: END + 1 },
    ],
    ["unknown-line", withMore('{"photo":1}'), { line: END }],
    ["line-not-json", withLine(REVIEW, "{"), { line: REVIEW }],
    ["line-not-json", withLine(REVIEW, ""), { line: REVIEW }],
    [
      "line-too-deep",
      withLine(DECK, `{"deck":${deep(DEEPEST_LINE)}}`),
      { line: DECK },
    ],
    [
      "line-too-deep",
      withLine(DECK, `{"deck":${"[".repeat(500_000)}`),
      { line: DECK },
    ],
    [
      "line-too-long",
      withLine(DECK, `{"deck":"${"x".repeat(LONGEST_LINE)}"}`),
      { line: DECK },
    ],
    [
      "forbidden-key",
      withLine(SETTINGS, '{"settings":{"value":{"__proto__":{"a":1}}}}'),
      { line: SETTINGS, field: "settings.value.__proto__" },
    ],
    [
      "wrong-field",
      withLine(REVIEW, "7"),
      { line: REVIEW, field: "", problem: "wrong-type" },
    ],
    [
      "wrong-field",
      withLine(HEADER, (header) => ({ ...header, madeAt: "today" })),
      { line: HEADER, field: "madeAt", problem: "wrong-type" },
    ],
    [
      "wrong-field",
      withLine(HEADER, (header) => ({ ...header, version: 0 })),
      { line: HEADER, field: "version", problem: "out-of-range" },
    ],
    [
      "wrong-field",
      withLine(LEARNER, () => ({ learner: { ...ANN, id: "ann" } })),
      { line: LEARNER, field: "learner.id", problem: "out-of-range" },
    ],
    [
      "wrong-field",
      withLine(SETTINGS, () => ({ settings: { learner: ANN.id, value: 1 } })),
      { line: SETTINGS, field: "settings.value", problem: "wrong-type" },
    ],
    [
      "wrong-field",
      withLine(DECK, () => ({ deck: { id: 7 } })),
      { line: DECK, field: "deck.id", problem: "wrong-type" },
    ],
    [
      "wrong-field",
      withLine(REVIEW, () => ({ review: { ...answersOf(ANN, 1)[0], id: "" } })),
      { line: REVIEW, field: "review.id", problem: "out-of-range" },
    ],
    [
      "wrong-field",
      withLine(REVIEW, () => ({
        review: { ...answersOf(ANN, 1)[0], case: "E99" },
      })),
      { line: REVIEW, field: "review.case", problem: "unknown-value" },
    ],
    [
      "wrong-field",
      withLine(DAMAGED, () => ({ damaged: { table: "rounds" } })),
      { line: DAMAGED, field: "damaged.table", problem: "unknown-value" },
    ],
    [
      "wrong-field",
      withLine(END, () => ({ end: { learners: -1 } })),
      { line: END, field: "end.learners", problem: "out-of-range" },
    ],
    [
      "wrong-counts",
      sampleLines().filter((_, i) => i !== REVIEW),
      { line: END - 1, field: "reviews", said: 3, found: 2 },
    ],
    [
      "wrong-counts",
      withLine(HEADER, (header) => ({ ...header, learners: 3 })),
      { line: HEADER, field: "learners", said: 3, found: 2 },
    ],
  ])("as %s, with its place", (code, lines, place) => {
    expect(readLines(lines)).toEqual({ ok: false, error: { code, ...place } });
  });

  it("where it holds more lines or more answers than the limits", () => {
    const limits = { ...BACKUP_LIMITS, lines: 9 };
    expect(readLines(sampleLines(), limits)).toEqual({
      ok: false,
      error: { code: "too-many-lines", line: END },
    });
    expect(readLines(sampleLines(), { ...BACKUP_LIMITS, reviews: 2 })).toEqual({
      ok: false,
      error: { code: "too-many-reviews", line: REVIEW + 2 },
    });
  });

  it("without waiting for the end of a line that never ends", () => {
    const reader = backupReader();
    reader.push(`${sampleLines()[0] ?? ""}\n`);
    let pushed = 0;
    while (reader.push("x".repeat(10_000)).ok) pushed += 1;
    expect(pushed).toBe(LONGEST_LINE / 10_000);
    expect(reader.finish()).toEqual({
      ok: false,
      error: { code: "line-too-long", line: 2 },
    });
  });

  it("and stays so whatever comes after", () => {
    const reader = backupReader();
    reader.push("no backup\n");
    for (const line of sampleLines())
      expect(reader.push(`${line}\n`)).toEqual({
        ok: false,
        error: { code: "not-a-backup" },
      });
  });
});
