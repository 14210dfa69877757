/**
 * Whether something is about to be seen, for pictures that are made only then,
 * and a few at a time: forty cubes at once are a tenth of a second.
 */
import { tick } from "svelte";
import { runningTime } from "../platform/clock";

/** How far outside the window something counts as about to be seen. Units: CSS. */
const MARGIN = "400px";

/** How long pictures are made in one frame. Units: milliseconds. */
const BUDGET = 8;

const waiting = new WeakMap<Element, () => void>();
const due: Element[] = [];
let observer: IntersectionObserver | undefined;
let isPumping = false;

/** Makes what is due, as much as fits into a frame, then goes on in the next. */
async function pump(): Promise<void> {
  const end = runningTime() + BUDGET;
  do {
    const element = due.shift();
    if (element === undefined) break;
    waiting.get(element)?.();
    waiting.delete(element);
    await tick();
  } while (runningTime() < end);
  isPumping = due.length > 0;
  if (isPumping) requestAnimationFrame(() => void pump());
}

function observe(entries: readonly IntersectionObserverEntry[]): void {
  for (const { isIntersecting, target } of entries) {
    if (!isIntersecting) continue;
    observer?.unobserve(target);
    due.push(target);
  }
  if (isPumping || due.length === 0) return;
  isPumping = true;
  requestAnimationFrame(() => void pump());
}

/**
 * Calls once, when an element is about to come into view; at once where the
 * platform cannot tell. One observer serves all: a shelf has hundreds. Answers
 * how to stop waiting.
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
