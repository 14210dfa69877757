/** The measures of a memory's ring, on screen and on paper. */

/** From its middle to the middle of its line. Units: the picture's, 16 across. */
export const RING_RADIUS = 6.5;

/** Once around it, in the same units. */
export const RING_ROUND = 2 * Math.PI * RING_RADIUS;

/** The radius of the dot in the middle of one that is kept. */
export const RING_DOT = 2.4;
