/**
 * The planted faults: each is a mistake that somebody could really make, and
 * each must turn a test red. A fault that stays green shows a hole in the
 * tests, never a fault to take off the list.
 *
 * To add one to its area's file: name it as what a learner or a coach would
 * suffer from it, give the file, a piece of its text that stands there exactly
 * once, what to put in its place, and the tests that must notice. `npm run
 * soak` plants them all; `npm test` checks that every one can still be planted,
 * and plants two.
 */
import { CUBE_FAULTS } from "./faults/cube-faults";
import { CASE_FAULTS } from "./faults/case-faults";
import { ANSWER_FAULTS } from "./faults/answer-faults";
import { MEMORY_FAULTS } from "./faults/memory-faults";
import { DECK_FAULTS } from "./faults/deck-faults";
import { STORAGE_FAULTS } from "./faults/storage-faults";
import { SHELL_FAULTS } from "./faults/shell-faults";
import type { PlantedFault } from "./planted-fault";

/** Every planted fault. */
export const PLANTED_FAULTS: readonly PlantedFault[] = [
  ...CUBE_FAULTS,
  ...CASE_FAULTS,
  ...ANSWER_FAULTS,
  ...MEMORY_FAULTS,
  ...DECK_FAULTS,
  ...STORAGE_FAULTS,
  ...SHELL_FAULTS,
];
