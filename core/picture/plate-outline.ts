/** The outline of a plate with a thickness. */
import type { Point } from "./projection";
import type { SpaceRectangle } from "./shapes";
import { onPlane, type Vector } from "./vector";

/** The smallest convex ring around points. */
export function hull(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (ordered: readonly Point[]) => {
    const chain: Point[] = [];
    for (const point of ordered) {
      for (;;) {
        const b = chain.at(-1);
        const a = chain.at(-2);
        if (a === undefined || b === undefined) break;
        const turn =
          (b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x);
        if (turn > 0) break;
        chain.pop();
      }
      chain.push(point);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half([...sorted].reverse())];
}

/** Points along the outline of a rounded rectangle in space. */
export function outlinePoints(shape: SpaceRectangle): readonly Vector[] {
  const corners = [
    [1, 1, 0],
    [-1, 1, 90],
    [-1, -1, 180],
    [1, -1, 270],
  ] as const;
  return corners.flatMap(([along, across, start]) =>
    Array.from({ length: 7 }, (_, i) => {
      const angle = ((start + i * 15) * Math.PI) / 180;
      return onPlane(
        shape.centre,
        shape.column,
        along * (shape.halfColumn - shape.radius) +
          Math.cos(angle) * shape.radius,
        shape.row,
        across * (shape.halfRow - shape.radius) +
          Math.sin(angle) * shape.radius,
      );
    }),
  );
}
