/** What every question of the progress page is shown with, for its tests. */
import { screen } from "@testing-library/svelte";
import userEvent from "@testing-library/user-event";
import type { CaseId } from "../../../../core/cases/case-ids";
import type { CaseTimes } from "../../../../core/progress/case-times";
import { USUAL_SCHEME } from "../../../../core/picture/colour-sets";
import { cubePalette } from "../../../../core/picture/palette";

/** The day on which the page is looked at: 25 November 2025, a Tuesday (ISO 8601 calendar). */
export const TODAY = Date.UTC(2025, 10, 25) / 86_400_000;

/** The colours of a cube on the page. */
export const palette = cubePalette({
  scheme: USUAL_SCHEME,
  theme: "light",
  paints: "plain",
  letters: false,
});

/** How the page names a case, and where it leads. */
export const label = ({ case: id }: { readonly case: CaseId }) => ({
  title: `case ${id}`,
  href: `#/cases/${id}`,
});

/** Has the open question show its numbers as a table. */
export async function openTable(): Promise<void> {
  await userEvent.click(screen.getByRole("button", { name: "as a table" }));
}

/** A case answered five times, its usual time and its target in seconds. */
export const times = (
  id: CaseId,
  total: number,
  target: number,
): CaseTimes => ({
  case: id,
  hold: "up",
  answerWay: "on-screen",
  answers: 5,
  total: 1000 * total,
  thinking: 600 * total,
  turning: 400 * total,
  target,
});
