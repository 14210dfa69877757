/**
 * What an answer that is no known way does to the cube, and what would have
 * made it right. Weaker than a known way, for a mistake may do the same by
 * chance: so each asks for turns enough that it hardly does.
 * Speed (Node 20, one core, processor time): the dearest, one turn put right,
 * tries some 37 changes a turn, 1.5 ms for an answer of 100 turns.
 */
import { afterFreeQuarters, FREE_QUARTERS } from "../cases/case-goal";
import { recognise } from "../cases/recognise";
import { homeAfter, rotationToHome } from "../cases/stage";
import { HOME_INDICES } from "../cases/variant";
import {
  compose,
  type Cubies,
  invert,
  type PartlyKnownCubies,
  SOLVED,
} from "../cube/cubies";
import { FACES } from "../cube/faces";
import { bodyFace, bodyTurns, holdAfterTurn } from "../cube/held-cube";
import {
  conjugate,
  inverseSymmetry,
  LEFT_RIGHT_MIRROR,
  rotationAbout,
  type Symmetry,
  thenSymmetry,
} from "../cube/symmetries";
import { isFaceTurn } from "../cube/turns";
import { turnOfStep } from "./body-line";
import { slipBetween, SLIPS } from "./explain-one-turn";
import type { Explanation, WrongTurn } from "./explanation";
import { inverseOf } from "./explain-whole-way";
import type { GivenLine } from "./given-line";
import { effectOfSteps, type FaceStep, turnOf } from "./known-ways";
import { unmetIn } from "./unmet";
import {
  isAllKept,
  otherHomeReached,
  wrongPiecesBrought,
} from "./where-pieces-went";

const EVIDENCE = "by-effect";

/** Fewer turns that commit say nothing of what was meant by them. */
const TURNS_ENOUGH = 3;

/** Other pieces were brought home. */
export function wrongPieceByEffect(given: GivenLine): Explanation | undefined {
  const brought = wrongPiecesBrought(given);
  return brought && { kind: "wrong-piece", evidence: EVIDENCE, ...brought };
}

/** The piece was brought to another home. */
export function anotherHomeByEffect(given: GivenLine): Explanation | undefined {
  const home = otherHomeReached(given);
  return home === undefined
    ? undefined
    : { kind: "another-home", evidence: EVIDENCE, home };
}

/** Whether a changed effect answers, the free layer lined up in any way where that is the learner's to find. */
function wouldAnswer(given: GivenLine, effect: Cubies): boolean {
  const quarters = given.entry.group === "last-layer" ? FREE_QUARTERS : [0];
  return quarters.some((turned) =>
    given.isRight(compose(afterFreeQuarters(given.start, turned), effect)),
  );
}

/** The mirrors that keep the home asked for; in the last layer, which has none, all four upright ones. */
function mirrorsOf({ entry, position }: GivenLine): readonly Symmetry[] {
  const { home } = position.variant;
  if (entry.group === "last-layer")
    return HOME_INDICES.map((turned) =>
      thenSymmetry<Symmetry>(LEFT_RIGHT_MIRROR, rotationAbout("y", turned)),
    );
  // Left and right exchanged keeps an edge's home; a corner's or a slot's is
  // kept where front and right are exchanged.
  const atHome =
    entry.stage === "first-layer-edges"
      ? LEFT_RIGHT_MIRROR
      : thenSymmetry<Symmetry>(LEFT_RIGHT_MIRROR, rotationAbout("y", -1));
  const toHome: Symmetry = rotationToHome(home);
  return [thenSymmetry(thenSymmetry(inverseSymmetry(toHome), atHome), toHome)];
}

/** In a mirror the answer is right. */
export function twinByEffect(given: GivenLine): Explanation | undefined {
  const { twin, id } = given.entry;
  if (twin === id || given.committing < TURNS_ENOUGH) return undefined;
  return mirrorsOf(given).some((mirror) =>
    wouldAnswer(given, conjugate(given.effect, mirror)),
  )
    ? { kind: "twin", evidence: EVIDENCE, case: twin }
    : undefined;
}

/** Seen from another side the answer is right. */
export function otherSideByEffect(given: GivenLine): Explanation | undefined {
  if (given.committing < TURNS_ENOUGH) return undefined;
  const steps = ([1, 2, 3] as const).find((other) =>
    given.isRight(
      compose(
        given.start,
        // Made for a home further on, so taken back to the one asked for.
        conjugate(given.effect, rotationToHome(homeAfter(0, -other))),
      ),
    ),
  );
  return steps === undefined
    ? undefined
    : {
        kind: "other-side",
        evidence: EVIDENCE,
        asIf: homeAfter(given.position.variant.home, steps),
      };
}

