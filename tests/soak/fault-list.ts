/**
 * The planted faults: each is a mistake that somebody could really make, and
 * each must turn a test red. A fault that stays green shows a hole in the
 * tests, never a fault to take off the list.
 *
 * To add one: name it as what a learner or a coach would suffer from it, give
 * the file, a piece of its text that stands there exactly once, what to put in
 * its place, and the tests that must notice. `npm run soak` plants them all;
 * `npm test` checks that every one can still be planted, and plants two.
 */

/** A change to one file, and the test files one of which must fail by it. */
export interface PlantedFault {
  readonly name: string;
  readonly file: string;
  readonly find: string;
  readonly replace: string;
  readonly tests: readonly string[];
}

/** Every planted fault. */
export const PLANTED_FAULTS: readonly PlantedFault[] = [
  {
    name: "one corner's twist in an R turn has the wrong sign",
    file: "core/cube/face-turns.ts",
    find: "[2, 0, 0, 1, 1, 0, 0, 2]",
    replace: "[1, 0, 0, 1, 1, 0, 0, 2]",
    tests: ["tests/core/cube/published-sequences.test.ts"],
  },
  {
    name: "the local server answers to any host name",
    file: "electron/local-server.ts",
    find: "request.headers.host === host",
    replace: "request.headers.host !== undefined",
    tests: ["tests/electron/local-server.test.ts"],
  },
  {
    name: "answers other than pages go without the content policy",
    file: "electron/served-files.ts",
    find: `      ...PROTECTING_HEADERS,
      "Content-Type": "text/plain; charset=utf-8",`,
    replace: `      "Content-Type": "text/plain; charset=utf-8",`,
    tests: [
      "tests/electron/served-files.test.ts",
      "tests/electron/local-server.test.ts",
    ],
  },
  {
    name: "a learner's day turns over at midnight instead of three",
    file: "core/memory/local-day.ts",
    find: "DAY_TURNS_OVER_AT = 3;",
    replace: "DAY_TURNS_OVER_AT = 0;",
    tests: ["tests/core/memory/local-day.test.ts"],
  },
];
