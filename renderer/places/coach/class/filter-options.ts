/** Which cases the class's table can be narrowed to. */
import type { CaseId } from "../../../../core/cases/case-ids";
import { stageOfCase } from "../../../../core/cases/case-table";
import { STAGES } from "../../../../core/cases/stage";
import { stageName } from "../../../../core/cases/stage-words";
import type { Deck } from "../../../../core/deck/deck";
import { formatClassFilter } from "../../../state/class/class-filter";

/** Every case that was answered, then one stage's, then each deck. */
export function filterOptions(
  decks: readonly Deck[],
  met: ReadonlySet<CaseId>,
): readonly { readonly value: string; readonly label: string }[] {
  const stages = new Set([...met].map(stageOfCase));
  return [
    {
      value: formatClassFilter({ kind: "met" }),
      label: "Every case somebody has answered",
    },
    ...STAGES.filter((stage) => stages.has(stage)).map((stage) => ({
      value: formatClassFilter({ kind: "stage", stage }),
      label: `Answered: ${stageName(stage).toLowerCase()}`,
    })),
    ...decks
      .filter(({ cases }) => cases.length > 0)
      .map(({ id, name }) => ({
        value: formatClassFilter({ kind: "deck", deck: id }),
        label: `Deck: ${name}`,
      })),
  ];
}
