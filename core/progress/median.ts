/**
 * The middle one of some values, or the mean of the two middle ones; undefined
 * without a value.
 */
export function median(values: readonly number[]): number | undefined {
  const sorted = Float64Array.from(values).sort();
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  return upper === undefined || lower === undefined
    ? undefined
    : (upper + lower) / 2;
}
