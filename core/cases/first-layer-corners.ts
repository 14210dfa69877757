/**
 * First-layer corners: the cross is placed, turns of the bottom are free, the
 * home is at the top front right. Names, families, ways and targets laid over
 * the 14 orbits.
 *
 * Source: the design's `first-layer.md`; ways and targets are common practice.
 *         "shortest" stands where fewer turns will do than the first school
 *         takes: found, and proved the fewest, by trying all sequences.
 */
import type { CornerName } from "../cube/pieces";
import { type CaseRow, type Facing, targets } from "./case-entry";
import type { FirstLayerCornerId } from "./case-ids";

/** A first-layer corner case as it is written down. */
export type CornerRow = CaseRow<FirstLayerCornerId, Facing<CornerName>>;

/** All first-layer corner cases, in the order of their shelf. */
export const FIRST_LAYER_CORNER_ROWS: readonly CornerRow[] = [
  {
    id: "C1",
    where: { at: "DFR", facing: "F" },
    family: "on-a-side",
    twin: "C2",
    order: 1,
    targets: targets(20, 8, 2),
    ways: {
      first: ["D' R' D R"],
      repeating: ["(R' D' R D)5"],
      "repeating-bottom-first": ["D' R' D R"],
      shortest: ["F D F'"],
    },
  },
  {
    id: "C2",
    where: { at: "DFR", facing: "R" },
    family: "on-a-side",
    twin: "C1",
    order: 2,
    targets: targets(20, 8, 2),
    ways: {
      first: ["y D L D' L'", "R' D' R"],
      repeating: ["R' D' R D"],
      "repeating-bottom-first": ["(D' R' D R)5"],
    },
  },
  {
    id: "C3",
    where: { at: "DFR", facing: "D" },
    family: "underneath",
    twin: "C3",
    order: 3,
    targets: targets(30, 12, 3),
    ways: {
      first: ["R' D2 R D R' D' R"],
      repeating: ["(R' D' R D)3"],
      "repeating-bottom-first": ["(D' R' D R)3"],
      shortest: ["R2 D' R2 D R2"],
    },
  },
  {
    id: "C4",
    where: { at: "URF", facing: "R" },
    family: "twisted-at-home",
    twin: "C5",
    order: 4,
    targets: targets(30, 12, 4),
    ways: { first: ["R' D' R D R' D' R"], shortest: ["F D' F' R' D' R"] },
  },
  {
    id: "C5",
    where: { at: "URF", facing: "F" },
    family: "twisted-at-home",
    twin: "C4",
    order: 5,
    targets: targets(30, 12, 4),
    ways: { first: ["R' D R D' R' D R"], shortest: ["R' D R F D F'"] },
  },
  {
    id: "C6",
    where: { at: "UFL", facing: "U" },
    family: "next-to-its-home",
    twin: "C9",
    order: 6,
    targets: targets(35, 14, 4),
    ways: { first: ["L D L' R' D' R"] },
  },
  {
    id: "C7",
    where: { at: "UFL", facing: "L" },
    family: "next-to-its-home",
    twin: "C10",
    order: 7,
    targets: targets(35, 14, 4),
    ways: { first: ["L D L' D' R' D R"], shortest: ["R' L D L' R"] },
  },
  {
    id: "C8",
    where: { at: "UFL", facing: "F" },
    family: "next-to-its-home",
    twin: "C11",
    targets: targets(35, 14, 4),
    ways: { first: ["L D' L' D R' D' R"], shortest: ["F' D2 F2 D' F'"] },
  },
  {
    id: "C9",
    where: { at: "UBR", facing: "U" },
    family: "next-to-its-home",
    twin: "C6",
    targets: targets(35, 14, 4),
    ways: { first: ["R D2 R' D R' D' R"], shortest: ["R D R' F D2 F'"] },
  },
  {
    id: "C10",
    where: { at: "UBR", facing: "B" },
    family: "next-to-its-home",
    twin: "C7",
    targets: targets(35, 14, 4),
    ways: { first: ["R D' R' D' R' D' R"], shortest: ["F B' D' B F'"] },
  },
  {
    id: "C11",
    where: { at: "UBR", facing: "R" },
    family: "next-to-its-home",
    twin: "C8",
    targets: targets(35, 14, 4),
    ways: { first: ["R D R' D R' D R"], shortest: ["R D2 R2 D R"] },
  },
  {
    id: "C12",
    where: { at: "ULB", facing: "U" },
    family: "across-from-its-home",
    twin: "C12",
    targets: targets(35, 14, 4),
    ways: { first: ["L' D2 L D' R' D R"], shortest: ["R' L' D2 L R"] },
  },
  {
    id: "C13",
    where: { at: "ULB", facing: "B" },
    family: "across-from-its-home",
    twin: "C14",
    targets: targets(35, 14, 4),
    ways: { first: ["L' D L D R' D R"], shortest: ["R' B D2 B' R"] },
  },
  {
    id: "C14",
    where: { at: "ULB", facing: "L" },
    family: "across-from-its-home",
    twin: "C13",
    targets: targets(35, 14, 4),
    ways: { first: ["L' D' L D' R' D' R"], shortest: ["F L' D2 L F'"] },
  },
];
