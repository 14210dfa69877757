/**
 * What was typed from sheets and is not stored yet, by whose it is and of which
 * week: there until it is stored, so that nothing is lost to a look at another
 * child or week.
 */
import { SvelteMap } from "svelte/reactivity";
import type { LocalDay } from "../../../core/memory/review";
import type { EnteredRow } from "../../../core/paper/entered-ticks";

/** Whose sheet of which week: the same one may be handed out again. */
export function entryKey(learner: string, firstDay: LocalDay): string {
  return `${firstDay} ${learner}`;
}

/** Whether anything stands in a row. */
function isFilled({ ticks, times }: EnteredRow): boolean {
  return (
    ticks.some((tick) => tick !== undefined) ||
    times.some((text) => text.trim() !== "")
  );
}

/** A row over another: what it says goes before. */
function over(
  upper: EnteredRow | undefined,
  lower: EnteredRow | undefined,
): EnteredRow | undefined {
  if (upper === undefined || lower === undefined) return upper ?? lower;
  return {
    ticks: upper.ticks.map((tick, i) => tick ?? lower.ticks[i]),
    times: upper.times.map((text, i) => text || (lower.times[i] ?? "")),
  };
}

/** Rows over others: what they say goes before. */
export function layered(
  upper: readonly EnteredRow[] = [],
  lower: readonly EnteredRow[] = [],
): readonly EnteredRow[] {
  const longer = upper.length < lower.length ? lower : upper;
  return longer.flatMap((_, i) => over(upper[i], lower[i]) ?? []);
}

/** The drafts of one sheet. Keys are `entryKey`s. */
export class TickDrafts {
  readonly #rows = new SvelteMap<string, readonly EnteredRow[]>();

  /** What was typed; undefined: nothing ever. */
  get(key: string): readonly EnteredRow[] | undefined {
    return this.#rows.get(key);
  }

  /** Puts rows in the place of what was typed. */
  set(key: string, rows: readonly EnteredRow[]): void {
    this.#rows.set(key, rows);
  }

  /** Forgets what was typed. */
  delete(key: string): void {
    this.#rows.delete(key);
  }

  /** Whether anything stands in the boxes. */
  isFilled(key: string): boolean {
    return this.#rows.get(key)?.some(isFilled) === true;
  }

  /** Whether anything stands in anybody's. */
  get hasAny(): boolean {
    return [...this.#rows.keys()].some((key) => this.isFilled(key));
  }

  /** Writes rows over what was typed. */
  layOver(key: string, rows: readonly EnteredRow[]): void {
    this.#rows.set(key, layered(rows, this.#rows.get(key)));
  }

  /** Puts rows back under what was typed since. */
  layUnder(key: string, rows: readonly EnteredRow[]): void {
    this.#rows.set(key, layered(this.#rows.get(key), rows));
  }

  /** Moves what was typed to another key. */
  move(from: string, to: string): void {
    const rows = this.#rows.get(from);
    if (rows === undefined) return;
    this.#rows.delete(from);
    this.#rows.set(to, rows);
  }
}
