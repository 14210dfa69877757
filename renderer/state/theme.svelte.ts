/** Light or dark, as the system says, followed while the window is open. */
import { MediaQuery } from "svelte/reactivity";

const dark = new MediaQuery("prefers-color-scheme: dark");

/** On which ground a cube is drawn in the window now. */
export function pictureTheme(): "light" | "dark" {
  return dark.current ? "dark" : "light";
}
