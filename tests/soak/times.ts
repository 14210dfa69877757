/** How much more a test does in `npm run soak`, which sets `TURNWISE_SOAK`. */

/** Whether this is the long run. */
export const IS_SOAK = process.env["TURNWISE_SOAK"] !== undefined;

/** A number of tries, ten times as many in the long run. */
export function tries(count: number): number {
  return IS_SOAK ? 10 * count : count;
}

/** Says what a long run did; the usual one is silent. */
export function tellSoak(line: string): void {
  if (IS_SOAK) console.log(line);
}
