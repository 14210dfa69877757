import { describe, expect, it } from "vitest";
import { runToEnd } from "../../../core/steps";
import { buildTwoPhaseTables } from "../../../core/solver/two-phase-tables";

/** The buffers behind all typed arrays in a value, each once. */
function buffersIn(
  value: unknown,
  found = new Set<ArrayBufferLike>(),
): ReadonlySet<ArrayBufferLike> {
  if (ArrayBuffer.isView(value)) found.add(value.buffer);
  else if (typeof value === "object" && value !== null)
    for (const part of Object.values(value)) buffersIn(part, found);
  return found;
}

describe("the tables of the two-phase solver", () => {
  it("take at most the 16 MB that they are allowed", () => {
    const buffers = [...buffersIn(runToEnd(buildTwoPhaseTables()))];
    const bytes = buffers.reduce((sum, { byteLength }) => sum + byteLength, 0);
    // More than twenty tables, so that a change of form cannot hide them all.
    expect(buffers.length).toBeGreaterThan(20);
    expect(bytes).toBeLessThanOrEqual(16e6);
  });
});
