import { type Rotation, rotationAbout, thenSymmetry } from "../cube/symmetries";

/** How the learner holds the cube: the first layer on top, or underneath. */
export type Hold = "up" | "down";

/** All holds, the default first. */
export const HOLDS = ["up", "down"] as const satisfies readonly Hold[];

/**
 * One of the four homes of a stage: how many `y` quarter turns take the
 * reference home (UF, or UFR) to it. Edges: UF UL UB UR; corners: URF UFL ULB UBR.
 */
export type HomeIndex = 0 | 1 | 2 | 3;

/** All four homes, in the order of `y` turns. */
export const HOME_INDICES = [
  0, 1, 2, 3,
] as const satisfies readonly HomeIndex[];

/** Everything about one asking of a case that the case itself leaves open. */
export interface Variant {
  /** The home of the piece to bring home, in the body frame (first layer at body U). */
  readonly home: HomeIndex;
  /** The other homes that hold their pieces, ascending; the rest must not happen to be placed. */
  readonly placed: readonly HomeIndex[];
  /** Quarter turns of the free layer (clockwise seen from body D) away from lined up; 0 for a piece that is not in it. */
  readonly turnedAway: 0 | 1 | 2 | 3;
  /** Whole-cube `y` quarter turns away from "home in front". */
  readonly seenFrom: 0 | 1 | 2 | 3;
}

/**
 * How the whole cube is held at the start of a variant: its home brought to
 * the front (front right for a corner), turned on by `seenFrom`, and turned
 * over about the front–back axis for the hold "down".
 */
export function holdOfVariant(
  variant: Pick<Variant, "home" | "seenFrom">,
  hold: Hold,
): Rotation {
  const upright = rotationAbout("y", variant.seenFrom - variant.home);
  return hold === "up" ? upright : thenSymmetry(upright, rotationAbout("z", 2));
}
