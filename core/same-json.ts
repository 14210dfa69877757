/** Whether two values would be written as the same JSON. */

function fieldsOf(value: object): readonly [string, unknown][] {
  return Object.entries(value).filter(([, inner]) => inner !== undefined);
}

/**
 * Whether two values say the same as JSON: the order of an object's fields
 * does not matter, and a field that is undefined is not there.
 */
export function isSameJson(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== "object" || typeof b !== "object") return false;
  if (a === null || b === null || Array.isArray(a) !== Array.isArray(b))
    return false;
  const own = fieldsOf(a);
  const others = new Map(fieldsOf(b));
  return (
    own.length === others.size &&
    own.every(
      ([key, inner]) => others.has(key) && isSameJson(inner, others.get(key)),
    )
  );
}
