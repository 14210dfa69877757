/**
 * Ways for every case but the two largest sets, for tests of diagnosis: the
 * project's own where it has some, else the published sequences of the last
 * layer, two of them one after the other where no single one will do, and
 * shortest sequences for pairs. Left-handed ones are the twin's in a mirror.
 */
import type { CaseId } from "../../../core/cases/case-ids";
import {
  caseEntry,
  casesOfStage,
  waysOf,
} from "../../../core/cases/case-table";
import { allPieces } from "../../../core/cases/constraint";
import { holdInStage } from "../../../core/cases/hold-in-stage";
import type { LastLayerCase } from "../../../core/cases/last-layer-cases";
import { answersLook } from "../../../core/cases/last-layer-goal";
import { stateShowing } from "../../../core/cases/orbits";
import { recogniseLastLayer } from "../../../core/cases/recognise-last-layer";
import {
  piecesOfSlot,
  placedBeforeSlots,
  slotConstraint,
} from "../../../core/cases/slot-stages";
import type { LastLayerStage } from "../../../core/cases/last-layer-stages";
import { isLastLayerStage, STAGES } from "../../../core/cases/stage";
import { HOME_INDICES } from "../../../core/cases/variant";
import type { Way } from "../../../core/cases/way";
import {
  compose,
  type Cubies,
  invert,
  type PartlyKnownCubies,
} from "../../../core/cube/cubies";
import type { Pieces } from "../../../core/cube/pieces";
import type { Quarters, Turn } from "../../../core/cube/turns";
import { present } from "../../../core/invariant";
import { inverseTurns } from "../../../core/notation/inverse";
import { mirrorTurns } from "../../../core/notation/mirror";
import { simplifyTurns } from "../../../core/notation/simplify";
import { createCaseSearch } from "../../../core/solver/case-search";
import { turnSeen } from "../../../core/solver/face-turn-sequence";
import { runToEnd } from "../../../core/steps";
import type { WaySource } from "../../../core/answer/known-ways";
import { madeOnTop } from "../cases/made-on-top";
import { turnsOf } from "../notation/turns-of";
import {
  LAST_LAYER_ORIENTATIONS,
  LAST_LAYER_PERMUTATIONS,
} from "../../reference/published-values";

/** The stages that are answered by turning and then placing the last layer. */
export const TWO_LARGEST: readonly string[] = [
  "last-layer-but-edges-turned",
  "last-layer-whole",
];

interface Sequence {
  readonly turns: readonly Turn[];
  readonly effect: Cubies;
}

function quarterTurns(layer: "U" | "y", quarters: number): readonly Turn[] {
  return quarters === 0 ? [] : [{ layer, quarters: quarters as Quarters }];
}

const PUBLISHED: readonly Sequence[] = [
  ...LAST_LAYER_ORIENTATIONS,
  ...LAST_LAYER_PERMUTATIONS,
].flatMap(({ sequence }) => {
  const turns = turnsOf(sequence);
  return [turns, inverseTurns(turns)].map((each) => ({
    turns: each,
    effect: madeOnTop(each),
  }));
});

const TURNED = HOME_INDICES.map((quarters) =>
  madeOnTop(quarterTurns("U", quarters)),
);

function* twoInARow(): Generator<readonly [Cubies, () => readonly Turn[]]> {
  for (const first of PUBLISHED)
    for (const quarters of HOME_INDICES) {
      const turned = compose(
        first.effect,
        present(TURNED[quarters], "a layer turns four ways"),
      );
      for (const second of PUBLISHED)
        yield [
          compose(turned, second.effect),
          () =>
            simplifyTurns([
              ...first.turns,
              ...quarterTurns("U", quarters),
              ...second.turns,
            ]),
        ];
    }
}

const FOUND = new Map<CaseId, readonly Turn[]>();

/** Turns with the turn of the layer before them that makes them answer a case from the look that names it. */
function linedUp(
  one: LastLayerCase,
  turns: readonly Turn[],
): readonly Turn[] | undefined {
  return HOME_INDICES.map((quarters) =>
    simplifyTurns([...quarterTurns("U", quarters), ...turns]),
  ).find((way) => answersLook(one, way));
}

