/** The six faces in the order of facelet strings and of every face table. */
export const FACES = ["U", "R", "F", "D", "L", "B"] as const;

/**
 * A face of the cube: of the *body* (fixed to the centres) or of the *view*
 * (as the learner sees it), whichever the name of the variable says.
 */
export type Face = (typeof FACES)[number];

/** The position of each face in `FACES`: an integer 0–5. */
export const FACE_INDEX: Readonly<Record<Face, number>> = {
  U: 0,
  R: 1,
  F: 2,
  D: 3,
  L: 4,
  B: 5,
};

/** The face on the other side of the cube. */
export const OPPOSITE_FACE: Readonly<Record<Face, Face>> = {
  U: "D",
  R: "L",
  F: "B",
  D: "U",
  L: "R",
  B: "F",
};
