/**
 * The cases of the last layer's stages: looks gathered under turns of the
 * layer before and after. Neither changes what is to be done: a turn after is
 * another way to line the layer up, a turn before the same look seen from
 * another side.
 *
 * A look is one number while it is gathered, its parts the digits, and a turn
 * is a small table for each digit. Each stage is gathered when it is first
 * asked about (Node 20, one core): the 57, the 21 and every smaller stage within 4 ms, the
 * 493 in 16 ms, the 3,915 in 90 ms.
 */
import { invariant, present } from "../invariant";
import { runToEnd, type Steps } from "../steps";
import {
  type LastLayerLook,
  type LookPart,
  ODD_PLACES,
  PART_TEXTS,
  partTurnedAfter,
  partTurnedBefore,
  SOLVED_LOOK,
} from "./last-layer-look";
import {
  LAST_LAYER_RULES,
  type LastLayerRule,
  type LastLayerStage,
} from "./last-layer-stages";
import { orbitUnder } from "./orbits";

/** Some parts of a look. */
export type SeenLook = Partial<LastLayerLook>;

/** The looks that one case of a stage can show. */
export interface LastLayerOrbit {
  /**
   * What names the case: the texts of the parts asked for, with dashes
   * between; of all members that show what is done as when solved the least.
   * Shape: for the 57 this is `cornerTwists-edgeFlips` of the usual tables.
   */
  readonly code: string;
  /** How many looks it has. */
  readonly size: number;
  /**
   * One of its looks: the parts done and asked for, 0 the one that names the
   * case. Units: an index below `size`; anything else is a bug and throws.
   */
  readonly lookAt: (index: number) => SeenLook;
}

/** All cases of one stage. */
export interface LastLayerOrbits {
  /** The cases without the solved one, by their codes ascending. */
  readonly orbits: readonly LastLayerOrbit[];
  /** How many different looks the stage can show, the solved ones among them. */
  readonly looks: number;
  /** How many of them are solved, up to turns of the layer. */
  readonly solvedLooks: number;
  /**
   * The index of the case that a look shows, "answered" where there is nothing
   * left to do, or undefined where what comes before is not done.
   */
  readonly caseOf: (look: LastLayerLook) => number | "answered" | undefined;
}

/** Some parts as the digits of a number, the first part's highest. */
interface PartNumbers {
  readonly size: number;
  readonly numberOf: (look: LastLayerLook) => number | undefined;
  readonly lookOf: (number: number) => SeenLook;
  readonly steps: readonly ((number: number) => number)[];
}

function indexByText(part: LookPart): ReadonlyMap<string, number> {
  return new Map(PART_TEXTS[part].map((text, index) => [text, index]));
}

const INDEX_BY_TEXT: Readonly<Record<LookPart, ReadonlyMap<string, number>>> = {
  cornerTwists: indexByText("cornerTwists"),
  edgeFlips: indexByText("edgeFlips"),
  cornerPlaces: indexByText("cornerPlaces"),
  edgePlaces: indexByText("edgePlaces"),
};

/** What a step does to the digits, one table for each part, the last part's first. */
function stepBy(
  parts: readonly LookPart[],
  turned: (part: LookPart, text: string) => string,
): (number: number) => number {
  const tables = parts
    .toReversed()
    .map((part) =>
      PART_TEXTS[part].map((text) =>
        present(
          INDEX_BY_TEXT[part].get(turned(part, text)),
          "turning keeps a part's texts",
        ),
      ),
    );
  return (number) => {
    let rest = number;
    let result = 0;
    let worth = 1;
    for (const table of tables) {
      const digit = rest % table.length;
      rest = (rest - digit) / table.length;
      result += worth * (table[digit] ?? 0);
      worth *= table.length;
    }
    return result;
  };
}

