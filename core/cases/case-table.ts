/**
 * Everything that can be practised, and what is known about it: the first
 * layer from its tables, every other stage from its orbits when it is first
 * asked about.
 */
import { rotationAbout } from "../cube/symmetries";
import type { Turn } from "../cube/turns";
import { invariant, present } from "../invariant";
import { mirrorTurns, turnsThroughSymmetry } from "../notation/mirror";
import { simplifyTurns } from "../notation/simplify";
import { partOf, runToEnd, type Steps } from "../steps";
import {
  type CaseEntry,
  entryFromRow,
  type FirstLayerEntry,
} from "./case-entry";
import { beginnersWay } from "./beginner-ways";
import {
  type CaseId,
  FIRST_LAYER_IDS,
  type FirstLayerId,
  parseFirstLayerId,
} from "./case-ids";
import { targetsOfStage } from "./case-targets";
import { CORNER_SWAP_ROWS } from "./corner-swaps";
import { FIRST_LAYER_CORNER_ROWS } from "./first-layer-corners";
import { FIRST_LAYER_EDGE_ROWS } from "./first-layer-edges";
import { lastLayerCases, lastLayerTwinOf } from "./last-layer-cases";
import { answersLook } from "./last-layer-goal";
import { gatherLastLayer } from "./last-layer-orbits";
import { taughtForSlot } from "./second-layer-ways";
import { slotCases, slotTwinOf } from "./slot-cases";
import {
  type FirstLayerStage,
  groupOfStage,
  isLastLayerStage,
  isSlotStage,
  parseStage,
  type SlotStage,
  type Stage,
} from "./stage";
import type { LastLayerStage } from "./last-layer-stages";
import { type Hold, HOME_INDICES } from "./variant";
import { type Hand, turnsInTable, type Way, type WaySchool } from "./way";
import { COMPUTED_WAYS } from "./computed-ways";

/** The entries of the first layer, in the order of its shelves. */
export const FIRST_LAYER_TABLE: readonly FirstLayerEntry[] = [
  ...FIRST_LAYER_EDGE_ROWS.map((row) => entryFromRow(row, "first-layer-edges")),
  ...FIRST_LAYER_CORNER_ROWS.map((row) =>
    entryFromRow(row, "first-layer-corners"),
  ),
  ...CORNER_SWAP_ROWS.map((row) => entryFromRow(row, "first-layer-corners")),
].map((entry) => ({
  ...entry,
  // Its shortest ways are written down, where they are not those taught first.
  ways: [
    ...entry.ways,
    ...computedWays(entry.id).filter(({ school }) => school === "easiest"),
  ],
}));

const FIRST_LAYER_BY_ID: ReadonlyMap<CaseId, FirstLayerEntry> = new Map(
  FIRST_LAYER_TABLE.map((entry) => [entry.id, entry]),
);

invariant(
  FIRST_LAYER_IDS.every((id) => FIRST_LAYER_BY_ID.has(id)),
  "every id has an entry",
);

/** A way that one of the tables or its generator writes down. */
function writtenWay(school: WaySchool, text: string): Way {
  return { school, hand: "right", turns: turnsInTable(text) };
}

/** The ways of a computed case that do not depend on a teacher. */
function computedWays(id: CaseId): readonly Way[] {
  const [shortest, easiest] = COMPUTED_WAYS[id] ?? [];
  return [
    ...(easiest === undefined ? [] : [writtenWay("easiest", easiest)]),
    ...(shortest === undefined ? [] : [writtenWay("shortest", shortest)]),
  ];
}

function taughtWay(turns: readonly Turn[] | undefined): readonly Way[] {
  return turns === undefined ? [] : [{ school: "first", hand: "right", turns }];
}

/** How many entries are made between two steps: about a millisecond's worth. */
const ENTRIES_A_STEP = 48;

function* lastLayerEntries(stage: LastLayerStage): Steps<readonly CaseEntry[]> {
  yield* partOf(gatherLastLayer(stage), 0, 0.5);
  const cases = lastLayerCases(stage);
  const entries: CaseEntry[] = [];
  for (const [i, shows] of cases.entries()) {
    if (i % ENTRIES_A_STEP === 0) yield 0.5 + (0.5 * i) / cases.length;
    entries.push({
      group: "last-layer",
      id: shows.id,
      stage,
      shows,
      ways: [...taughtWay(beginnersWay(shows)), ...computedWays(shows.id)],
      twin: lastLayerTwinOf(shows).id,
      targets: targetsOfStage(stage),
    });
  }
  return entries;
}

function slotEntries(stage: SlotStage): readonly CaseEntry[] {
  return slotCases(stage).map((shows) => ({
    group: "slot",
    id: shows.id,
    stage,
    shows,
    ways: [
      ...taughtWay(
        stage === "second-layer-edges" ? taughtForSlot(shows) : undefined,
      ),
      ...computedWays(shows.id),
    ],
    twin: slotTwinOf(shows).id,
    targets: targetsOfStage(stage),
  }));
}

const ENTRIES = new Map<Stage, readonly CaseEntry[]>();
const ENTRY_BY_ID = new Map<string, CaseEntry>();

