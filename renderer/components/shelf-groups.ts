/** All shelves in groups, as a person goes through the solve. */
import {
  LAST_LAYER_COURSES,
  LAST_LAYER_STAGES,
} from "../../core/cases/last-layer-stages";
import { CASES_ON_SHELF } from "../../core/cases/shelf-counts";
import {
  FIRST_LAYER_STAGES,
  isLastLayerStage,
  SLOT_STAGES,
  type Stage,
} from "../../core/cases/stage";
import {
  lastLayerCourseName,
  stageName,
  stageNames,
} from "../../core/cases/stage-words";

/** Shelves that stand together. */
export interface ShelfGroup {
  readonly title: string;
  readonly stages: readonly Stage[];
}

const COURSES = ["beginners-steps", "two-looks-each", "one-look-each"] as const;

function lastLayerGroups(): readonly ShelfGroup[] {
  // A stage that two courses share stands with the first of them.
  const standing = new Set<Stage>();
  const groups = COURSES.map((course) => {
    const stages = LAST_LAYER_COURSES[course].filter(
      (stage) => !standing.has(stage),
    );
    for (const stage of stages) standing.add(stage);
    const name = lastLayerCourseName(course);
    return { title: `Last layer, ${name.toLowerCase()}`, stages };
  });
  const rest = LAST_LAYER_STAGES.filter((stage) => !standing.has(stage));
  return [...groups, { title: "Last layer, more at once", stages: rest }];
}

/** Every stage once, in groups. */
export const SHELF_GROUPS: readonly ShelfGroup[] = [
  { title: "First layer", stages: FIRST_LAYER_STAGES },
  { title: "First two layers", stages: SLOT_STAGES },
  ...lastLayerGroups(),
];

/** What a shelf is called under its group's title. */
export function nameInGroup(stage: Stage): string {
  if (!isLastLayerStage(stage)) return stageName(stage);
  const { short, tradeName } = stageNames(stage);
  return tradeName === undefined ? short : `${short} (${tradeName})`;
}

/** How many: "3,915". */
export function countInWords(count: number): string {
  return count.toLocaleString("en");
}

/** How many cases a shelf has and how many of them are kept: "57 cases, 3 kept". */
export function shelfCount(stage: Stage, kept: number): string {
  const cases = `${countInWords(CASES_ON_SHELF[stage])} cases`;
  return kept === 0 ? cases : `${cases}, ${countInWords(kept)} kept`;
}
