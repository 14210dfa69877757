/** Why a tap on the picture of a cube names no place for a piece, as a sentence. */
import type { SeatError } from "./seats";

/** What was wrong with the tap, and what to tap instead. */
export function seatTroubleText(error: SeatError): string {
  switch (error) {
    case "centre":
      return "That is a middle: it never leaves its side. Tap a place beside it.";
    case "other-kind":
      return "That is a place for the other kind of piece. A corner has three stickers, an edge two.";
    case "taken":
      return "Another piece is there already. Tap a grey place.";
  }
}
