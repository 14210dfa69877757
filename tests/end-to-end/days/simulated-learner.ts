/**
 * The made-up learner before the screen: what they remember comes from
 * `core/memory/learner-model`, whose true memory is not the scheduler's; here
 * it becomes keys. Of a day's further askings of a case, which the model does
 * not know, most are answered.
 */
import { areAlike } from "../../../core/cases/alike";
import type { CaseId } from "../../../core/cases/case-ids";
import type { Position } from "../../../core/cases/position";
import { wayOfSchool } from "../../../core/cases/case-table";
import { wayForPosition } from "../../../core/cases/way-for-position";
import type { Turn } from "../../../core/cube/turns";
import { FIRST_COURSE } from "../../../core/deck/starter-decks";
import { invariant, present } from "../../../core/invariant";
import { drawUnit, happens } from "../../../core/memory/learner-model/draw";
import {
  type LearnerTraits,
  type SyntheticAnswer,
  SyntheticLearner,
} from "../../../core/memory/learner-model/synthetic-learner";
import { type Hint, HINTS } from "../../../core/memory/review";
import type { RoundItem } from "../../../core/memory/round";
import {
  type RandomSource,
  randomSource,
  seedFrom,
} from "../../../core/random-source";
import {
  madeAndTakenBack,
  type PlannedAnswer,
  type Press,
  pressesOf,
  pressesTold,
  SHOW_ME,
  timesOf,
  wrongTurn,
} from "./planned-answer";

/** The course's cases, look-alikes two and two: the model's learner mixes up neighbours. */
function casesInPairs(): readonly CaseId[] {
  let left = FIRST_COURSE.flatMap(({ cases }) => cases.map((one) => one.case));
  const pairs: CaseId[] = [];
  const alone: CaseId[] = [];
  for (let id = left[0]; id !== undefined; id = left[0]) {
    const first = id;
    const twin = left.find(
      (other) => other !== first && areAlike(first, other),
    );
    if (twin === undefined) alone.push(first);
    else pairs.push(first, twin);
    left = left.filter((other) => other !== first && other !== twin);
  }
  return [...pairs, ...alone];
}

/** How a way is made when it is told or in sight. Units: milliseconds. */
const TOLD = { first: 2500, each: 1200 };

/** How soon a slip is taken back, and how late a turn that was meant. Units: milliseconds. */
const SLIP = 400;
const CORRECTION = 1600;

/** What is done by turns where nothing is known. */
const MISSES = ["given up", "wrong turn", "left"] as const;

/** Of further askings on a day. */
const AGAIN = { forgotten: 0.06, hinted: 0.05, slips: 0.05, corrects: 0.04 };

/** What comes of an asking, a case that was taken for it by its id. */
type Doing = Omit<SyntheticAnswer, "chance" | "mistakenFor"> & {
  readonly mistakenFor?: CaseId | undefined;
};

/** Somebody who answers what is asked. */
export class SimulatedLearner {
  readonly #random: RandomSource;
  readonly #cases = casesInPairs();
  readonly #model: SyntheticLearner;
  #misses = 0;
  /** The last day on which each case was taught or first asked. */
  readonly #lastDay = new Map<CaseId, number>();

