/**
 * A smooth curve through scattered points: local linear regression, as a
 * learner's times fall neither along a line nor along any one known law.
 *
 * Source: Cleveland, JASA 74 (1979), 829–836, with its tricube weights and
 *         without its robust repeats: the points are medians already.
 */

/** A point that counts as much as its weight. */
export interface WeightedPoint {
  readonly x: number;
  readonly y: number;
  /** Over 0. */
  readonly weight: number;
}

/** Fewer points make no curve: it would show chance. */
export const LEAST_POINTS = 8;

/** The share of the points that the curve looks at in each place. */
const SPAN = 0.6;

/** How far the points reach that the curve looks at from a place. */
function reachFrom(points: readonly WeightedPoint[], x: number): number {
  const distances = points
    .map((point) => Math.abs(point.x - x))
    .toSorted((a, b) => a - b);
  return distances[Math.ceil(SPAN * points.length) - 1] ?? 0;
}

function heightAt(points: readonly WeightedPoint[], x: number): number {
  // A little further than the last of them, which would else count nothing.
  const reach = reachFrom(points, x) * 1.0001 || 1;
  let [weights, dx, dy, dxx, dxy] = [0, 0, 0, 0, 0];
  for (const point of points) {
    const away = point.x - x;
    const share = Math.min(1, Math.abs(away) / reach);
    const weight = point.weight * (1 - share ** 3) ** 3;
    weights += weight;
    dx += weight * away;
    dy += weight * point.y;
    dxx += weight * away ** 2;
    dxy += weight * away * point.y;
  }
  const spread = weights * dxx - dx ** 2;
  // All in one place: there is a height there, and no slope.
  return spread < 1e-9 * weights ** 2
    ? dy / weights
    : (dxx * dy - dx * dxy) / spread;
}

/** The heights of the curve above each of the points; undefined where there are too few. */
export function smoothCurve(
  points: readonly WeightedPoint[],
): readonly number[] | undefined {
  return points.length < LEAST_POINTS
    ? undefined
    : points.map(({ x }) => heightAt(points, x));
}
