/** The palette of the cube pictures: the learner's colours on a light or dark desk. */
import { MediaQuery } from "svelte/reactivity";
import { type CubePalette, cubePalette } from "../../../core/picture/palette";
import type { LearnerState } from "../../state/learner.svelte";

const dark = new MediaQuery("prefers-color-scheme: dark");

/** The palette that fits the learner and the desk just now; read it in markup or `$derived`. */
export function paletteFor(
  learner: Pick<LearnerState, "scheme" | "settings">,
): CubePalette {
  const { paints, letters } = learner.settings;
  return cubePalette({
    scheme: learner.scheme,
    theme: dark.current ? "dark" : "light",
    paints,
    letters,
  });
}