function numbersOf(parts: readonly LookPart[]): PartNumbers {
  return {
    size: parts.reduce((size, part) => size * PART_TEXTS[part].length, 1),
    numberOf: (look) => {
      let number = 0;
      for (const part of parts) {
        const digit = INDEX_BY_TEXT[part].get(look[part]);
        if (digit === undefined) return undefined;
        number = number * PART_TEXTS[part].length + digit;
      }
      return number;
    },
    lookOf: (number) => {
      const look: Partial<Record<LookPart, string>> = {};
      let rest = number;
      for (const part of parts.toReversed()) {
        const texts = PART_TEXTS[part];
        const digit = rest % texts.length;
        rest = (rest - digit) / texts.length;
        look[part] = present(texts[digit], "a digit is below its radix");
      }
      return look;
    },
    steps: [
      stepBy(parts, (_, text) => partTurnedAfter(text)),
      stepBy(parts, partTurnedBefore),
    ],
  };
}

/** Whether a cube can show these parts together: both permutations are odd, or neither. */
function isReachable({ cornerPlaces, edgePlaces }: SeenLook): boolean {
  return (
    cornerPlaces === undefined ||
    edgePlaces === undefined ||
    ODD_PLACES.has(cornerPlaces) === ODD_PLACES.has(edgePlaces)
  );
}

/** How many looks are gathered between two steps: under a millisecond's worth. */
const LOOKS_A_STEP = 1024;

function* gather({ done, asks }: LastLayerRule): Steps<LastLayerOrbits> {
  // What is done comes first, so that the least number of an orbit has it solved.
  const seen = numbersOf([...done, ...asks]);
  const before = numbersOf(done);
  const sameNumber = (number: number) => number;
  const askedSize = seen.size / before.size;
  const numbers: number[] = [];
  const known = orbitUnder(0, sameNumber, before.steps).toSorted(
    (a, b) => a - b,
  );
  for (const [k, one] of known.entries())
    for (let n = 0; n < askedSize; n++) {
      const number = one * askedSize + n;
      if (isReachable(seen.lookOf(number))) numbers.push(number);
      if (n % LOOKS_A_STEP === 0)
        yield (0.5 * (k + n / askedSize)) / known.length;
    }
  const all: (readonly number[])[] = [];
  const caseOf = new Map<number, number | "answered">();
  for (const [i, number] of numbers.entries()) {
    if (i % LOOKS_A_STEP === 0) yield 0.5 + (0.4 * i) / numbers.length;
    if (caseOf.has(number)) continue;
    const orbit = orbitUnder(number, sameNumber, seen.steps);
    for (const member of orbit)
      caseOf.set(member, all.length === 0 ? "answered" : all.length - 1);
    all.push(orbit);
  }
  invariant(caseOf.size === numbers.length, "turning keeps what is done");
  const [answered, ...rest] = all;
  const orbits: LastLayerOrbit[] = [];
  for (const [i, orbit] of rest.entries()) {
    if (i % LOOKS_A_STEP === 0) yield 0.9 + (0.1 * i) / rest.length;
    const lookAt = (index: number) =>
      seen.lookOf(present(orbit[index], "a look is below the orbit's size"));
    orbits.push({ code: codeOf(lookAt(0), asks), size: orbit.length, lookAt });
  }
  return {
    orbits,
    looks: numbers.length,
    solvedLooks: present(answered, "the solved look is one").length,
    caseOf: (look) => {
      const number = seen.numberOf(look);
      return number === undefined ? undefined : caseOf.get(number);
    },
  };
}

/** Some parts of a look as one text; a part left out is as when solved. */
export function codeOf(look: SeenLook, parts: readonly LookPart[]): string {
  return parts.map((part) => look[part] ?? SOLVED_LOOK[part]).join("-");
}

const GATHERED = new Map<LastLayerStage, LastLayerOrbits>();

/** Gathers the cases of a stage of the last layer, where that is not done yet, so that other work can go on in between. */
export function* gatherLastLayer(
  stage: LastLayerStage,
): Steps<LastLayerOrbits> {
  const known = GATHERED.get(stage);
  if (known !== undefined) return known;
  const gathered = yield* gather(LAST_LAYER_RULES[stage]);
  // Somebody may have needed them before the last slice was done.
  const first = GATHERED.get(stage) ?? gathered;
  GATHERED.set(stage, first);
  return first;
}

/** The cases of a stage of the last layer; always the same object for the same stage. */
export function lastLayerOrbits(stage: LastLayerStage): LastLayerOrbits {
  return runToEnd(gatherLastLayer(stage));
}
