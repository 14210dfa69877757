/**
 * A learner who makes mistakes of known kinds, in every stage: what they
 * meant to do is known, so it can be seen whether diagnosis finds it out.
 *
 * A mistake is drawn uniformly from the kinds that are possible on a position;
 * what turns out right after all is drawn again.
 */
import { judge } from "../../../core/answer/judge";
import type { Explanation, TurnSlip } from "../../../core/answer/explanation";
import type { WaySource } from "../../../core/answer/known-ways";
import type { CaseId } from "../../../core/cases/case-ids";
import { caseEntry, casesOfStage } from "../../../core/cases/case-table";
import {
  isInFreeLayer,
  mostPlaced,
  piecesOfHome,
  targetsOf,
} from "../../../core/cases/constraint";
import { demandOf } from "../../../core/cases/last-layer-goal";
import { lastLayerInverseOf } from "../../../core/cases/last-layer-cases";
import { holdFor, holdInStage } from "../../../core/cases/hold-in-stage";
import { type Position, startOf } from "../../../core/cases/position";
import { randomPosition } from "../../../core/cases/random-position";
import { randomVariant } from "../../../core/cases/random-variant";
import { recognise } from "../../../core/cases/recognise";
import {
  homeAfter,
  isLastLayerStage,
  rotationToHome,
  type Stage,
} from "../../../core/cases/stage";
import {
  HOLDS,
  HOME_INDICES,
  type HomeIndex,
} from "../../../core/cases/variant";
import { turnsForPosition } from "../../../core/cases/way-for-position";
import { HANDS } from "../../../core/cases/way";
import type { CaseGoal } from "../../../core/cases/case-goal";
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import { applyTurns, viewFace } from "../../../core/cube/held-cube";
import type { Pieces } from "../../../core/cube/pieces";
import {
  cornerImage,
  edgeImage,
  rotationAbout,
} from "../../../core/cube/symmetries";
import {
  inverseTurn,
  isFaceTurn,
  isWholeCubeTurn,
  type Quarters,
  type Turn,
} from "../../../core/cube/turns";
import { FACES } from "../../../core/cube/faces";
import { wholeCubeTurnsBetween } from "../../../core/cube/whole-cube-turns";
import { inverseTurns } from "../../../core/notation/inverse";
import { turnsThroughSymmetry } from "../../../core/notation/mirror";
import { outerBlockTurns } from "../../../core/notation/metrics";
import { simplifyTurns } from "../../../core/notation/simplify";
import { createCaseSearch } from "../../../core/solver/case-search";
import { turnSeen } from "../../../core/solver/face-turn-sequence";
import { runToEnd } from "../../../core/steps";
import { pick, type RandomSource } from "../../../core/random-source";
import { TWO_LARGEST } from "./table-of-ways";

/** The kinds of mistakes that are made. */
export type MistakeKind = Exclude<Explanation["kind"], "unexplained">;

/** All kinds, in the order of diagnosis. */
export const MISTAKE_KINDS: readonly MistakeKind[] = [
  "stopped-early",
  "lined-up-wrongly",
  "wrong-piece",
  "another-home",
  "one-turn",
  "twin",
  "other-side",
  "inverse",
  "other-case",
  "others-lost",
];

/** A wrong answer whose reason is known. */
export interface Mistake {
  readonly kind: MistakeKind;
  readonly position: Position;
  readonly turns: readonly Turn[];
  /** The way that is taught for the position. */
  readonly taught: readonly Turn[];
  /** What the explanation of it should name, as text: a case, a home, a slip. */
  readonly detail: string;
}

interface Made {
  readonly turns: readonly Turn[];
  readonly detail: string;
}

/** A learner on one position. */
class SimulatedLearner {
  readonly #random: RandomSource;
  readonly #position: Position;
  readonly #source: WaySource;
  #rightInTwo: readonly Turn[] | undefined;

  constructor(random: RandomSource, position: Position, source: WaySource) {
    this.#random = random;
    this.#position = position;
    this.#source = source;
  }

  get #stage(): Stage {
    return caseEntry(this.#position.case).stage;
  }

