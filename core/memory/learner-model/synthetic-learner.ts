/**
 * A made-up learner who answers cases: remembers and forgets by
 * `true-memory.ts`, takes times that show how sure they were (or do not),
 * slips, is called away, mixes look-alikes up and skips days.
 *
 * Everything is drawn from one source: the same seed is the same learner with
 * the same answers, as long as they are asked the same.
 */
import { type RandomSource } from "../../random-source";
import { drawNormal, drawUnit, happens } from "./draw";
import {
  type MemoryTraits,
  strengthAfterMiss,
  strengthAfterRecall,
  taughtStrength,
  trueChance,
} from "./true-memory";

/** What a learner is like. */
export interface LearnerTraits extends MemoryTraits {
  /** How far cases differ. Units: standard deviation of ln. */
  readonly easeSpread: number;
  /** How far strength goes up and down, with the day and with each asking. Units: as above. */
  readonly fluctuation: number;
  /** How much thinking time falls as certainty rises. Units: ln of time for each unit of log-odds; 0: times say nothing. */
  readonly telling: number;
  /** The chance that a day is skipped. */
  readonly skipsDays: number;
}

/** What happened when a case was asked. Units: milliseconds. */
export interface SyntheticAnswer {
  readonly isRecalled: boolean;
  readonly thinking: number;
  readonly turning: number;
  /** How many turns of faces it took. */
  readonly turns: number;
  readonly corrections: number;
  readonly slips: number;
  readonly isHinted: boolean;
  /** The case it was mistaken for; absent: for none. */
  readonly mistakenFor?: number;
  /** What the chance truly was. */
  readonly chance: number;
}

interface TrueCase {
  readonly ease: number;
  /** How much longer than others it takes to recognise. Units: ln. */
  readonly hardToSee: number;
  readonly turns: number;
  readonly twin: number;
  strength: number | undefined;
  lastDay: number;
  /** On how many days it was practised. */
  days: number;
}

/** Thinking of somebody well practised, at a chance of 0.9. Units: ln of milliseconds. */
const LN_THINKING = Math.log(1300);

/** How much slower the first answers are, and over how many days that wears off. Source: exponential practice curves, Heathcote, Brown, Mewhort 2000. */
const BEGINNING = { slower: 0.8, over: 12 };

const TIME_SPREAD = 0.22;
const IDLES = 0.02;
const SLIPS = 0.05;

/** How likely a look-alike is given instead when both have just been met, and over how many days that wears off. */
const CONFUSION = { first: 0.12, over: 3 };

/** How much of the mood of a day is left on the next. */
const MOOD_STAYS = 0.6;

/** Seconds a turn and before the first one, at a middling speed. Units: milliseconds. */
const TURNING = { start: 300, each: 550 };

/** A made-up learner of so many cases, numbered from 0. */
export class SyntheticLearner {
  readonly #random: RandomSource;
  readonly #traits: LearnerTraits;
  readonly #cases: readonly TrueCase[];
  readonly #offset: number;
  readonly #speed: number;
  #mood = 0;
  #moodDay = 0;

  constructor(random: RandomSource, traits: LearnerTraits, cases: number) {
    this.#random = random;
    this.#traits = traits;
    this.#offset = drawNormal(random, 0, 0.4);
    this.#speed = Math.exp(drawNormal(random, 0, 0.3));
    this.#cases = Array.from({ length: cases }, (_, i) => ({
      ease: drawNormal(random, 0, traits.easeSpread),
      hardToSee: drawNormal(random, 0, 0.25),
      turns: 3 + random.below(7),
      // Two and two are look-alikes; a last one of an odd number is its own.
      twin: Math.min(i ^ 1, cases - 1),
      strength: undefined,
      lastDay: 0,
      days: 0,
    }));
  }

  /** Whether the learner practises on a day. To be asked once a day. */
  comes(): boolean {
    return !happens(this.#random, this.#traits.skipsDays);
  }

  /** Shows a case: it is known from then on, after some askings at once. */
  teach(id: number, day: number): void {
    const one = this.#cases[id];
    if (one === undefined) return;
    one.strength = taughtStrength(this.#traits, one.ease);
    one.lastDay = day;
    one.days = 1;
  }

  /** The chance, fluctuation apart, that a case is known on a day; 0 where it was never taught. */
  chanceOf(id: number, day: number): number {
    const one = this.#cases[id];
    if (one?.strength === undefined) return 0;
    const days = Math.max(0, day - one.lastDay);
    return (
      trueChance(this.#traits, one.strength, days) *
      (1 - this.#confusionOf(one))
    );
  }

  /** Asks a case that was taught, on a later day than the last time: it changes what is remembered. */
  ask(id: number, day: number): SyntheticAnswer | undefined {
    const one = this.#cases[id];
    if (one?.strength === undefined) return undefined;
    const random = this.#random;
    const felt =
      one.strength *
      Math.exp(
        this.#moodOf(day) + drawNormal(random, 0, this.#traits.fluctuation),
      );
    const remembered = trueChance(
      this.#traits,
      felt,
      Math.max(0, day - one.lastDay),
    );
    const confusion = this.#confusionOf(one);
    const chance = remembered * (1 - confusion);
    const drawn = drawUnit(random);
    const isRecalled = drawn < chance;
    const isMistaken = !isRecalled && drawn < remembered;
    one.strength = isRecalled
      ? strengthAfterRecall(this.#traits, one.strength, one.ease, remembered)
      : strengthAfterMiss(this.#traits, one.strength, one.ease);
    one.lastDay = day;
    one.days += 1;
    return {
      isRecalled,
      ...this.#timesOf(one, remembered),
      corrections: happens(random, 0.02 + 0.3 * (1 - chance)) ? 1 : 0,
      slips: happens(random, SLIPS) ? 1 : 0,
      isHinted: happens(random, 0.2 * (1 - chance)),
      ...(isMistaken ? { mistakenFor: one.twin } : {}),
      chance,
    };
  }

  #timesOf(one: TrueCase, chance: number) {
    const random = this.#random;
    const unsure = Math.log(
      Math.min(0.999, chance) / (1 - Math.min(0.999, chance)),
    );
    const practised = BEGINNING.slower * Math.exp(-one.days / BEGINNING.over);
    const middling = Math.log(9);
    const thinking = Math.exp(
      LN_THINKING +
        this.#offset +
        one.hardToSee +
        practised -
        this.#traits.telling * (unsure - middling) +
        drawNormal(random, 0, TIME_SPREAD),
    );
    const isAway = happens(random, IDLES);
    const turning =
      this.#speed *
      Math.exp(practised / 2 + drawNormal(random, 0, TIME_SPREAD / 2)) *
      (TURNING.start + TURNING.each * one.turns);
    return {
      thinking: isAway
        ? thinking + 30_000 + 60_000 * drawUnit(random)
        : thinking,
      turning,
      turns: one.turns,
    };
  }

  /** The mood of a day, the same however often it is asked for. Days come in rising order. */
  #moodOf(day: number): number {
    const { fluctuation } = this.#traits;
    for (; this.#moodDay < day; this.#moodDay++)
      this.#mood =
        MOOD_STAYS * this.#mood +
        drawNormal(
          this.#random,
          0,
          fluctuation * Math.sqrt(1 - MOOD_STAYS * MOOD_STAYS),
        );
    return this.#mood;
  }

  #confusionOf(one: TrueCase): number {
    const twin = this.#cases[one.twin];
    if (twin?.strength === undefined || twin === one) return 0;
    const days = Math.min(one.days, twin.days);
    return CONFUSION.first * Math.exp(-days / CONFUSION.over);
  }
}
