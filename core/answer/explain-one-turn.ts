/**
 * One turn of a known way that is missing, too many or wrong.
 *
 * A way is P·t·S. The answer A is the same but for that turn exactly when
 * P⁻¹·A·S⁻¹ is a turn, or nothing: so each place of a way is tried by two
 * products and not by 18 changed sequences. Turns that cancel where one
 * between them is missing are no trouble, for nothing is compared one by one.
 *
 * What does the same need not be the same turns: a way of the last layer made
 * from another side does what it does with a turn of the layer before and
 * after. So the few that are found are then compared as lines.
 */
import { afterFreeQuarters, FREE_QUARTERS } from "../cases/case-goal";
import { FREE_LAYER } from "../cases/stage";
import {
  compose,
  type Cubies,
  invert,
  isSameState,
  SOLVED,
} from "../cube/cubies";
import { FACE_TURNS } from "../cube/face-turns";
import { FACES, OPPOSITE_FACE } from "../cube/faces";
import { bodyTurns, holdAfterTurn } from "../cube/held-cube";
import { NO_ROTATION, type Rotation } from "../cube/symmetries";
import { isWholeCubeTurn, type Quarters, type Turn } from "../cube/turns";
import { bodyLine, sharedSteps, turnOfStep } from "./body-line";
import { departureFrom } from "./departure";
import type { Explanation, TurnSlip, WrongTurn } from "./explanation";
import type { GivenLine } from "./given-line";
import { type FaceStep, lineKey, splitLine, turnOf } from "./known-ways";
import type { RightLine } from "./right-lines";

/** The likeliest slips first: the right layer before another one. */
export const SLIPS: readonly TurnSlip[] = [
  "reversed",
  "amount",
  "missing",
  "extra",
  "another-layer",
];

/** How many corners a turn moves. */
const MOVED_BY_A_TURN = 4;

/** The turn that a state is, "nothing" where it is solved, undefined where it is neither. */
function turnThatIs(state: Cubies): FaceStep | "nothing" | undefined {
  if (isSameState(state, SOLVED)) return "nothing";
  const index = FACE_TURNS.findIndex((turn) => isSameState(turn, state));
  const face = FACES[Math.floor(index / 3)];
  return face === undefined
    ? undefined
    : { face, quarters: ((index % 3) + 1) as Quarters };
}

/** What kind of slip it is to make one turn for another. */
export function slipBetween(
  wanted: FaceStep,
  made: FaceStep | "nothing",
): TurnSlip {
  if (made === "nothing") return "missing";
  if (made.face !== wanted.face) return "another-layer";
  return made.quarters + wanted.quarters === 4 ? "reversed" : "amount";
}

/** A slip in a known way. */
interface Found {
  readonly slip: TurnSlip;
  readonly way: RightLine;
  /** How many steps of the way come before it. */
  readonly place: number;
  readonly made: FaceStep | undefined;
  readonly wanted: FaceStep | undefined;
}

/** The products of steps from the beginning: the first is nothing, the last all. */
function beginnings(steps: readonly FaceStep[]): readonly Cubies[] {
  const products = [SOLVED];
  let product = SOLVED;
  for (const step of steps) {
    product = compose(product, turnOf(step));
    products.push(product);
  }
  return products;
}

function isTurn(step: FaceStep | "nothing" | undefined): step is FaceStep {
  return step !== undefined && step !== "nothing";
}

/** What is wrong before the first turn that commits is no turn but how the piece was lined up. */
function isLiningUp(
  { steps }: RightLine,
  place: number,
  step: FaceStep,
): boolean {
  return [...steps.slice(0, place), step].every(
    ({ face }) => face === FREE_LAYER,
  );
}

/** Whether the answer is the way with its step at a place left out or changed for others, turn for turn. */
function isChangedSo(
  given: GivenLine,
  { steps }: RightLine,
  place: number,
  left: number,
  put: readonly FaceStep[],
): boolean {
  const changed = [
    ...steps.slice(0, place),
    ...put,
    ...steps.slice(place + left),
  ].map(({ face, quarters }): Turn => ({ layer: face, quarters }));
  const line = splitLine(bodyLine(NO_ROTATION, changed));
  return (
    line.lead === given.split.lead &&
    lineKey(line.core) === lineKey(given.split.core)
  );
}

/** Whether `a`, `b` and `c` one after the other move no more corners than a turn does: most do, and are seen not to be one without being worked out. */
function mayBeTurn(a: Cubies, b: Cubies, c: Cubies): boolean {
  let moved = 0;
  for (let at = 0; at < 8; at++) {
    const from = c.cornerPermutation[at] ?? at;
    const before = b.cornerPermutation[from] ?? from;
    if (a.cornerPermutation[before] !== at) moved++;
    if (moved > MOVED_BY_A_TURN) return false;
  }
  return true;
}

/** The turn that three states one after the other are. */
function turnBetween(
  a: Cubies,
  b: Cubies,
  c: Cubies,
): FaceStep | "nothing" | undefined {
  return mayBeTurn(a, b, c) ? turnThatIs(compose(compose(a, b), c)) : undefined;
}

/** Whether the answer but for a turn of the free layer at its end begins a way of which two turns or more are left. */
function isLittleOf({ line }: GivenLine, { steps }: RightLine): boolean {
  const begun = line.at(-1)?.face === FREE_LAYER ? line.slice(0, -1) : line;
  return (
    begun.length + 1 < steps.length && sharedSteps(begun, steps) >= begun.length
  );
}