/** Made backwards the answer is right. */
export function inverseByEffect(given: GivenLine): Explanation | undefined {
  if (given.committing < TURNS_ENOUGH) return undefined;
  const inverse = inverseOf(given.entry);
  return wouldAnswer(given, invert(given.effect))
    ? {
        kind: "inverse",
        evidence: EVIDENCE,
        ...(inverse === undefined ? {} : { case: inverse }),
      }
    : undefined;
}

/**
 * The case that the answer is right for: the one that it makes when taken
 * back. Every answer that keeps what is marked is right for some case, so it
 * is believed only where something is marked.
 */
export function otherCaseByEffect(given: GivenLine): Explanation | undefined {
  const { entry, position, marked } = given;
  const isMarked = marked.corners.length + marked.edges.length > 0;
  if (given.committing < TURNS_ENOUGH || !isMarked || !isAllKept(given))
    return undefined;
  const shown = recognise(
    invert(given.effect),
    entry.stage,
    position.variant.home,
  );
  if (shown === undefined || shown.case === entry.id) return undefined;
  const isLinedUp =
    entry.group === "last-layer" ||
    shown.turnedAway === position.variant.turnedAway;
  return isLinedUp
    ? { kind: "other-case", evidence: EVIDENCE, case: shown.case }
    : undefined;
}

const ALL_TURNS: readonly FaceStep[] = FACES.flatMap((face) =>
  ([1, 2, 3] as const).map((quarters) => ({ face, quarters })),
);

/** What each turn does to the body. */
function effectsOfTurns({ hold, turns }: GivenLine): readonly Cubies[] {
  let held = hold;
  return turns.map((turn) => {
    const steps = bodyTurns(held, turn);
    held = holdAfterTurn(held, turn);
    return effectOfSteps(steps.map(([face, quarters]) => ({ face, quarters })));
  });
}

/** One of the learner's own turns that, put right, makes the answer right. */
export function oneTurnByEffect(given: GivenLine): Explanation | undefined {
  if (given.committing < TURNS_ENOUGH) return undefined;
  let best: WrongTurn | undefined;
  const consider = (found: WrongTurn) => {
    if (
      best === undefined ||
      SLIPS.indexOf(found.slip) < SLIPS.indexOf(best.slip)
    )
      best = found;
  };
  // What is left of the answer from each turn on, from the end: worked out
  // anew at each turn, an answer of 400 would take a tenth of a second.
  const effects = effectsOfTurns(given);
  const left = [SOLVED];
  for (const effect of effects.toReversed())
    left.push(compose(effect, left.at(-1) ?? SOLVED));
  const leftFrom = left.toReversed();
  let {
    hold,
    start: before,
  }: { hold: typeof given.hold; start: PartlyKnownCubies } = given;
  for (let index = 0; index <= given.turns.length; index++) {
    const turn = given.turns[index];
    const rest = leftFrom[index] ?? SOLVED;
    for (const step of ALL_TURNS)
      if (given.isRight(compose(compose(before, turnOf(step)), rest)))
        consider({ slip: "missing", index, wanted: turnOfStep(hold, step) });
    if (turn === undefined) break;
    if (isFaceTurn(turn)) {
      const made = {
        face: bodyFace(hold, turn.layer),
        quarters: turn.quarters,
      };
      const later = leftFrom[index + 1] ?? SOLVED;
      if (given.isRight(compose(before, later)))
        consider({ slip: "extra", index, made: turn });
      for (const step of ALL_TURNS)
        if (given.isRight(compose(compose(before, turnOf(step)), later)))
          consider({
            slip: slipBetween(step, made),
            index,
            made: turn,
            wanted: turnOfStep(hold, step),
          });
    }
    before = compose(before, effects[index] ?? SOLVED);
    hold = holdAfterTurn(hold, turn);
  }
  if (best === undefined) return undefined;
  return {
    kind: "one-turn",
    evidence: EVIDENCE,
    right: putRight(given, best),
    ...best,
  };
}

/** The learner's turns with one put right. */
function putRight({ turns }: GivenLine, wrong: WrongTurn) {
  return [
    ...turns.slice(0, wrong.index),
    ...(wrong.wanted === undefined ? [] : [wrong.wanted]),
    ...turns.slice(wrong.index + (wrong.made === undefined ? 0 : 1)),
  ];
}

/** All that was asked for is as it should be, others that were right before are not. */
export function othersLost({
  position,
  after,
}: GivenLine): Explanation | undefined {
  const { missing, lost } = unmetIn(position, after);
  return missing.corners.length + missing.edges.length === 0
    ? { kind: "others-lost", lost }
    : undefined;
}
