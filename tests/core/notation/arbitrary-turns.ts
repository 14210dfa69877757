import fc from "fast-check";
import {
  type Quarters,
  type Turn,
  TURN_LAYERS,
  type TurnLayer,
} from "../../../core/cube/turns";

/** Any turn of any of the given layers. */
export function arbitraryTurn(
  layers: readonly TurnLayer[] = TURN_LAYERS,
): fc.Arbitrary<Turn> {
  return fc.record({
    layer: fc.constantFrom(...layers),
    quarters: fc.constantFrom<Quarters>(1, 2, 3),
  });
}

/** Any sequence of turns, up to 40. */
export function arbitraryTurns(
  layers: readonly TurnLayer[] = TURN_LAYERS,
): fc.Arbitrary<readonly Turn[]> {
  return fc.array(arbitraryTurn(layers), { maxLength: 40 });
}