/** Gathers the cases of a stage, where that is not done yet, so that other work can go on in between. */
export function* gatherCases(stage: Stage): Steps<readonly CaseEntry[]> {
  const known = ENTRIES.get(stage);
  if (known !== undefined) return known;
  const gathered = isLastLayerStage(stage)
    ? yield* lastLayerEntries(stage)
    : isSlotStage(stage)
      ? slotEntries(stage)
      : FIRST_LAYER_TABLE.filter((entry) => entry.stage === stage);
  // Somebody may have needed them before the last slice was done.
  const first = ENTRIES.get(stage);
  if (first !== undefined) return first;
  ENTRIES.set(stage, gathered);
  for (const entry of gathered) ENTRY_BY_ID.set(entry.id, entry);
  return gathered;
}

/**
 * All cases of a stage, in the order of its shelf; always the same list.
 * The largest stage takes 0.15 s when it is first asked about, any other under
 * 50 ms (Node 20, one core); `gatherCases` takes as long in small slices.
 */
export function casesOfStage(stage: Stage): readonly CaseEntry[] {
  return runToEnd(gatherCases(stage));
}

/** The stage that a computed id names, or undefined where it names none. */
function stageOfText(text: string): Stage | undefined {
  const colon = text.indexOf(":");
  return colon < 0 ? undefined : parseStage(text.slice(0, colon));
}

/** The stage of a case, told from its id alone: no case is gathered for it. */
export function stageOfCase(id: CaseId): Stage {
  return (
    FIRST_LAYER_BY_ID.get(id)?.stage ??
    present(stageOfText(id), "an id names its stage")
  );
}

/** The id that a text names, or undefined where there is none. */
export function parseCaseId(text: string): CaseId | undefined {
  const written = parseFirstLayerId(text);
  if (written !== undefined) return written;
  const stage = stageOfText(text);
  if (stage === undefined) return undefined;
  casesOfStage(stage);
  return ENTRY_BY_ID.get(text)?.id;
}

/** What is known about a case. */
export function caseEntry(id: CaseId): CaseEntry {
  const written = FIRST_LAYER_BY_ID.get(id);
  if (written !== undefined) return written;
  const stage = present(stageOfText(id), "an id names its stage");
  casesOfStage(stage);
  return present(ENTRY_BY_ID.get(id), "every id has an entry");
}

/** What is known about a case of the first layer. */
export function firstLayerEntry(id: FirstLayerId): FirstLayerEntry {
  return present(FIRST_LAYER_BY_ID.get(id), "every id has an entry");
}

/** The cases of a stage of the first layer in the order in which a starter learns them; later ones are not among them. */
export function starterOrder(
  stage: FirstLayerStage,
): readonly FirstLayerEntry[] {
  return FIRST_LAYER_TABLE.filter(
    (entry) => entry.stage === stage && entry.order !== undefined,
  ).toSorted((a, b) => (a.order ?? 0) - (b.order ?? 0));
}

/**
 * The left hand's way: its twin's, seen in a mirror. The mirror takes a home
 * at the top front to itself; one at the front right must first be brought to
 * the front left.
 */
function leftHanded(way: Way, stage: Stage): Way {
  const mirrored = mirrorTurns(way.turns, "left-right");
  const isAtTheRight =
    stage === "first-layer-corners" || groupOfStage(stage) === "slot";
  return {
    school: way.school,
    hand: "left",
    turns: simplifyTurns([
      ...turnsInTable(isAtTheRight ? "y" : ""),
      ...mirrored,
    ]),
  };
}

/** What turns a cube over from one hold to the other: the half turn about the front–back axis. */
const TURNED_OVER = rotationAbout("z", 2);

function waysFor(id: CaseId, hold: Hold, hand: Hand): readonly Way[] {
  const entry = caseEntry(id);
  const ways =
    hand === "right"
      ? entry.ways
      : caseEntry(entry.twin).ways.map((way) => leftHandedFor(entry, way));
  // Only the first layer's ways are written held up.
  if (hold === "up" || entry.group !== "first-layer") return ways;
  return ways.map((way) => ({
    ...way,
    turns: turnsThroughSymmetry(way.turns, TURNED_OVER),
  }));
}

/**
 * A twin's way for the left hand. In the last layer a mirror takes the look
 * that names the twin to one of this case's looks, and which it is, is found
 * by playing: a turn of the layer lines it up.
 */
function leftHandedFor(entry: CaseEntry, way: Way): Way {
  const left = leftHanded(way, entry.stage);
  if (entry.group !== "last-layer") return left;
  const ways = HOME_INDICES.map((turned) => ({
    ...left,
    turns: simplifyTurns([
      ...turnsInTable(["", "U", "U2", "U'"][turned] ?? ""),
      ...left.turns,
    ]),
  }));
  return present(
    ways.find(({ turns }) => answersLook(entry.shows, turns)),
    "a twin's way answers in the mirror",
  );
}

const WAYS = new Map<string, readonly Way[]>();

/**
 * The ways of a case as the learner sees them, the taught one first: for a
 * first layer held down those held up, turned over with the cube. Always the
 * same list for the same question.
 */
export function waysOf(
  id: CaseId,
  hold: Hold,
  hand: Hand = "right",
): readonly Way[] {
  const key = `${id} ${hold} ${hand}`;
  const ways = WAYS.get(key) ?? waysFor(id, hold, hand);
  WAYS.set(key, ways);
  return ways;
}

/**
 * The way that one school teaches, or the first where that school has none;
 * undefined for a task of two corners, and where ways are found on demand.
 */
export function wayOfSchool(
  id: CaseId,
  school: WaySchool,
  hold: Hold,
  hand: Hand = "right",
): Way | undefined {
  const ways = waysOf(id, hold, hand);
  return ways.find((way) => way.school === school) ?? ways[0];
}