  constructor(seed: number, traits: LearnerTraits) {
    this.#random = randomSource(seedFrom(seed, 0));
    this.#model = new SyntheticLearner(
      randomSource(seedFrom(seed, 1)),
      traits,
      this.#cases.length,
    );
  }

  /** Whether they practise on a day. To be asked once a day. */
  comes(): boolean {
    return this.#model.comes();
  }

  /** How long they read what came of an answer. Units: milliseconds. */
  readsFor(): number {
    return 3000 + this.#random.below(4000);
  }

  /** The same position answered once more, having read what was wrong. */
  retry(position: Position, way: readonly Turn[]): readonly Press[] {
    return rightly("recalled", position, way, TOLD.first, TOLD.each).presses;
  }

  /** What they do with an item. Shape: `way` is the one taught for it; `day` counts from the first. */
  answer(
    { asking }: Pick<RoundItem, "asking">,
    position: Position,
    way: readonly Turn[],
    day: number,
  ): PlannedAnswer {
    const { case: id } = position;
    if (asking === "shown") {
      if (!this.#lastDay.has(id)) this.#model.teach(this.#numberOf(id), day);
      this.#lastDay.set(id, day);
      // Enter makes the turn that is told.
      return unaided({
        doing: "told",
        presses: pressesTold(position, way, TOLD.first, TOLD.each),
      });
    }
    if (asking === "helped") {
      return unaided(rightly("helped", position, way, TOLD.first, TOLD.each));
    }
    const isFirst = asking === "alone" && this.#lastDay.get(id) !== day;
    this.#lastDay.set(id, day);
    return this.#act(
      isFirst ? this.#recall(id, day) : this.#again(id),
      position,
      way,
    );
  }

  #numberOf(id: CaseId): number {
    return this.#cases.indexOf(id);
  }

  #recall(id: CaseId, day: number): Doing {
    const answer = present(
      this.#model.ask(this.#numberOf(id), day),
      `${id} was taught before it was asked alone`,
    );
    const { mistakenFor, ...rest } = answer;
    return mistakenFor === undefined
      ? rest
      : { ...rest, mistakenFor: this.#twinOf(id) };
  }

  /** The look-alike that the model's learner mixes it up with; undefined where it has none. */
  #twinOf(id: CaseId): CaseId | undefined {
    const twin = this.#cases[this.#numberOf(id) ^ 1];
    return twin !== undefined && areAlike(id, twin) ? twin : undefined;
  }

  #again(id: CaseId): Doing {
    const random = this.#random;
    const isRecalled = !happens(random, AGAIN.forgotten);
    return {
      isRecalled,
      thinking: 1500 + 2500 * drawUnit(random),
      turning: 3000,
      turns: 5,
      corrections: happens(random, AGAIN.corrects) ? 1 : 0,
      slips: happens(random, AGAIN.slips) ? 1 : 0,
      isHinted: happens(random, AGAIN.hinted),
      mistakenFor: happens(random, 0.5) ? this.#twinOf(id) : undefined,
    };
  }

  #act(doing: Doing, position: Position, way: readonly Turn[]): PlannedAnswer {
    const { isRecalled, isHinted, corrections, slips } = doing;
    const each = Math.max(60, Math.round(doing.turning / doing.turns));
    let first = Math.max(200, Math.round(doing.thinking));
    const before: Press[] = [];
    const hints: Hint[] = isHinted ? ["piece"] : [];
    if (isHinted) {
      const half = Math.round(first / 2);
      before.push({ key: "?", wait: half });
      first -= half;
    }
    for (const after of [
      ...Array.from({ length: slips }, () => SLIP),
      ...Array.from({ length: corrections }, () => CORRECTION),
    ]) {
      before.push(...madeAndTakenBack(position, first, after));
      first = each;
    }
    const rest = isRecalled
      ? rightly("recalled", position, way, first, each)
      : this.#miss(doing, position, first, each);
    const presses = [...before, ...rest.presses];
    return {
      doing: rest.doing,
      presses,
      ...(rest.takenFor === undefined ? {} : { takenFor: rest.takenFor }),
      expected: {
        verdict: isRecalled ? "right" : "missed",
        hints: rest.doing === "given up" ? HINTS : hints,
        corrections,
        slips,
        ...timesOf(presses),
      },
    };
  }

  #nextMiss(): (typeof MISSES)[number] {
    this.#misses += 1;
    return present(MISSES[this.#misses % MISSES.length], "a remainder");
  }

  /** What somebody does who does not know the way. */
  #miss(
    { mistakenFor, isHinted }: Doing,
    position: Position,
    first: number,
    each: number,
  ): Doings {
    const done: Press = { key: "Enter", wait: 900 };
    if (mistakenFor !== undefined) {
      const turns = wayAsIf(position, mistakenFor);
      const { presses, answers } = pressesOf(position, turns, first, each);
      // Now and then it is right for both.
      if (!answers && turns.length > 0)
        return {
          doing: "mistaken",
          presses: [...presses, done],
          takenFor: mistakenFor,
        };
    }
    const doing = this.#nextMiss();
    if (doing === "given up")
      return {
        doing,
        presses: [
          ...Array.from({ length: isHinted ? 2 : 3 }, () => ({
            key: "?",
            wait: first,
          })),
          { key: SHOW_ME, wait: 2000 },
        ],
      };
    const { presses } = pressesOf(position, [wrongTurn(position)], first, each);
    const end = doing === "left" ? { key: "Escape", wait: 700 } : done;
    return { doing, presses: [...presses, end] };
  }
}

type Doings = Pick<PlannedAnswer, "doing" | "presses" | "takenFor">;

/** The way of another case, played as if the position showed that one. */
function wayAsIf(position: Position, other: CaseId): readonly Turn[] {
  const way = wayOfSchool(other, "first", position.hold);
  return way === undefined ? [] : wayForPosition(position, way);
}

function rightly(
  doing: "helped" | "recalled",
  position: Position,
  way: readonly Turn[],
  first: number,
  each: number,
): Doings {
  const { presses, answers } = pressesOf(position, way, first, each);
  invariant(answers, `the way that is taught for ${position.case} answers it`);
  return { doing, presses };
}

/** An answer in which nothing goes wrong. */
function unaided({ doing, presses }: Doings): PlannedAnswer {
  return {
    doing,
    presses,
    expected: {
      verdict: "right",
      hints: [],
      corrections: 0,
      slips: 0,
      ...timesOf(presses),
    },
  };
}
