/**
 * Why entered stickers are no cube, and where to look, as sentences. A slip
 * while entering is always thought of first: it is much likelier than a cube
 * that was put together wrongly.
 */
import type {
  AssemblyFault,
  EnteredFault,
} from "../../../core/cube/entered-fault";
import { type Slip, standingOut } from "../../../core/cube/entry-slips";
import { faceletFace } from "../../../core/cube/facelets";
import type { ColourName } from "../../../core/picture/colour-sets";
import { placeInWords } from "../../../core/notation/place-words";
import { listInWords } from "../../../core/notation/sentence";
import {
  facingInWords,
  type SeenColours,
  sideTitle,
  stickerPlace,
} from "./sticker-entry-words";

/** What is wrong, and what to do about it. */
export interface EntryFaultText {
  readonly what: string;
  readonly lookAt: string;
}

/**
 * A fault in a learner's words.
 *
 * Shape: `colours` are the six as they are seen, in the order of `FACES`.
 */
export function entryFaultText(
  fault: EnteredFault<ColourName>,
  colours: SeenColours,
): EntryFaultText {
  switch (fault.code) {
    case "stickers-missing":
      return {
        what: `${fault.facelets.length === 1 ? "One sticker is" : `${fault.facelets.length} stickers are`} still empty.`,
        lookAt: "Fill them in.",
      };
    case "centres-alike":
      return {
        what: `Two sides have ${fault.colour} in the middle. Every middle has a colour of its own.`,
        lookAt: slipsText(fault.slips, colours) ?? "Look at the middles again.",
      };
    case "colour-of-no-centre":
      return {
        what: `No side has ${fault.colour} in the middle, so no sticker can be ${fault.colour}.`,
        lookAt: "Look at the outlined stickers again.",
      };
    case "colour-count": {
      const counts = [...fault.tooMany, ...fault.tooFew].map(
        ({ colour, count }) => `${count} ${colour}`,
      );
      return {
        what: `Every colour has nine stickers, but here are ${listInWords(counts)}.`,
        lookAt:
          slipsText(fault.slips, colours) ??
          "Look at the outlined stickers again: one or more of them have another colour.",
      };
    }
    case "colours-never-meet": {
      const [a, b] = fault.colours;
      const piece = `The ${fault.kind} at the ${pieceAt(fault.facelets)}`;
      return {
        what:
          a === b
            ? `${piece} has ${a} twice. No piece has.`
            : `${piece} has ${a} and ${b}. They are on opposite sides, so no piece has both.`,
        lookAt:
          slipsText(fault.slips, colours) ?? "Look at its stickers again.",
      };
    }
    case "corner-mirrored":
      return {
        what: `The corner at the ${pieceAt(fault.facelets)} has its colours the wrong way round, as in a mirror.`,
        lookAt:
          slipsText(fault.slips, colours) ??
          "Look at its stickers again: two of them are likely in each other’s place.",
      };
    case "piece-twice": {
      const [first, again] = fault.places.map(pieceAt);
      const gone =
        fault.missing === undefined
          ? ""
          : ` The ${pieceInWords(fault.missing)} ${fault.kind} is nowhere.`;
      return {
        what: `The ${pieceInWords(fault.colours)} ${fault.kind} is there twice: at the ${first ?? ""} and at the ${again ?? ""}.${gone}`,
        lookAt:
          slipsText(fault.slips, colours) ??
          "Look at both again: one of them is another piece.",
      };
    }
    case "put-together-wrongly":
      return {
        what: `Every piece is there, but ${listInWords(fault.broken.map(assemblyText))}. Turning a cube can never do that.`,
        lookAt: [
          slipsText(fault.slips, colours) ??
            "Compare the screen with your cube, side by side.",
          "If it is all as on your cube, your cube was put together wrongly.",
          mendingText(fault.broken, fault.cornerThirds),
        ].join(" "),
      };
  }
}

function assemblyText(broken: AssemblyFault): string {
  switch (broken) {
    case "corner-twisted":
      return "one corner is turned in its place";
    case "edge-flipped":
      return "one edge is the wrong way round";
    case "pieces-swapped":
      return "two pieces are in each other’s place";
  }
}

/** How a cube that was put together wrongly is put right. */
function mendingText(
  broken: readonly AssemblyFault[],
  cornerThirds: number,
): string {
  const [first, another] = broken;
  if (
    another !== undefined ||
    first === undefined ||
    first === "pieces-swapped"
  )
    return "Take it apart, and put it together with every side in one colour.";
  return first === "edge-flipped"
    ? "Take one edge out, and put it back the other way round."
    : `Turn one corner in its place, a third of the way round, ${cornerThirds === 1 ? "against the clock" : "with the clock"}.`;
}

/** A piece by its colours, a corner's other two as they are met from left to right. */
function pieceInWords(clockwise: readonly ColourName[]): string {
  const [first = "", second = "", third] = clockwise;
  return listInWords(
    third === undefined ? [first, second] : [first, third, second],
  );
}

/** Where a piece lies: "top front right". */
function pieceAt(facelets: readonly number[]): string {
  return placeInWords(facelets.map(faceletFace));
}

/** The likeliest slips as one sentence; undefined where none stands out. */
function slipsText(
  slips: readonly Slip<ColourName>[],
  colours: SeenColours,
): string | undefined {
  const [first, ...others] = standingOut(slips);
  if (first === undefined) return undefined;
  if (others.length === 0) return slipText(first, colours);
  if (first.kind === "colours-exchanged") {
    // Any two opposite colours exchanged make a mirror image right.
    const pairs = [first, ...others].map(exchangedColours);
    return `Perhaps two colours were taken for each other: ${pairs.join("; or ")}.`;
  }
  const places = [first, ...others].flatMap(({ facelets }) => facelets);
  const names = [...new Set(places)].map(stickerPlace);
  return names.length > 6
    ? "Look at the outlined stickers again."
    : `Look again at these stickers: ${names.join("; ")}.`;
}

function exchangedColours({ changes }: Slip<ColourName>): string {
  return listInWords([...new Set(changes.values())].sort());
}

function slipText(slip: Slip<ColourName>, colours: SeenColours): string {
  const [a = 0, b = a] = slip.facelets;
  const [sideA, sideB] = [...new Set(slip.facelets.map(faceletFace))];
  const side = (sideA === undefined ? "" : sideTitle(sideA)).toLowerCase();
  switch (slip.kind) {
    case "sticker": {
      const colour = slip.changes.get(a) ?? "another colour";
      return `Look at this sticker again: ${stickerPlace(a)}. Is it ${colour}?`;
    }
    case "face-turned":
      return `Perhaps the ${side} was held the wrong way up. It goes with ${sideA === undefined ? "" : facingInWords(sideA, colours)}.`;
    case "face-mirrored":
      return `Perhaps the ${side} was entered with left and right exchanged.`;
    case "faces-exchanged":
      return `Perhaps the ${side} and the ${sideB === undefined ? "" : sideTitle(sideB).toLowerCase()} were entered in each other’s place.`;
    case "colours-exchanged":
      return `Perhaps ${exchangedColours(slip)} were taken for each other.`;
    case "piece-turned":
      return `Look at the piece at the ${pieceAt(slip.facelets)}: perhaps its stickers are in each other’s place.`;
    case "two-stickers":
      return `Look at these two stickers again: ${stickerPlace(a)}; ${stickerPlace(b)}.`;
  }
}
