/**
 * Where the checkout is, as the bundled benchmark program sees it.
 */
import { join } from "node:path";

/** The checkout's root; the built file is `dist/tools/bench.js`. */
export const ROOT = join(import.meta.dirname, "..", "..");
