/** Everything that can be practised, and what is written down about it. */
import { rotationAbout } from "../cube/symmetries";
import { invariant, present } from "../invariant";
import { mirrorTurns, turnsThroughSymmetry } from "../notation/mirror";
import { simplifyTurns } from "../notation/simplify";
import { type CaseEntry, entryFromRow } from "./case-entry";
import { CASE_IDS, type CaseId } from "./case-ids";
import { CORNER_SWAP_ROWS } from "./corner-swaps";
import { FIRST_LAYER_CORNER_ROWS } from "./first-layer-corners";
import { FIRST_LAYER_EDGE_ROWS } from "./first-layer-edges";
import type { Stage } from "./stage";
import type { Hold } from "./variant";
import { type Hand, turnsInTable, type Way, type WaySchool } from "./way";

/** All entries, in the order of the shelves. */
export const CASE_TABLE: readonly CaseEntry[] = [
  ...FIRST_LAYER_EDGE_ROWS.map((row) => entryFromRow(row, "first-layer-edges")),
  ...FIRST_LAYER_CORNER_ROWS.map((row) =>
    entryFromRow(row, "first-layer-corners"),
  ),
  ...CORNER_SWAP_ROWS.map((row) => entryFromRow(row, "first-layer-corners")),
];

const ENTRY_BY_ID: ReadonlyMap<CaseId, CaseEntry> = new Map(
  CASE_TABLE.map((entry) => [entry.id, entry]),
);

invariant(
  CASE_IDS.every((id) => ENTRY_BY_ID.has(id)),
  "every id has an entry",
);

/** What is written down about a case. */
export function caseEntry(id: CaseId): CaseEntry {
  return present(ENTRY_BY_ID.get(id), "every id has an entry");
}

/** The cases of a stage in the order in which a starter learns them; later ones are not among them. */
export function starterOrder(stage: Stage): readonly CaseEntry[] {
  return CASE_TABLE.filter(
    (entry) => entry.stage === stage && entry.order !== undefined,
  ).toSorted((a, b) => (a.order ?? 0) - (b.order ?? 0));
}

/**
 * The left hand's way: its twin's, seen in a mirror. The mirror takes a home
 * at the top front to itself; one at the top front right must first be
 * brought to the top front left.
 */
function leftHanded(way: Way, stage: Stage): Way {
  const mirrored = mirrorTurns(way.turns, "left-right");
  const bringHomeLeft = stage === "first-layer-corners" ? "y" : "";
  return {
    school: way.school,
    hand: "left",
    turns: simplifyTurns([...turnsInTable(bringHomeLeft), ...mirrored]),
  };
}

/** What turns a cube over from one hold to the other: the half turn about the front–back axis. */
const TURNED_OVER = rotationAbout("z", 2);

function waysFor(id: CaseId, hold: Hold, hand: Hand): readonly Way[] {
  const entry = caseEntry(id);
  const upright =
    hand === "right"
      ? entry.ways
      : caseEntry(entry.twin).ways.map((way) => leftHanded(way, entry.stage));
  if (hold === "up") return upright;
  return upright.map((way) => ({
    ...way,
    turns: turnsThroughSymmetry(way.turns, TURNED_OVER),
  }));
}

const WAYS = new Map<string, readonly Way[]>();

/**
 * The ways of a case as the learner sees them, the taught one first: for the
 * hold "down" those held up, turned over with the cube. Always the same list
 * for the same question.
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

/** The way that one school teaches, or the first where that school has none; undefined for a task of two corners. */
export function wayOfSchool(
  id: CaseId,
  school: WaySchool,
  hold: Hold,
  hand: Hand = "right",
): Way | undefined {
  const ways = waysOf(id, hold, hand);
  return ways.find((way) => way.school === school) ?? ways[0];
}
