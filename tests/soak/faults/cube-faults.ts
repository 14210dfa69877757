import type { PlantedFault } from "../planted-fault";

/** Faults in what a turn does, what a cube can be, and how turns are written and said. */
export const CUBE_FAULTS: readonly PlantedFault[] = [
  {
    name: "one corner's twist in an R turn has the wrong sign",
    file: "core/cube/face-turns.ts",
    find: "[2, 0, 0, 1, 1, 0, 0, 2]",
    replace: "[1, 0, 0, 1, 1, 0, 0, 2]",
    tests: ["tests/core/cube/published-sequences.test.ts"],
  },
  {
    name: "a slice turns the wrong way",
    file: "core/cube/turns.ts",
    find: `  M: {
    axis: "x",
    rotation: -1,`,
    replace: `  M: {
    axis: "x",
    rotation: 1,`,
    tests: [
      "tests/core/cube/turns.test.ts",
      "tests/core/cube/geometric-oracle.test.ts",
    ],
  },
  {
    name: "two swapped pieces pass for a possible cube",
    file: "core/cube/validity.ts",
    find: "cornersOdd !== isOddPermutation(state.edgePermutation)",
    replace: "cornersOdd && !isOddPermutation(state.edgePermutation)",
    tests: ["tests/core/cube/validity.test.ts"],
  },
  {
    name: "random positions are drawn without mending the parity",
    file: "core/cube/sample-state.ts",
    find: "if (areCornersOdd !== areEdgesOdd) {",
    replace: "if (areCornersOdd && !areCornersOdd) {",
    tests: ["tests/core/cube/sample-state.test.ts"],
  },
  {
    name: "a home that should be open may happen to hold its piece",
    file: "core/cube/sample-state.ts",
    find: "permutation[piece] === piece && orientation[piece] === 0",
    replace: "permutation[piece] === piece && orientation[piece] === 9",
    tests: ["tests/core/cube/sample-state.test.ts"],
  },
  {
    name: "a whole-cube turn counts in the length of an answer",
    file: "core/notation/metrics.ts",
    find: "return sum;\n    return sum + (isSliceTurn(turn) ? 2 : 1);",
    replace: "return sum + 1;\n    return sum + (isSliceTurn(turn) ? 2 : 1);",
    tests: ["tests/core/notation/metrics.test.ts"],
  },
  {
    name: "the words send the bottom the wrong way",
    file: "core/notation/say-in-words.ts",
    find: 'D: ["bottom", "right"],',
    replace: 'D: ["bottom", "left"],',
    tests: ["tests/core/notation/say-in-words.test.ts"],
  },
];
