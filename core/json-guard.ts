/**
 * What must be known of JSON from outside before it is believed: how deeply it
 * nests, which overflows a parser's stack, and whether it carries a key that
 * would reach an object's prototype.
 */

/**
 * How many arrays and objects stand in one another at the deepest place.
 *
 * Counted on the text and before parsing; brackets inside strings do not
 * count. Stops at the first place beyond `limit`: the result is then
 * `limit + 1`. Text that is not JSON gives some number and no error.
 */
export function nestingDepth(text: string, limit: number): number {
  let depth = 0;
  let deepest = 0;
  let inString = false;
  for (let i = 0; i < text.length; i += 1) {
    const letter = text[i];
    if (inString) {
      if (letter === "\\") i += 1;
      else if (letter === '"') inString = false;
    } else if (letter === '"') inString = true;
    else if (letter === "[" || letter === "{") {
      depth += 1;
      if (depth > deepest) deepest = depth;
      if (deepest > limit) return deepest;
    } else if (letter === "]" || letter === "}") depth -= 1;
  }
  return deepest;
}

/** Keys by which a later copy could reach the prototype of all objects. */
const PROTOTYPE_KEYS = ["__proto__", "constructor", "prototype"];

/**
 * The dotted path of the first key in a parsed value that would reach a
 * prototype, or undefined. Shape: JSON, nested no deeper than was checked.
 */
export function prototypeKeyIn(value: unknown): string | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  const entries: readonly [string, unknown][] = Object.entries(value);
  for (const [key, inner] of entries) {
    if (PROTOTYPE_KEYS.includes(key)) return key;
    const deeper = prototypeKeyIn(inner);
    if (deeper !== undefined) return `${key}.${deeper}`;
  }
  return undefined;
}
