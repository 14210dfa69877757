/** How much more a test does in `npm run soak`, which sets `TURNWISE_SOAK`. */
import { appendFileSync } from "node:fs";

/** Whether this is the long run. */
export const IS_SOAK = process.env["TURNWISE_SOAK"] !== undefined;

/** A number of tries, ten times as many in the long run. */
export function tries(count: number): number {
  return IS_SOAK ? 10 * count : count;
}

/** Notes what a long run did, in the file that the soak reads out at its end; the usual run is silent. */
export function tellSoak(line: string): void {
  const file = process.env["TURNWISE_SOAK_TOLD"];
  if (file !== undefined) appendFileSync(file, `${line}\n`);
}
