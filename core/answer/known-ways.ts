/**
 * The ways of a stage as lines of the body, each cut into how it lines up and
 * what it then does, so that an answer is found among them by one look-up
 * however it was written and held.
 */
import type { CaseId } from "../cases/case-ids";
import { casesOfStage, waysOf } from "../cases/case-table";
import { holdFor, holdInStage } from "../cases/hold-in-stage";
import {
  FIRST_LAYER_FACE,
  FREE_LAYER,
  rotationToHome,
  type Stage,
} from "../cases/stage";
import type { Hold, HomeIndex } from "../cases/variant";
import { type Hand, HANDS, type Way } from "../cases/way";
import { compose, type Cubies, SOLVED } from "../cube/cubies";
import { FACE_TURNS, faceTurnIndex } from "../cube/face-turns";
import { FACE_INDEX, type Face, OPPOSITE_FACE } from "../cube/faces";
import { conjugate, type Rotation, thenSymmetry } from "../cube/symmetries";
import type { Quarters, Turn } from "../cube/turns";
import { present } from "../invariant";
import { type BodyStep, bodyLine } from "./body-line";

/** Where ways come from: `waysOf`, or another table of the same shape. */
export type WaySource = (id: CaseId, hold: Hold, hand: Hand) => readonly Way[];

/** A turn of a face of the body. */
export interface FaceStep {
  readonly face: Face;
  readonly quarters: Quarters;
}

/** A line cut into the turns of the free layer that begin it and the rest; those that end it are left out, for they are free. */
export interface SplitLine {
  /** Quarters of the free layer before the first turn that commits: 0–3. */
  readonly lead: number;
  readonly core: readonly BodyStep[];
}

/** A way in the body's frame for home 0, which is the same for either hold. */
export interface KnownWay extends SplitLine {
  readonly id: CaseId;
  /** As written, in the hold of `writtenHold`. */
  readonly turns: readonly Turn[];
  /** What the core alone does. */
  readonly effect: Cubies;
}

/** All ways of a stage's cases, either hand, every school. */
export interface StageWays {
  readonly ofCase: (id: CaseId) => readonly KnownWay[];
  /** The ways whose core is this one. */
  readonly withCore: (core: readonly FaceStep[]) => readonly KnownWay[];
}

/** The stages whose cases have no ways of their own: what is known of them is worked out by effect alone. */
const WITHOUT_WAYS: readonly Stage[] = [
  "last-layer-but-edges-turned",
  "last-layer-whole",
];

/** Cuts a line. A turn of the first layer beside the first turn of the free one does not hide it. */
export function splitLine(line: readonly BodyStep[]): SplitLine {
  const [first, second] = line;
  const at =
    first?.face === FREE_LAYER
      ? 0
      : first?.face === FIRST_LAYER_FACE && second?.face === FREE_LAYER
        ? 1
        : undefined;
  const rest = line.filter((_, i) => i !== at);
  const end = rest.at(-1)?.face === FREE_LAYER ? -1 : undefined;
  return {
    lead: at === undefined ? 0 : (line[at]?.quarters ?? 0),
    core: rest.slice(0, end),
  };
}

/** A sequence as it is seen from another home of the same stage, cut. */
export function splitFrom(
  home: HomeIndex,
  hold: Rotation,
  turns: readonly Turn[],
): SplitLine {
  // The body renamed so that this home is the reference one.
  return splitLine(bodyLine(thenSymmetry(rotationToHome(home), hold), turns));
}

/** What steps do to all pieces. */
export function effectOfSteps(steps: readonly FaceStep[]): Cubies {
  return steps.reduce((after, step) => compose(after, turnOf(step)), SOLVED);
}

/** A step as a state. */
export function turnOf({ face, quarters }: FaceStep): Cubies {
  return present(
    FACE_TURNS[faceTurnIndex(face, quarters)],
    "every face can be turned",
  );
}

/** The effect of something known for home 0, done for another home. */
export function effectForHome(effect: Cubies, home: HomeIndex): Cubies {
  return conjugate(effect, rotationToHome(home));
}

/** Steps with those of opposite faces in the order in which a line has them. */
export function inOrder(steps: readonly FaceStep[]): readonly FaceStep[] {
  // In a line no face follows itself, so opposite faces come in twos.
  const isOutOfOrder = (a: FaceStep | undefined, b: FaceStep | undefined) =>
    a !== undefined &&
    b !== undefined &&
    OPPOSITE_FACE[a.face] === b.face &&
    FACE_INDEX[a.face] > FACE_INDEX[b.face];
  return steps.map((step, i) => {
    const [before, next] = [steps[i - 1], steps[i + 1]];
    if (next !== undefined && isOutOfOrder(step, next)) return next;
    return before !== undefined && isOutOfOrder(before, step) ? before : step;
  });
}

/** Steps as one text, equal where the steps are. */
export function lineKey(steps: readonly FaceStep[]): string {
  return steps.map(({ face, quarters }) => `${face}${quarters}`).join("");
}

/** How the cube is held for a stage's ways as they are kept here. */
export function writtenHold(stage: Stage): Hold {
  return holdFor(stage, "up");
}

function waysOfStage(stage: Stage, source: WaySource): readonly KnownWay[] {
  if (WITHOUT_WAYS.includes(stage)) return [];
  const hold = writtenHold(stage);
  const held = holdInStage(stage, { home: 0, seenFrom: 0 }, hold);
  return casesOfStage(stage).flatMap(({ id }) => {
    const seen = new Set<string>();
    return HANDS.flatMap((hand) => source(id, hold, hand)).flatMap(
      ({ turns }): readonly KnownWay[] => {
        const split = splitLine(bodyLine(held, turns));
        const key = `${split.lead} ${lineKey(split.core)}`;
        if (seen.has(key)) return [];
        seen.add(key);
        return [{ id, turns, ...split, effect: effectOfSteps(split.core) }];
      },
    );
  });
}

function gathered<T>(
  ways: readonly KnownWay[],
  keyOf: (way: KnownWay) => T,
): ReadonlyMap<T, readonly KnownWay[]> {
  const by = new Map<T, KnownWay[]>();
  for (const way of ways) {
    const key = keyOf(way);
    by.set(key, [...(by.get(key) ?? []), way]);
  }
  return by;
}

// Worked out at the first miss of a stage and needed for every further one.
const KNOWN = new WeakMap<WaySource, Map<Stage, StageWays>>();

/** The ways of a stage; always the same object for the same source. */
export function stageWays(stage: Stage, source: WaySource = waysOf): StageWays {
  const known = KNOWN.get(source) ?? new Map<Stage, StageWays>();
  KNOWN.set(source, known);
  const before = known.get(stage);
  if (before !== undefined) return before;
  const ways = waysOfStage(stage, source);
  const byCase = gathered(ways, ({ id }) => id);
  const byCore = gathered(ways, ({ core }) => lineKey(core));
  const made: StageWays = {
    ofCase: (id) => byCase.get(id) ?? [],
    withCore: (core) => byCore.get(lineKey(core)) ?? [],
  };
  known.set(stage, made);
  return made;
}
