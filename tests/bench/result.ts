/**
 * What a benchmark measured, in the form of one line of `results.jsonl`.
 */

/** One measured thing; `null` where a field does not apply. */
export interface BenchResult {
  readonly name: string;
  readonly unit: string;
  /** Which direction is better. */
  readonly better: "lower" | "higher";
  /** The median where there are several samples. */
  readonly value: number;
  /** The sample that 95% of the samples are not worse than. */
  readonly p95: number | null;
  /** How many samples. */
  readonly n: number;
  readonly target: number | null;
  readonly met: boolean | null;
  /** What the value is compared with, such as a library of the same kind. */
  readonly reference: string | null;
  readonly referenceVersion: string | null;
  readonly referenceValue: number | null;
  /** The value divided by the reference's. */
  readonly ratio: number | null;
}

/** What a benchmark is compared with. */
export interface Reference {
  readonly name: string;
  readonly version: string;
  /** Samples in the same unit. */
  readonly samples: readonly number[];
}

/** A benchmark: measures, and throws `WrongAnswer` where a result is wrong. */
export type Benchmark = () => Promise<readonly BenchResult[]>;

/** What was measured gave a wrong answer, so its speed means nothing. */
export class WrongAnswer extends Error {}

/**
 * A result from its samples.
 *
 * Errors: throws without a sample.
 */
export function resultFrom(measured: {
  readonly name: string;
  readonly unit: string;
  readonly better: "lower" | "higher";
  readonly samples: readonly number[];
  readonly target?: number;
  readonly reference?: Reference;
}): BenchResult {
  const { name, unit, better, samples, target, reference } = measured;
  const value = quantile(samples, 0.5);
  const referenceValue = reference && quantile(reference.samples, 0.5);
  const isMet =
    target === undefined
      ? null
      : better === "lower"
        ? value <= target
        : value >= target;
  return {
    name,
    unit,
    better,
    value,
    p95:
      samples.length > 1
        ? quantile(samples, better === "lower" ? 0.95 : 0.05)
        : null,
    n: samples.length,
    target: target ?? null,
    met: isMet,
    reference: reference?.name ?? null,
    referenceVersion: reference?.version ?? null,
    referenceValue: referenceValue ?? null,
    ratio: referenceValue === undefined ? null : value / referenceValue,
  };
}

/**
 * A quantile, the usual way: linear between the two samples beside it.
 *
 * Units: `share` from 0 to 1; 0.5 is the median.
 * Errors: throws without a sample.
 */
export function quantile(samples: readonly number[], share: number): number {
  const sorted = [...samples].sort((a, b) => a - b);
  const place = share * (sorted.length - 1);
  const below = sorted[Math.floor(place)];
  const above = sorted[Math.ceil(place)];
  if (below === undefined || above === undefined) {
    throw new RangeError("a quantile needs a sample");
  }
  return below + (above - below) * (place - Math.floor(place));
}

/** A result as one line for a person. */
export function formatResult(result: BenchResult): string {
  const { name, unit, value, p95, n, target, met, better } = result;
  const parts = [`${name}: ${shown(value)} ${unit}`];
  if (p95 !== null) parts.push(`p95 ${shown(p95)}`);
  if (n > 1) parts.push(`n ${n}`);
  if (target !== null) {
    const limit = better === "lower" ? "at most" : "at least";
    parts.push(`target ${limit} ${shown(target)}`, `met: ${String(met)}`);
  }
  if (result.ratio !== null) {
    parts.push(
      `${result.reference ?? ""} ${result.referenceVersion ?? ""}: ${shown(result.referenceValue ?? 0)}, ratio ${shown(result.ratio)}`,
    );
  }
  return parts.join(", ");
}

function shown(value: number): string {
  return value.toLocaleString("en", { maximumSignificantDigits: 4 });
}
