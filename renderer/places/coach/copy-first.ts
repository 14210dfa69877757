/**
 * Fields of a deck that is never changed: they look and move as those of any
 * other deck, but the first attempt to change one is turned into the offer of
 * a copy.
 */
import type { Attachment } from "svelte/attachments";

/** Turns every attempt to change a field within an element into a call of `offer`; undefined: lets it be. */
export function copyFirst(offer: (() => void) | undefined): Attachment {
  return (node) => {
    if (offer === undefined) return;
    const intercept = (event: Event) => {
      const { target } = event;
      const isChoice =
        target instanceof HTMLInputElement &&
        (target.type === "radio" || target.type === "checkbox");
      if (event.type === "click" && !isChoice) return;
      event.preventDefault();
      event.stopPropagation();
      offer();
    };
    const types = ["click", "beforeinput"] as const;
    for (const type of types)
      node.addEventListener(type, intercept, { capture: true });
    return () => {
      for (const type of types)
        node.removeEventListener(type, intercept, { capture: true });
    };
  };
}
