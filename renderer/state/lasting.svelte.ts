/**
 * What outlives the place that asked for it first. A derived value belongs to
 * the component in which it was made, and stands still when that one is gone.
 */
import { untrack } from "svelte";
import { invariant } from "../../core/invariant";

/** Makes something that is kept while the window lives, so that its derived values go on whoever made it. */
export function lasting<T extends object>(make: () => T): T {
  const kept: { made?: T } = {};
  $effect.root(() => {
    kept.made = untrack(make);
  });
  invariant(kept.made !== undefined, "a root runs at once");
  return kept.made;
}