function slipsIn(
  given: GivenLine,
  way: RightLine,
  ends: readonly Cubies[],
): readonly Found[] {
  const { steps } = way;
  const before = beginnings(steps);
  const whole = before.at(-1) ?? SOLVED;
  const undone = before.map(invert);
  const wholeUndone = invert(whole);
  const committing = steps.filter(({ face }) => face !== FREE_LAYER).length;
  const found: Found[] = [];
  for (const [place, prefixUndone] of undone.entries()) {
    const wanted = steps[place];
    // What is left of the way from here undone, with and without the turn here.
    const restUndone = compose(wholeUndone, before[place] ?? SOLVED);
    const laterUndone = compose(wholeUndone, before[place + 1] ?? SOLVED);
    for (const end of ends) {
      const extra = turnBetween(prefixUndone, end, restUndone);
      if (
        isTurn(extra) &&
        !isLiningUp(way, place, extra) &&
        isChangedSo(given, way, place, 0, [extra])
      )
        found.push({
          slip: "extra",
          way,
          place,
          made: extra,
          wanted: undefined,
        });
      if (wanted === undefined) continue;
      const made = turnBetween(prefixUndone, end, laterUndone);
      if (made === undefined || isLiningUp(way, place, wanted)) continue;
      const slip = slipBetween(wanted, made);
      // Any one turn is a way of one turn with another layer turned.
      if (slip === "another-layer" && committing < 2) continue;
      const put = made === "nothing" ? [] : [made];
      if (isChangedSo(given, way, place, 1, put))
        found.push({ slip, way, place, made: put[0], wanted });
    }
  }
  return found;
}

/** How many of the learner's own turns make the beginning of a way; undefined where none do. */
function turnsMaking(given: GivenLine, beginning: Cubies): number | undefined {
  let { hold } = given;
  let made = SOLVED;
  for (let index = 0; ; index++) {
    if (isSameState(made, beginning)) return index;
    const turn = given.turns[index];
    if (turn === undefined) return undefined;
    for (const [face, quarters] of bodyTurns(hold, turn))
      made = compose(made, turnOf({ face, quarters }));
    hold = holdAfterTurn(hold, turn);
  }
}

/** Where a slip stands among the learner's own turns, and what was turned and wanted there. */
function placed(given: GivenLine, found: Found): WrongTurn {
  const { slip, way, place, made, wanted } = found;
  const beginning = beginnings(way.steps)[place] ?? SOLVED;
  let index =
    turnsMaking(given, beginning) ??
    departureFrom(given, way)?.index ??
    given.turns.length;
  if (slip !== "missing")
    while (index < given.turns.length && isWhole(given.turns[index])) index++;
  const hold = given.holdAfter(index);
  const turn = given.turns[index];
  const isMade =
    made !== undefined && turn !== undefined && isTurnOf(hold, turn, made);
  if (made !== undefined && !isMade) return { slip, index };
  return {
    slip,
    index,
    ...(isMade ? { made: turn } : {}),
    ...(wanted === undefined ? {} : { wanted: turnOfStep(hold, wanted) }),
  };
}

function isTurnOf(hold: Rotation, turn: Turn, step: FaceStep): boolean {
  const [only, ...more] = bodyTurns(hold, turn);
  return (
    more.length === 0 && only?.[0] === step.face && only[1] === step.quarters
  );
}

function isWhole(turn: Turn | undefined): boolean {
  return turn !== undefined && isWholeCubeTurn(turn);
}

/** Turns of the free layer at the end are free: the answer with each of them. */
function endsOf({ effect }: GivenLine): readonly Cubies[] {
  return FREE_QUARTERS.map((quarters) => afterFreeQuarters(effect, quarters));
}

/** A way, and the same with turns of opposite faces the other way about: a slip may come between them. */
function bothOrders(way: RightLine): readonly RightLine[] {
  const { steps } = way;
  const isPair = (a: FaceStep | undefined, b: FaceStep | undefined) =>
    a !== undefined && b !== undefined && OPPOSITE_FACE[a.face] === b.face;
  const swapped = steps.map((step, i) => {
    const [before, next] = [steps[i - 1], steps[i + 1]];
    if (next !== undefined && isPair(step, next)) return next;
    return before !== undefined && isPair(before, step) ? before : step;
  });
  return swapped.some((step, i) => step !== steps[i])
    ? [way, { ...way, steps: swapped }]
    : [way];
}

/** One turn of a known way that went wrong, in one of some manners. */
export function oneTurnOfWay(
  given: GivenLine,
  slips: readonly TurnSlip[],
): Explanation | undefined {
  // Where nothing commits, leaving one turn out of R' D R cancels the others.
  if (given.committing === 0) return undefined;
  const ends = endsOf(given);
  const found = given.rightLines
    // Where a turn is missing those beside it may cancel; nothing adds more
    // than one. Where all that came after would, it was not turned at all.
    .filter(
      (way) =>
        way.steps.length + 1 >= given.split.core.length &&
        !isLittleOf(given, way),
    )
    .flatMap((way) =>
      bothOrders(way).flatMap((one) => slipsIn(given, one, ends)),
    );
  for (const slip of slips) {
    const first = found.find((one) => one.slip === slip);
    if (first !== undefined)
      return {
        kind: "one-turn",
        evidence: "from-known-way",
        right: first.way.turns,
        ...placed(given, first),
      };
  }
  return undefined;
}
