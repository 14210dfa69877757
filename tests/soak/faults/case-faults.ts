import type { PlantedFault } from "../planted-fault";

/** Faults in which cases there are, where they stand and what answers them. */
export const CASE_FAULTS: readonly PlantedFault[] = [
  {
    name: "the homes go round the mirrored way",
    file: "core/cases/stage.ts",
    find: 'return rotationAbout("y", home);',
    replace: 'return rotationAbout("y", -home);',
    tests: [
      "tests/core/cases/ways.test.ts",
      "tests/core/cases/random-position.test.ts",
    ],
  },
  {
    name: "two case names are exchanged",
    file: "core/cases/first-layer-corners.ts",
    find: `    id: "C1",
    where: { at: "DFR", facing: "F" },`,
    replace: `    id: "C1",
    where: { at: "DFR", facing: "R" },`,
    tests: ["tests/core/cases/ways.test.ts", "tests/core/cases/orbits.test.ts"],
  },
  {
    name: "held down, the cube is turned over sideways",
    file: "core/cases/variant.ts",
    find: 'rotationAbout("z", 2)',
    replace: 'rotationAbout("x", 2)',
    tests: [
      "tests/core/cases/ways.test.ts",
      "tests/core/cases/way-for-position.test.ts",
    ],
  },
  {
    name: "an answer that breaks a placed piece counts as right",
    file: "core/cases/constraint.ts",
    find: "allPieces([targetsOf(asked), markedOf(asked)])",
    replace: "allPieces([targetsOf(asked)])",
    tests: ["tests/core/answer/judge.test.ts"],
  },
];
