/**
 * What a window remembers over a reload, and nobody else: it is gone with the
 * window. For what is worth nothing in another one.
 */

/** What is remembered under a name, not yet parsed; undefined where there is nothing, or no such memory. */
export function rememberedInWindow(name: string): unknown {
  try {
    const text = sessionStorage.getItem(name);
    return text === null ? undefined : JSON.parse(text);
  } catch (thrown) {
    if (isRefusal(thrown)) return undefined;
    throw thrown;
  }
}

/** Remembers a value under a name; undefined forgets it. Without such a memory nothing is remembered. */
export function rememberInWindow(name: string, value: unknown): void {
  try {
    if (value === undefined) sessionStorage.removeItem(name);
    else sessionStorage.setItem(name, JSON.stringify(value));
  } catch (thrown) {
    if (!isRefusal(thrown)) throw thrown;
  }
}

/** Forgets whatever was remembered under names that hold a text: somebody's id. */
export function forgetInWindow(part: string): void {
  try {
    for (const name of Object.keys(sessionStorage))
      if (name.includes(part)) sessionStorage.removeItem(name);
  } catch (thrown) {
    if (!isRefusal(thrown)) throw thrown;
  }
}

/** A browser that keeps nothing, or is full, and text that was changed by hand. */
function isRefusal(thrown: unknown): boolean {
  return thrown instanceof DOMException || thrown instanceof SyntaxError;
}
