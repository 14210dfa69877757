/**
 * First-layer edges: turns of the bottom are free, the home is at the top
 * front. Names, families, ways and targets laid over the 17 orbits.
 *
 * Source: the design's `first-layer.md`; ways and targets are common practice.
 *         "shortest" stands where fewer turns will do than the first school
 *         takes: found, and proved the fewest, by trying all sequences.
 */
import type { EdgeName } from "../cube/pieces";
import { type CaseRow, type Facing, targets } from "./case-entry";
import type { FirstLayerEdgeId } from "./case-ids";

/** A first-layer edge case as it is written down. */
export type EdgeRow = CaseRow<FirstLayerEdgeId, Facing<EdgeName>>;

/** All first-layer edge cases, in the order of their shelf. */
export const FIRST_LAYER_EDGE_ROWS: readonly EdgeRow[] = [
  {
    id: "E1",
    where: { at: "DF", facing: "D" },
    family: "straight-up",
    twin: "E1",
    order: 1,
    targets: targets(8, 4, 1),
    ways: { first: ["F2"] },
  },
  {
    id: "E2a",
    where: { at: "FR", facing: "R" },
    family: "straight-up",
    twin: "E2b",
    order: 2,
    targets: targets(8, 4, 1),
    ways: { first: ["F'"] },
  },
  {
    id: "E2b",
    where: { at: "FL", facing: "L" },
    family: "straight-up",
    twin: "E2a",
    order: 3,
    targets: targets(8, 4, 1),
    ways: { first: ["F"] },
  },
  {
    id: "E3",
    where: { at: "DF", facing: "F" },
    family: "looks-from-below",
    twin: "E3",
    order: 4,
    targets: targets(15, 7, 2),
    ways: { first: ["D R F' R'", "D' L' F L"] },
  },
  {
    id: "E4a",
    where: { at: "FR", facing: "F" },
    family: "go-down-first",
    twin: "E4b",
    order: 5,
    targets: targets(15, 7, 2),
    ways: { first: ["R' D' R F2"], shortest: ["U' R U"] },
  },
  {
    id: "E4b",
    where: { at: "FL", facing: "F" },
    family: "go-down-first",
    twin: "E4a",
    order: 6,
    targets: targets(15, 7, 2),
    ways: { first: ["L D L' F2"], shortest: ["U L' U'"] },
  },
  {
    id: "E5a",
    where: { at: "BR", facing: "B" },
    family: "go-down-first",
    twin: "E5b",
    order: 8,
    targets: targets(20, 8, 2),
    ways: { first: ["R D' R' F2"], shortest: ["U' R' U"] },
  },
  {
    id: "E5b",
    where: { at: "BL", facing: "B" },
    family: "go-down-first",
    twin: "E5a",
    order: 9,
    targets: targets(20, 8, 2),
    ways: { first: ["L' D L F2"], shortest: ["U L U'"] },
  },
  {
    id: "E6a",
    where: { at: "BR", facing: "R" },
    family: "go-down-first",
    twin: "E6b",
    order: 10,
    targets: targets(20, 8, 2),
    ways: { first: ["R2 F' R2"] },
  },
  {
    id: "E6b",
    where: { at: "BL", facing: "L" },
    family: "go-down-first",
    twin: "E6a",
    order: 11,
    targets: targets(20, 8, 2),
    ways: { first: ["L2 F L2"] },
  },
  {
    id: "E7",
    where: { at: "UF", facing: "F" },
    family: "flipped-at-home",
    twin: "E7",
    order: 7,
    targets: targets(20, 8, 2),
    ways: { first: ["F2 D R F' R'"], shortest: ["F U' R U"] },
  },
  {
    id: "E8a",
    where: { at: "UR", facing: "R" },
    family: "in-anothers-home",
    twin: "E8b",
    targets: targets(12, 6, 2),
    ways: { first: ["R' F'"] },
  },
  {
    id: "E8b",
    where: { at: "UL", facing: "L" },
    family: "in-anothers-home",
    twin: "E8a",
    targets: targets(12, 6, 2),
    ways: { first: ["L F"] },
  },
  {
    id: "E9a",
    where: { at: "UR", facing: "U" },
    family: "in-anothers-home",
    twin: "E9b",
    targets: targets(15, 7, 2),
    ways: { first: ["R2 D' F2"] },
  },
  {
    id: "E9b",
    where: { at: "UL", facing: "U" },
    family: "in-anothers-home",
    twin: "E9a",
    targets: targets(15, 7, 2),
    ways: { first: ["L2 D F2"] },
  },
  {
    id: "E10",
    where: { at: "UB", facing: "U" },
    family: "in-anothers-home",
    twin: "E10",
    targets: targets(15, 7, 2),
    ways: { first: ["B2 D2 F2"] },
  },
  {
    id: "E11",
    where: { at: "UB", facing: "B" },
    family: "in-anothers-home",
    twin: "E11",
    targets: targets(20, 9, 3),
    ways: { first: ["B2 D' R F' R'"], shortest: ["U R' U' F'"] },
  },
];
