/** How to hold the cube for each side, and what each sticker is called. */
import { faceletFace } from "../../../core/cube/facelets";
import { FACES, type Face } from "../../../core/cube/faces";
import type { ColourName } from "../../../core/picture/colour-sets";

/** The six colours in the order of the faces as they are seen. */
export type SeenColours = readonly ColourName[];

const SIDE: Readonly<Record<Face, string>> = {
  U: "Top",
  R: "Right side",
  F: "Front",
  D: "Bottom",
  L: "Left side",
  B: "Back",
};

const IN_FACE = [
  "top left",
  "top middle",
  "top right",
  "middle left",
  "middle",
  "middle right",
  "bottom left",
  "bottom middle",
  "bottom right",
];

/** Which side is on top while a side faces the learner. */
const ABOVE: Readonly<Record<Face, Face>> = {
  U: "B",
  R: "U",
  F: "U",
  D: "F",
  L: "U",
  B: "U",
};

/** A side as a heading: "Right side". */
export function sideTitle(face: Face): string {
  return SIDE[face];
}

/** A sticker's place: "Front, top left", as that side faces the learner. */
export function stickerPlace(facelet: number): string {
  return `${SIDE[faceletFace(facelet)]}, ${IN_FACE[facelet % 9] ?? ""}`;
}

/** A sticker's name for somebody who does not see it: "Front, top left: red". */
export function stickerName(
  facelet: number,
  colour: ColourName | undefined,
  isPointedAt: boolean,
): string {
  const name = `${stickerPlace(facelet)}: ${colour ?? "empty"}`;
  return isPointedAt ? `${name}, look again` : name;
}

/** How the cube is held while a side is entered: "green facing you, white on top". */
export function facingInWords(face: Face, colours: SeenColours): string {
  const [facing, above] = [face, ABOVE[face]].map(
    (seen) => colours[FACES.indexOf(seen)] ?? "",
  );
  return `${facing ?? ""} facing you, ${above ?? ""} on top`;
}

/** What to do to come to a side from the one before in the order. */
export function turningToInWords(face: Face, colours: SeenColours): string {
  const colourOf = (seen: Face) => colours[FACES.indexOf(seen)] ?? "";
  const [facing, above] = [colourOf(face), colourOf(ABOVE[face])];
  switch (face) {
    case "F":
      return "Hold your cube so, and enter this side. The middles are filled in already.";
    case "R":
    case "B":
    case "L":
      return `Keep ${above} on top and turn the whole cube to the left: ${facing} faces you.`;
    case "U":
      return `Turn on until ${colourOf("F")} faces you, then tip the top towards you: ${facing} faces you, ${above} is on top.`;
    case "D":
      return `Tip the top towards you twice more: ${facing} faces you, ${above} is on top.`;
  }
}
