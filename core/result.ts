/**
 * The outcome of reading something from outside: a value, or an error that
 * says what is wrong and where. House style: `E` is a plain union with a
 * stable `code`; its sentences live in the renderer's `error-text.ts`.
 */
export type Result<T, E> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: E };

/** A successful outcome. */
export function ok<T>(value: T): Result<T, never> {
  return { ok: true, value };
}

/** A failed outcome, carrying its code and its place. */
export function err<E>(error: E): Result<never, E> {
  return { ok: false, error };
}
