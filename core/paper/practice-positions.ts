/**
 * Which positions a practice sheet asks, drawn from its number.
 *
 * What a learner's memory says goes in only as how far the cases are opened
 * up, which is chosen beside the number: so the same sheet can be made again
 * next week, when the memory is another.
 */
import type { Position } from "../cases/position";
import { randomPosition } from "../cases/random-position";
import { HOME_INDICES, type Hold } from "../cases/variant";
import type { DeckCase } from "../deck/deck";
import { drawVariant, type Opening } from "../memory/variant-opening";
import {
  pick,
  type RandomSource,
  randomSource,
  shuffled,
} from "../random-source";

/** What positions are drawn from. */
export interface PracticeChoice {
  /** At least one. */
  readonly cases: readonly DeckCase[];
  /** How many positions. */
  readonly count: number;
  /** How the first layer is held. */
  readonly hold: Hold;
  readonly opening: Opening;
  /** The sheet's number. */
  readonly number: number;
}

/** Cases in random order, each as often as any other but for the last time round, and none twice running where there are two. */
function casesAsked(
  random: RandomSource,
  cases: readonly DeckCase[],
  count: number,
): readonly DeckCase[] {
  const asked: DeckCase[] = [];
  while (asked.length < count) {
    const round = shuffled(random, cases);
    const [first, ...rest] = round;
    const isSame = first !== undefined && first === asked.at(-1);
    asked.push(...(isSame ? [...rest, first] : round));
  }
  return asked.slice(0, count);
}

/** The positions of a practice sheet, every piece known. The same choice draws the same positions. */
export function practicePositions(choice: PracticeChoice): readonly Position[] {
  const random = randomSource(choice.number);
  return casesAsked(random, choice.cases, choice.count).map((asked) => {
    const home = choice.opening === "front" ? 0 : pick(random, HOME_INDICES);
    const variant = drawVariant(
      random,
      asked.case,
      choice.opening,
      home,
      asked,
    );
    return randomPosition(random, asked.case, variant, choice.hold);
  });
}