/** Keeps turns as the way of the case that they answer, where it has none. */
function keep(
  stage: LastLayerStage,
  effect: Cubies,
  turns: () => readonly Turn[],
): void {
  const answered = recogniseLastLayer(invert(effect), stage);
  if (answered === undefined || answered === "answered") return;
  if (FOUND.has(answered.id)) return;
  const way = linedUp(answered, turns());
  if (way !== undefined) FOUND.set(answered.id, way);
}

function findLastLayer(): void {
  const stages = STAGES.filter(isLastLayerStage).filter(
    (stage) => !TWO_LARGEST.includes(stage),
  );
  const isMissing = (stage: LastLayerStage) =>
    casesOfStage(stage).some(({ id }) => !FOUND.has(id));
  for (const stage of stages)
    for (const { turns, effect } of PUBLISHED) keep(stage, effect, () => turns);
  for (const [effect, turns] of twoInARow()) {
    const missing = stages.filter(isMissing);
    if (missing.length === 0) return;
    for (const stage of missing) keep(stage, effect, turns);
  }
}

function placeIn(state: PartlyKnownCubies, { corners, edges }: Pieces): void {
  for (const piece of corners) {
    state.cornerPermutation[piece] = piece;
    state.cornerOrientation[piece] = 0;
  }
  for (const piece of edges) {
    state.edgePermutation[piece] = piece;
    state.edgeOrientation[piece] = 0;
  }
}

function findPairs(): void {
  const search = createCaseSearch();
  const { hold } = {
    hold: holdInStage("pairs", { home: 0, seenFrom: 0 }, "down"),
  };
  for (const entry of casesOfStage("pairs")) {
    if (entry.group !== "slot") continue;
    const { orbit, slotsTakenUp } = entry.shows;
    const kept = allPieces([
      placedBeforeSlots("pairs"),
      ...HOME_INDICES.filter(
        (slot) => slot !== 0 && !slotsTakenUp.includes(slot),
      ).map((slot) => piecesOfSlot("pairs", slot)),
    ]);
    const from = stateShowing(
      slotConstraint("pairs", []),
      present(orbit[0], "no orbit is empty"),
    );
    placeIn(from, kept);
    const goal = { placed: allPieces([piecesOfSlot("pairs", 0), kept]) };
    const [first] = runToEnd(search.answers({ from, goal, mostTurns: 9 }));
    if (first === undefined) continue;
    FOUND.set(
      entry.id,
      simplifyTurns([
        ...quarterTurns("U", first.before),
        ...first.turns.map((turn) => turnSeen(hold, turn)),
      ]),
    );
  }
}

let isFound = false;

function found(id: CaseId): readonly Turn[] | undefined {
  if (!isFound) {
    isFound = true;
    findLastLayer();
    findPairs();
  }
  return FOUND.get(id);
}

/** A left hand's way: the twin's in a mirror, lined up. */
function leftHanded(id: CaseId): readonly Turn[] | undefined {
  const entry = caseEntry(id);
  const turns = found(entry.twin);
  if (turns === undefined) return undefined;
  const mirrored = mirrorTurns(turns, "left-right");
  if (entry.group !== "last-layer")
    return [...quarterTurns("y", 1), ...mirrored];
  return linedUp(entry.shows, mirrored);
}

/** The ways of a case as the learner sees them; none for the two largest sets and two corners. */
export const tableOfWays: WaySource = (id, hold, hand) => {
  const own = waysOf(id, hold, hand);
  const { group, stage } = caseEntry(id);
  if (own.length > 0 || group === "first-layer" || TWO_LARGEST.includes(stage))
    return own;
  const turns = hand === "right" ? found(id) : leftHanded(id);
  const way: readonly Way[] =
    turns === undefined ? [] : [{ school: "shortest", hand, turns }];
  return way;
};