  get #home(): HomeIndex {
    return this.#position.variant.home;
  }

  /** A way of a case, as written, of either hand. */
  #wayOf(id: CaseId, stage: Stage = this.#stage): readonly Turn[] | undefined {
    const hold = holdFor(stage, this.#position.hold);
    const ways = HANDS.flatMap((hand) => this.#source(id, hold, hand));
    return ways.length === 0 ? undefined : pick(this.#random, ways).turns;
  }

  /** The turns of the whole cube that bring a home to where ways begin. */
  #bringToFront(home: HomeIndex): readonly Turn[] {
    const { hold } = this.#position;
    return wholeCubeTurnsBetween(
      startOf(this.#position).hold,
      holdInStage(this.#stage, { home, seenFrom: 0 }, hold),
    );
  }

  /** The turn that takes the free layer back by so many quarters. */
  #lineUp(turnedAway: number): readonly Turn[] {
    const quarters = (((-turnedAway % 4) + 4) % 4) as 0 | Quarters;
    const layer = viewFace(startOf(this.#position).hold, "D");
    return quarters === 0 ? [] : [{ layer, quarters }];
  }

  /** A way for a home, lined up as told. */
  #played(
    home: HomeIndex,
    turnedAway: number,
    way: readonly Turn[],
  ): readonly Turn[] {
    return simplifyTurns([
      ...this.#bringToFront(home),
      ...this.#lineUp(turnedAway),
      ...way,
    ]);
  }

  /** One right answer, of any way. */
  right(): readonly Turn[] | undefined {
    const { variant, case: id } = this.#position;
    if (TWO_LARGEST.includes(this.#stage))
      return (this.#rightInTwo ??= this.#findInTwo());
    // Two corners have no way of their own: one after the other.
    if (id === "S1" || id === "S2") return turnsForPosition(this.#position);
    const way = this.#wayOf(this.#position.case);
    return way && this.#played(variant.home, variant.turnedAway, way);
  }

  /** Turning the last layer, then placing it: the one way that this learner knows. */
  #findInTwo(): readonly Turn[] | undefined {
    let cube = startOf(this.#position);
    const all: Turn[] = [];
    for (const stage of ["last-layer-turned", "last-layer-placed"] as const) {
      const shown = recognise(cube.cubies, stage, this.#home);
      if (shown === undefined) continue;
      const way = this.#wayOf(shown.case, stage);
      if (way === undefined) return undefined;
      const { hold } = this.#position;
      const turns = [
        ...wholeCubeTurnsBetween(
          cube.hold,
          holdInStage(stage, { home: this.#home, seenFrom: 0 }, hold),
        ),
        ...this.#lineUp(shown.turnedAway),
        ...way,
      ];
      all.push(...turns);
      cube = applyTurns(cube, turns);
    }
    return simplifyTurns(all);
  }

  /** The same turns on the cube held with another side in front. */
  #fromSide(steps: number, turns: readonly Turn[]): readonly Turn[] {
    return turnsThroughSymmetry(turns, rotationAbout("y", steps));
  }

  make(kind: MistakeKind): Made | undefined {
    switch (kind) {
      case "stopped-early":
        return this.#stopped();
      case "lined-up-wrongly":
        return this.#misaligned();
      case "wrong-piece":
        return this.#wrongPiece();
      case "another-home":
        return this.#anotherHome();
      case "one-turn":
        return this.#oneTurn();
      case "twin":
        return this.#otherCase(caseEntry(this.#position.case).twin);
      case "other-side":
        return this.#otherSide();
      case "inverse":
        return this.#inverse();
      case "other-case":
        return this.#otherCase(
          pick(this.#random, casesOfStage(this.#stage)).id,
        );
      case "others-lost":
        return this.#othersLost();
    }
  }

  #stopped(): Made | undefined {
    const right = this.right();
    if (right === undefined || right.length < 2) return undefined;
    const left = 1 + this.#random.below(right.length - 1);
    return { turns: right.slice(0, -left), detail: "" };
  }

  #misaligned(): Made | undefined {
    const { variant, case: id } = this.#position;
    const right = this.right();
    if (right === undefined || !isInFreeLayer(id)) return undefined;
    const off = 1 + this.#random.below(3);
    const first = this.#bringToFront(variant.home).length;
    return {
      turns: simplifyTurns([
        ...right.slice(0, first),
        ...this.#lineUp(off),
        ...right.slice(first),
      ]),
      detail: String(off),
    };
  }

  /** Another piece of the stage that is not home: brought home, or into the home asked for. */
  #wrongPiece(): Made | undefined {
    const { variant, cubies } = this.#position;
    const stage = this.#stage;
    if (isLastLayerStage(stage)) return undefined;
    const other = pick(this.#random, HOME_INDICES);
    if (other === variant.home || variant.placed.includes(other))
      return undefined;
    const into = pick(this.#random, [other, variant.home]);
    const targets = targetsOf(this.#position);
    const pieces = piecesOfHome(stage, other);
    if (pieces.corners.some((piece) => targets.corners.includes(piece)))
      return undefined;
    const shown = this.#shownFor(other, into);
    const taken = recognise(cubies, stage, other);
    const way = shown && this.#wayOf(shown.case);
    if (taken === undefined || shown === undefined || way === undefined)
      return undefined;
    return {
      turns: this.#played(into, shown.turnedAway, way),
      detail: String(into),
    };
  }

  /** The case that the pieces of one home show for another. */
  #shownFor(of: HomeIndex, home: HomeIndex) {
    const stage = this.#stage;
    if (isLastLayerStage(stage)) return undefined;
    const rotation = rotationToHome(homeAfter(home, -of));
    const { cubies } = this.#position;
    const pieces = piecesOfHome(stage, of);
    // The pieces renamed to those that belong there, stickers and all.
    return recognise(
      renamed(
        cubies,
        pieces,
        rotation,
        stage === "pairs" || stage === "second-layer-edges",
      ),
      stage,
      home,
    );
  }

  #anotherHome(): Made | undefined {
    const home = pick(this.#random, HOME_INDICES);
    if (home === this.#home) return undefined;
    const { corners, edges } = targetsOf(this.#position);
    if (corners.length > 1) return undefined;
    if (corners.length + edges.length === 0) return undefined;
    const shown = this.#shownFor(this.#home, home);
    const way = shown && this.#wayOf(shown.case);
    if (shown === undefined || way === undefined) return undefined;
    return {
      turns: this.#played(home, shown.turnedAway, way),
      detail: String(home),
    };
  }

  #oneTurn(): Made | undefined {
    const right = this.right();
    if (right === undefined || right.length < 2) return undefined;
    const slip = pick(this.#random, [
      "missing",
      "extra",
      "reversed",
      "amount",
      "another-layer",
    ] as const satisfies readonly TurnSlip[]);
    const index = this.#random.below(right.length);
    const turn = right[index];
    if (turn === undefined || isWholeCubeTurn(turn)) return undefined;
    const made = this.#slipped(slip, turn);
    return {
      turns: simplifyTurns([
        ...right.slice(0, index),
        ...made,
        ...right.slice(index + 1),
      ]),
      detail: slip,
    };
  }

  #slipped(slip: TurnSlip, turn: Turn): readonly Turn[] {
    const faceTurn = (): Turn => ({
      layer: pick(this.#random, FACES),
      quarters: pick(this.#random, [1, 2, 3] as const),
    });
    switch (slip) {
      case "missing":
        return [];
      case "extra":
        return [faceTurn(), turn];
      case "reversed":
        return [inverseTurn(turn)];
      case "amount": {
        const quarters = pick(this.#random, [1, 2, 3] as const);
        return [{ layer: turn.layer, quarters }];
      }
      case "another-layer":
        return isFaceTurn(turn) ? [faceTurn()] : [turn];
    }
  }

  #otherSide(): Made | undefined {
    const { variant, hold } = this.#position;
    const right = this.right();
    if (right === undefined) return undefined;
    const steps = 1 + this.#random.below(3);
    // The free layer keeps its name through this.
    const seenOtherwise = this.#fromSide(steps, right);
    const asIf = homeAfter(variant.home, hold === "up" ? steps : -steps);
    return { turns: seenOtherwise, detail: String(asIf) };
  }

  #inverse(): Made | undefined {
    const { variant, case: id } = this.#position;
    const entry = caseEntry(id);
    if (TWO_LARGEST.includes(this.#stage)) {
      const right = this.right();
      return right && { turns: inverseTurns(right), detail: "" };
    }
    const inverse =
      entry.group === "last-layer"
        ? lastLayerInverseOf(entry.shows)?.id
        : undefined;
    const isOfCase = inverse !== undefined && this.#random.below(2) === 0;
    const written = this.#wayOf(isOfCase ? inverse : id);
    if (written === undefined) return undefined;
    // Held as for the way, then its turns backwards; a way in which the cube is
    // turned over has no backwards of its own.
    const start = written.findIndex((turn) => !isWholeCubeTurn(turn));
    const rest = written.slice(start);
    if (!isOfCase && rest.some(isWholeCubeTurn)) return undefined;
    const way = isOfCase
      ? written
      : [...written.slice(0, start), ...inverseTurns(rest)];
    return {
      turns: this.#played(variant.home, variant.turnedAway, way),
      detail: inverse ?? "",
    };
  }

  #otherCase(other: CaseId): Made | undefined {
    const { variant, case: id } = this.#position;
    if (other === id) return undefined;
    if (TWO_LARGEST.includes(this.#stage)) {
      const asked = randomPosition(
        this.#random,
        other,
        { ...variant, turnedAway: 0 },
        this.#position.hold,
      );
      const learner = new SimulatedLearner(this.#random, asked, this.#source);
      const right = learner.right();
      return (
        right && {
          turns: [...this.#lineUp(variant.turnedAway), ...right],
          detail: other,
        }
      );
    }
    const way = this.#wayOf(other);
    return (
      way && {
        turns: this.#played(variant.home, variant.turnedAway, way),
        detail: other,
      }
    );
  }

  /** What is asked for is brought home by the first turns that do it, whatever they take along. */
  #othersLost(): Made | undefined {
    const stage = this.#stage;
    const targets = targetsOf(this.#position);
    const goal: CaseGoal = isLastLayerStage(stage)
      ? {
          placed: { corners: [], edges: [] },
          [demandOf(stage, "edge")]: targets,
        }
      : { placed: targets };
    if (isLastLayerStage(stage) && stage !== "last-layer-edges-turned")
      return undefined;
    const found = runToEnd(
      CRUDE.answers({
        from: this.#position.cubies,
        goal,
        mostTurns: 5,
        extraTurns: 1,
      }),
    ).filter(({ turns }) => turns.length > 0);
    if (found.length === 0) return undefined;
    const crude = pick(this.#random, found);
    const { hold } = startOf(this.#position);
    return {
      turns: [
        ...this.#lineUp(-crude.before),
        ...crude.turns.map((turn) => turnSeen(hold, turn)),
      ],
      detail: "",
    };
  }
}

const CRUDE = createCaseSearch();

/** A state in which some pieces are called by the names of those that a turn of the whole cube takes them to. */
function renamed(
  state: PartlyKnownCubies,
  { corners, edges }: Pieces,
  rotation: ReturnType<typeof rotationToHome>,
  areMiddle: boolean,
): PartlyKnownCubies {
  const result = {
    cornerPermutation: Uint8Array.from(state.cornerPermutation),
    cornerOrientation: Uint8Array.from(state.cornerOrientation),
    edgePermutation: Uint8Array.from(state.edgePermutation),
    edgeOrientation: Uint8Array.from(state.edgeOrientation),
  };
  for (const piece of corners) {
    const image = cornerImage(rotation, piece);
    swapNames(result.cornerPermutation, piece, image);
  }
  for (const piece of edges) {
    const image = edgeImage(rotation, piece);
    swapNames(result.edgePermutation, piece, image);
    // A quarter turn takes a middle edge's first sticker to the second.
    const isOdd = (image - piece) % 2 !== 0;
    const at = result.edgePermutation.indexOf(image);
    if (areMiddle && isOdd)
      result.edgeOrientation[at] = 1 - (result.edgeOrientation[at] ?? 0);
  }
  return result;
}

function swapNames(permutation: Uint8Array, a: number, b: number): void {
  if (a === b) return;
  const [atA, atB] = [permutation.indexOf(a), permutation.indexOf(b)];
  if (atA >= 0) permutation[atA] = b;
  if (atB >= 0) permutation[atB] = a;
}

/** A position of any case of a stage, opened up in every way. */
function positionOf(random: RandomSource, stage: Stage): Position {
  const { id } = pick(random, casesOfStage(stage));
  const most = mostPlaced(id);
  const variant = randomVariant(random, id, {
    placedCount: random.below(most + 1) as 0 | 1 | 2 | 3,
    turnedAway: true,
    seenFromAnywhere: true,
  });
  return randomPosition(
    random,
    id,
    variant,
    holdFor(stage, pick(random, HOLDS)),
  );
}

/** One wrong answer in a stage. */
export function simulatedMistake(
  random: RandomSource,
  stage: Stage,
  source: WaySource,
): Mistake {
  for (;;) {
    const position = positionOf(random, stage);
    const learner = new SimulatedLearner(random, position, source);
    const taught = learner.right();
    const possible = MISTAKE_KINDS.flatMap((kind) => {
      const made = learner.make(kind);
      return made === undefined || !isWrong(position, made.turns)
        ? []
        : [{ kind, ...made }];
    });
    if (possible.length === 0) continue;
    const made = pick(random, possible);
    return {
      ...made,
      turns: heldOtherwise(random, simplifyTurns(made.turns)),
      position,
      taught: taught ?? [],
    };
  }
}

function isWrong(position: Position, turns: readonly Turn[]): boolean {
  // The window does not take an answer in which nothing is turned.
  const isTurned = outerBlockTurns(simplifyTurns(turns)) > 0;
  return (
    isTurned && !judge(position, applyTurns(startOf(position), turns)).right
  );
}

/** The same on the body, now and then begun from another side. */
function heldOtherwise(
  random: RandomSource,
  turns: readonly Turn[],
): readonly Turn[] {
  if (random.below(5) > 0) return turns;
  const quarters = pick(random, [1, 2, 3] as const);
  return simplifyTurns([
    { layer: "y", quarters },
    ...turnsThroughSymmetry(turns, rotationAbout("y", quarters)),
  ]);
}
