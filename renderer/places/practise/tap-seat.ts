/** A tap on a picture that says where a piece is. */
import type { PartlyKnownCubies } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import type { CubePiece } from "../../state/practise/own-cube";
import { seatAt } from "../../state/practise/seats";
import { seatTroubleText } from "../../state/practise/seat-trouble-text";

/** Tells the place that was tapped; returns what was wrong with the tap, as a sentence, empty: nothing. */
export function tapSeat(
  cube: HeldCube<PartlyKnownCubies>,
  kind: CubePiece["kind"],
  facelet: number,
  onfound: (position: number, orientation: number) => void,
): string {
  const seat = seatAt(cube, kind, facelet);
  if (typeof seat === "string") return seatTroubleText(seat);
  onfound(seat.position, seat.orientation);
  return "";
}
