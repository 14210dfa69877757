/**
 * What a person can hand on when Turnwise itself failed: the errors and where
 * they came from in the program. Nothing of a learner is in it.
 */

/** The most of one error that is kept. Units: UTF-16 units. */
const LONGEST = 4000;

function detailsOf(thrown: unknown): string {
  const text =
    thrown instanceof Error
      ? `${thrown.name}: ${thrown.message}\n${thrown.stack ?? ""}`
      : String(thrown);
  return text.slice(0, LONGEST);
}

/** The text of a report. Units: `at` in milliseconds since 1970. */
export function faultReport(
  thrown: readonly unknown[],
  about: { readonly at: number; readonly browser: string },
): string {
  return [
    "Turnwise: what happened",
    `When: ${new Date(about.at).toISOString()}`,
    `Browser: ${about.browser}`,
    ...thrown.map((one, i) => `\nError ${i + 1}\n${detailsOf(one)}`),
    "",
  ].join("\n");
}
