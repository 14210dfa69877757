/**
 * Writing blocks of results. An answer whose line the reader would refuse is
 * left out and counted, so that one odd answer never costs the block.
 */
import type { Milliseconds, Review } from "../memory/review";
import type { ResultsBlock } from "./results-block";
import { parseResultsLine, RESULTS_VERSION } from "./results-line";
import {
  type AnswerLine,
  answerLineOf,
  type SharedPart,
} from "./shared-answer";

/** The most answers that are put into one block; a longer log makes more of them. */
export const ANSWERS_A_BLOCK = 20_000;

/** A block's text, before it is packed. */
export interface WrittenResults {
  /** JSON lines, each with its line feed. */
  readonly text: string;
  /** The ids of the answers in it. */
  readonly answers: readonly string[];
  /** How many answers were left out, because no reader would take them. */
  readonly leftOut: number;
}

/** Writes a block. */
export function writeResults(block: ResultsBlock): WrittenResults {
  const { kind, learner, madeAt } = block;
  const about = {
    turnwise: "results",
    version: RESULTS_VERSION,
    readableFrom: RESULTS_VERSION,
    kind,
    learner,
    ...(kind === "answers" && { name: block.name }),
    madeAt,
  };
  const lines = [JSON.stringify(about)];
  const answers: string[] = [];
  const given = kind === "answers" ? block.answers : [];
  for (const answer of given) {
    const line = JSON.stringify({ answer });
    if (!parseResultsLine(line).ok) continue;
    lines.push(line);
    answers.push(answer.id);
  }
  lines.push(JSON.stringify({ end: { answers: answers.length } }));
  return {
    text: `${lines.join("\n")}\n`,
    answers,
    leftOut: given.length - answers.length,
  };
}

/** What blocks are made of. */
export interface ToShare {
  readonly learner: string;
  readonly name: string;
  readonly part: Exclude<SharedPart, "nothing">;
  readonly reviews: readonly Review[];
  /** Now, UTC. */
  readonly now: Milliseconds;
  /** When the learner's last block was made, where there was one. */
  readonly last: Milliseconds | undefined;
}

/** When a learner's next block is made: now, or just after the last one where the clock was set back. */
export function nextMadeAt(
  now: Milliseconds,
  last: Milliseconds | undefined,
): Milliseconds {
  return last === undefined || now > last ? now : ((last + 1) as Milliseconds);
}

/** The blocks that share some answers: none for no answers. */
export function blocksToShare(
  { learner, name, part, reviews, now, last }: ToShare,
  most = ANSWERS_A_BLOCK,
): readonly Extract<ResultsBlock, { kind: "answers" }>[] {
  const blocks = [];
  let madeAt = last;
  for (let from = 0; from < reviews.length; from += most) {
    madeAt = nextMadeAt(now, madeAt);
    const answers: readonly AnswerLine[] = reviews
      .slice(from, from + most)
      .map((review) => answerLineOf(review, part));
    blocks.push({ kind: "answers" as const, learner, name, madeAt, answers });
  }
  return blocks;
}
