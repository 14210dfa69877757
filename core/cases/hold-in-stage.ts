/**
 * How the cube is held in a stage. The first layer is held as the learner
 * chose; from the second layer on the last layer is on top, for every way that
 * is taught there is made so.
 */
import { type Rotation, rotationAbout, thenSymmetry } from "../cube/symmetries";
import { groupOfStage, type Stage } from "./stage";
import { type Hold, holdOfVariant, type Variant } from "./variant";

/** The hold in which a stage is practised, where the learner chose one for the first layer. */
export function holdFor(stage: Stage, chosen: Hold): Hold {
  return groupOfStage(stage) === "first-layer" ? chosen : "down";
}

/**
 * How the whole cube is held at the start of a variant of a stage's case: as
 * `holdOfVariant` says, but that a slot held down is seen at the front right,
 * where right-handed ways begin; turning over alone brings it to the left.
 */
export function holdInStage(
  stage: Stage,
  variant: Pick<Variant, "home" | "seenFrom">,
  hold: Hold,
): Rotation {
  const rotation = holdOfVariant(variant, hold);
  return groupOfStage(stage) === "slot" && hold === "down"
    ? thenSymmetry(rotationAbout("y", 1), rotation)
    : rotation;
}
