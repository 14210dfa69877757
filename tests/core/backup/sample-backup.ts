import type { BackupError } from "../../../core/backup/backup-error";
import {
  type BackupContents,
  type BackupLimits,
  backupReader,
} from "../../../core/backup/backup-reader";
import {
  backupWriter,
  type BackupWriter,
} from "../../../core/backup/backup-writer";
import { inParts } from "../../../core/backup/in-parts";
import type { Learner } from "../../../core/memory/learner";
import type { Review } from "../../../core/memory/review";
import type { KeptSheet } from "../../../core/paper/kept-sheet";
import { type CodedSheet, sheetCode } from "../../../core/paper/sheet-code";
import type { Result } from "../../../core/result";
import { answerLineOf } from "../../../core/sharing/shared-answer";
import { sampleReview } from "../memory/sample-review";
import { ms, sampleRun } from "../runs/sample-run";

/** Two learners of the samples. */
export const ANN: Learner = {
  id: "7d9f3f0e-8a1c-4b8e-9d5e-0c5f6a7b8c9d",
  name: "Ann",
  createdAt: 1,
};
export const BEN: Learner = {
  id: "11111111-2222-4333-8444-555555555555",
  name: "Ben",
  createdAt: 2,
};

/** A deck as the store may hold one. */
export const CLUB_DECK = { id: "club", name: "Tuesday club", cases: ["E1"] };

/** `count` answers of a learner, a day apart. */
export function answersOf(learner: Learner, count: number): Review[] {
  return Array.from({ length: count }, (_, i) =>
    sampleReview(20_000 + i, {
      id: `${learner.name}-${i}`,
      learner: learner.id,
    }),
  );
}

const RUNS = [
  sampleRun({ id: "run", learner: ANN.id, splits: [ms(4000)] }),
  { id: "strike", learner: ANN.id, at: 2e12, strikes: "run" },
  { id: "torn-run", learner: ANN.id },
];

const PRINTED: CodedSheet = {
  kind: "cases",
  cases: [{ case: "E1", target: 8 }],
  hold: "up",
  number: 1,
  count: 12,
  opening: "front",
};

/** A sheet that was printed. */
export const SHEET: KeptSheet = {
  ...PRINTED,
  code: sheetCode(PRINTED),
  deck: CLUB_DECK.id,
  deckName: CLUB_DECK.name,
  printedAt: ms(3),
};

/** Somebody who shared results in two blocks, took back the first, and has a nickname. */
const CY = "33333333-2222-4333-8444-555555555555";
const CYS_BLOCKS = [
  {
    id: "a".repeat(64),
    learner: CY,
    madeAt: 20,
    kind: "answers",
    name: "Cy",
    answers: answersOf(ANN, 2).map((one) => answerLineOf(one, "answers")),
  },
  { id: "b".repeat(64), learner: CY, madeAt: 10, kind: "withdrawn" },
];
const CY_HERE = { id: CY, nickname: "Owl", withdrawnAt: 10 };

/** The lines of a small backup: Ann with three answers, Ben with none, a deck, a damaged row; where told so, also a run of Ann's that was struck out, and a damaged one, and what only a coach has: a sheet, and somebody's results. */
export function sampleLines(withMore = false): string[] {
  const writer = backupWriter();
  const text = [
    writer.header({
      madeAt: 5,
      learners: 2,
      reviews: 4,
      decks: 1,
      runs: withMore ? RUNS.length : 0,
    }),
    ...[ANN, BEN].map((content) =>
      writer.row({ kind: "learner", content, table: "learners", key: "" }),
    ),
    writer.row({
      kind: "settings",
      content: { learner: ANN.id, value: { hold: "down" } },
      table: "settings",
      key: `learner:${ANN.id}`,
    }),
    writer.row({
      kind: "deck",
      content: CLUB_DECK,
      table: "decks",
      key: "club",
    }),
    ...answersOf(ANN, 3).map((content) =>
      writer.row({ kind: "review", content, table: "reviews", key: "" }),
    ),
    writer.row({
      kind: "review",
      content: { id: "torn", learner: ANN.id },
      table: "reviews",
      key: "torn",
    }),
    ...(withMore ? RUNS : []).map((content) =>
      writer.row({ kind: "run", content, table: "runs", key: content.id }),
    ),
    ...(withMore ? coachLines(writer) : []),
    writer.end(),
  ];
  return text.map((line) => line.replace(/\n$/, ""));
}

function coachLines(writer: BackupWriter): readonly string[] {
  const parts = CYS_BLOCKS.flatMap((block) => inParts(block, 300));
  return [
    writer.row({
      kind: "sheet",
      content: SHEET,
      table: "sheets",
      key: SHEET.code,
    }),
    writer.row({
      kind: "classmate",
      content: CY_HERE,
      table: "classmates",
      key: CY,
    }),
    ...parts.map((content) =>
      writer.row({
        kind: "heard",
        content,
        table: "heard",
        key: content.row.id,
      }),
    ),
  ];
}

/** Reads lines as a backup. */
export function readLines(
  lines: readonly string[],
  limits?: BackupLimits,
): Result<BackupContents, BackupError> {
  const reader = backupReader(limits);
  for (const line of lines) reader.push(`${line}\n`);
  return reader.finish();
}
