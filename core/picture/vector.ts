/** Points and directions in space, in cubies; the few operations pictures need. */

/**
 * A point or direction as the viewer has the cube before them.
 *
 * Shape: x to the right, y up, z towards the front; the cube fills ±1.5.
 */
export interface Vector {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** The vector with these three parts. */
export function vector(x: number, y: number, z: number): Vector {
  return { x, y, z };
}

/** Both added up. */
export function plus(a: Vector, b: Vector): Vector {
  return { x: a.x + b.x, y: a.y + b.y, z: a.z + b.z };
}

/** The first without the second. */
export function minus(a: Vector, b: Vector): Vector {
  return { x: a.x - b.x, y: a.y - b.y, z: a.z - b.z };
}

/** A vector made longer or shorter. */
export function times(a: Vector, factor: number): Vector {
  return { x: a.x * factor, y: a.y * factor, z: a.z * factor };
}

/** The scalar product. */
export function dot(a: Vector, b: Vector): number {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

/** The vector product, right-handed. */
export function cross(a: Vector, b: Vector): Vector {
  return {
    x: a.y * b.z - a.z * b.y,
    y: a.z * b.x - a.x * b.z,
    z: a.x * b.y - a.y * b.x,
  };
}

/** A point `along` one direction and `across` another, from an origin. */
export function onPlane(
  origin: Vector,
  alongAxis: Vector,
  along: number,
  acrossAxis: Vector,
  across: number,
): Vector {
  return {
    x: origin.x + alongAxis.x * along + acrossAxis.x * across,
    y: origin.y + alongAxis.y * along + acrossAxis.y * across,
    z: origin.z + alongAxis.z * along + acrossAxis.z * across,
  };
}

/**
 * A vector turned about one of the cube's axes.
 *
 * Units: degrees, right-handed (counter-clockwise seen from the axis' tip).
 */
export function turned(
  a: Vector,
  axis: "x" | "y" | "z",
  degrees: number,
): Vector {
  if (degrees === 0) return a;
  const angle = (degrees * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  switch (axis) {
    case "x":
      return { x: a.x, y: a.y * cos - a.z * sin, z: a.y * sin + a.z * cos };
    case "y":
      return { x: a.x * cos + a.z * sin, y: a.y, z: a.z * cos - a.x * sin };
    case "z":
      return { x: a.x * cos - a.y * sin, y: a.x * sin + a.y * cos, z: a.z };
  }
}
