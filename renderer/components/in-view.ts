/** Whether something is about to be seen, for pictures that are made only then. */

/** How far outside the window something counts as about to be seen. Units: CSS. */
const MARGIN = "400px";

const waiting = new WeakMap<Element, () => void>();
let observer: IntersectionObserver | undefined;

function observe(entries: readonly IntersectionObserverEntry[]): void {
  for (const { isIntersecting, target } of entries) {
    if (!isIntersecting) continue;
    observer?.unobserve(target);
    waiting.get(target)?.();
    waiting.delete(target);
  }
}

/**
 * Calls once, when an element is about to come into view; at once where the
 * platform cannot tell. One observer serves all: a shelf has hundreds.
 */
export function whenInView(element: Element, onview: () => void): () => void {
  if (typeof IntersectionObserver === "undefined") {
    onview();
    return () => undefined;
  }
  observer ??= new IntersectionObserver(observe, { rootMargin: MARGIN });
  waiting.set(element, onview);
  observer.observe(element);
  return () => {
    observer?.unobserve(element);
    waiting.delete(element);
  };
}
