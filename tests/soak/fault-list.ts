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
    name: "a crash while a deck is saved leaves half a file in its place",
    file: "electron/whole-files.ts",
    find: "const unfinished = join(folder, `.turnwise-${randomUUID()}.part`);",
    replace: "const unfinished = path;",
    tests: ["tests/electron/whole-files.test.ts"],
  },
  {
    name: "the page may read any file by calling it a backup",
    file: "electron/backup-folder.ts",
    find: "if (!stored.some((backup) => backup.name === name))",
    replace: `if (name === "" && stored.length === 0)`,
    tests: ["tests/electron/backup-folder.test.ts"],
  },
  {
    name: "old automatic backups go although the new one was not written",
    file: "electron/backup-folder.ts",
    find: "if (!written.ok) return written;",
    replace: "",
    tests: ["tests/electron/backup-folder.test.ts"],
  },
  {
    name: "a menu takes the key that turns the right layer",
    file: "electron/menu-template.ts",
    find: `accelerator: "CmdOrCtrl+R"`,
    replace: `accelerator: "R"`,
    tests: ["tests/electron/menu-template.test.ts"],
  },
  {
    name: "the log of an error names the person's folder",
    file: "electron/trouble-log.ts",
    find: "const text = withoutPersonal(trouble.text, facts.personal);",
    replace: "const text = trouble.text;",
    tests: ["tests/electron/trouble-log.test.ts"],
  },
  {
    name: "a learner's day turns over at midnight instead of three",
    file: "core/memory/local-day.ts",
    find: "DAY_TURNS_OVER_AT = 3;",
    replace: "DAY_TURNS_OVER_AT = 0;",
    tests: ["tests/core/memory/local-day.test.ts"],
  },
  {
    name: "a case comes back a day late",
    file: "core/memory/day-plan.ts",
    find: "due !== undefined && due <= input.today",
    replace: "due !== undefined && due < input.today",
    tests: ["tests/core/memory/day-plan.test.ts"],
  },
  {
    name: "new cases come although due ones wait",
    file: "core/memory/today.ts",
    find: "waiting.length > 0 ? 0 :",
    replace: "waiting.length > 99 ? 0 :",
    tests: ["tests/core/memory/today.test.ts"],
  },
  {
    name: "two look-alikes are met in one round",
    file: "core/memory/fresh-order.ts",
    find: "if (!chosen.some((other) => areAlike(one.case, other.case)))",
    replace: "if (!chosen.some((other) => areAlike(other.case, other.case)))",
    tests: ["tests/core/memory/fresh-order.test.ts"],
  },
  {
    name: "practice beside the schedule takes its minutes",
    file: "core/memory/time-needed.ts",
    find: 'review.localDay !== day || review.asking === "extra"',
    replace: 'review.localDay !== day || review.asking === "again"',
    tests: ["tests/core/memory/time-needed.test.ts"],
  },
  {
    name: "a second answer on one day counts as another day",
    file: "core/memory/grader.ts",
    find: "(lastDay === undefined || review.localDay > lastDay)",
    replace: "(lastDay === undefined || review.localDay >= lastDay)",
    tests: ["tests/core/memory/grader.test.ts"],
  },
  {
    name: "a turn taken back is no correction",
    file: "core/answer/turn-trail.ts",
    find: "if (last.isTurning) this.#correct(last, at);",
    replace: "",
    tests: ["tests/core/answer/measure.test.ts"],
  },
  {
    name: "lining up ends the thinking time",
    file: "core/answer/turn-trail.ts",
    find: `if (body.kind === "committing") this.committedAt ??= at;`,
    replace: `if (body.kind !== "whole-cube") this.committedAt ??= at;`,
    tests: ["tests/core/answer/measure.test.ts"],
  },
  {
    name: "a missed case comes back after two others",
    file: "core/memory/round-track.ts",
    find: "RETURN_GAP = 3;",
    replace: "RETURN_GAP = 2;",
    tests: ["tests/core/memory/round-track.test.ts"],
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
  {
    name: "a fit is taken that foretells worse",
    file: "core/memory/fit.ts",
    find: "mean(gains) >= GATE * lossBefore &&",
    replace: "mean(gains) < GATE * lossBefore ||",
    tests: ["tests/core/memory/fit.test.ts"],
  },
  {
    name: "the time of an interrupted answer is held against the learner",
    file: "core/memory/grader.ts",
    find: 'if (grade !== "clean" || review.interrupted)',
    replace: 'if (grade !== "clean")',
    tests: ["tests/core/memory/grader.test.ts"],
  },
  {
    name: "an acknowledged answer may still lie in a buffer",
    file: "renderer/storage/database.ts",
    find: 'chromeTransactionDurability: "strict"',
    replace: 'chromeTransactionDurability: "relaxed"',
    tests: ["tests/renderer/storage/database.test.ts"],
  },
  {
    name: "an answer is stored without the round's advance",
    file: "renderer/storage/reviews.ts",
    find: "if (round !== undefined) await rounds.put({ ...round });",
    replace: "if (round === undefined) await rounds.clear();",
    tests: ["tests/renderer/storage/reviews.test.ts"],
  },
  {
    name: "a restored answer takes the place of the one that is stored",
    file: "renderer/storage/restore-plan.ts",
    find: `if (parseReview(stored).ok) return { as: "other" };`,
    replace: "",
    tests: ["tests/renderer/storage/restore.test.ts"],
  },
  {
    name: "a restore does not look into the sealed blocks and doubles their answers",
    file: "renderer/storage/restore-plan.ts",
    find: "reviewsInBlock(block)?.forEach((row) => look(row, false)),",
    replace: "reviewsInBlock(block)?.forEach(() => undefined),",
    tests: ["tests/renderer/storage/restore.test.ts"],
  },
  {
    name: "a restore is taken back though a round was begun on it",
    file: "renderer/storage/last-restore.ts",
    find: "...marks.sort(),",
    replace: "...marks.slice(marks.length),",
    tests: ["tests/renderer/storage/restore.test.ts"],
  },
  {
    name: "a restore is taken back though a whole run was made on it",
    file: "renderer/storage/last-restore.ts",
    find: "...(whole === 0 ? [] : [`${whole} runs`]),",
    replace: "",
    tests: ["tests/renderer/storage/runs.test.ts"],
  },
  {
    name: "a run that was struck out still counts",
    file: "core/runs/run.ts",
    find: "!struck.has(row.id)",
    replace: "struck.size >= 0",
    tests: ["tests/core/runs/run.test.ts"],
  },
  {
    name: "a backup that was cut off is restored as far as it goes",
    file: "core/backup/backup-reader.ts",
    find: "if (!last.ok || !reading.ended)",
    replace: "if (!last.ok)",
    tests: ["tests/core/backup/backup-reader.test.ts"],
  },
  {
    name: "a small file that unpacks without end fills the memory",
    file: "renderer/storage/packed-lines.ts",
    find: "if (size > limits.unpacked)",
    replace: "if (size > limits.unpacked * 1e9)",
    tests: ["tests/renderer/storage/read-backup.test.ts"],
  },
  {
    name: "a spreadsheet runs a cell of the log as a formula",
    file: "renderer/storage/log-csv.ts",
    find: "/^[=+\\-@\\t\\r\\n]/",
    replace: "/^[=+\\-@]$/",
    tests: ["tests/renderer/storage/log-csv.test.ts"],
  },
  {
    name: "automatic backups of a lost store push out those from before",
    file: "core/backup/retention.ts",
    find: "if (isProtected) names.add(most.name);",
    replace: "",
    tests: ["tests/core/backup/retention.test.ts"],
  },
  {
    name: "a case with three others placed may be asked with fewer",
    file: "core/memory/variant-opening.ts",
    find: "...(placed === undefined ? {} : { placedCount: placed }),",
    replace: "...(placed === undefined ? {} : { placedCount: 0 }),",
    tests: ["tests/core/memory/day-plan.test.ts"],
  },
  {
    name: "a class's ceiling goes on after its last day",
    file: "core/memory/due-day.ts",
    find: "asked <= dayOfDate(ceiling.until)",
    replace: "asked <= Infinity + dayOfDate(ceiling.until)",
    tests: ["tests/core/memory/day-plan.test.ts"],
  },
  {
    name: "a deck's stages come in the column's order",
    file: "core/memory/plan-candidates.ts",
    find: "cases.toSorted((a, b) => rank(a) - rank(b))",
    replace: "cases.toSorted((a, b) => 0 * (rank(a) - rank(b)))",
    tests: ["tests/core/memory/day-plan.test.ts"],
  },
  {
    name: "a typed way is taken when it answers its first position",
    file: "core/deck/check-way.ts",
    find: "const count = Math.max(positions, variants.length);",
    replace: "const count = Math.min(1, positions * variants.length);",
    tests: [
      "tests/core/deck/check-way.test.ts",
      "tests/core/deck/typed-ways.test.ts",
    ],
  },
  {
    name: "a deck's way that does not answer is taught all the same",
    file: "renderer/state/practise/deck-way.ts",
    find: "return own !== undefined && answers",
    replace: "return own !== undefined && (answers || true)",
    tests: ["tests/renderer/practise/own-deck-practised.test.ts"],
  },
  {
    name: "a deck file with the same case twice is read",
    file: "core/deck/deck-contradiction.ts",
    find: "if (seen.has(deckCase.case))",
    replace: "if (seen.has(deckCase.case) && place < 0)",
    tests: ["tests/core/deck/deck-file.test.ts"],
  },
  {
    name: "undoing an edit of a deck loses what was undone",
    file: "core/deck/edit-history.ts",
    find: "undone: [...history.undone, { label: step.label, value: history.value }],",
    replace: "undone: [{ label: step.label, value: history.value }],",
    tests: ["tests/core/deck/edit-history.test.ts"],
  },
  {
    name: "a learner is not told what changed in a deck that said nothing at first",
    file: "renderer/state/deck-news.svelte.ts",
    find: "return this.#see((deck) => !unread.includes(deck.id));",
    replace: "return this.#see((deck) => unread.includes(deck.id + deck.id));",
    tests: ["tests/renderer/deck-news.test.ts"],
  },
  {
    name: "a learner who forgot to line up is told that they saw the wrong thing",
    file: "core/answer/diagnose.ts",
    find: "  linedUpWrongly,\n  wrongPieceByWay,",
    replace: "  wrongPieceByWay,",
    tests: [
      "tests/core/answer/explain-beginning.test.ts",
      "tests/core/answer/simulated-mistakes.test.ts",
    ],
  },
  {
    name: "a turn is blamed although the answer is not right without its fault",
    file: "core/answer/explain-one-turn.ts",
    find: "    line.lead === given.split.lead &&\n    lineKey(line.core) === lineKey(given.split.core)",
    replace: "    line.lead === line.lead && given.split.lead >= 0",
    tests: [
      "tests/core/answer/explain-whole-way.test.ts",
      "tests/core/answer/simulated-mistakes.test.ts",
    ],
  },
  {
    name: "a wrong turn is named one place too late",
    file: "core/answer/explain-one-turn.ts",
    find: "if (isSameState(made, beginning)) return index;",
    replace: "if (isSameState(made, beginning)) return index + 1;",
    tests: ["tests/core/answer/explain-one-turn.test.ts"],
  },
  {
    name: "an answer made for the wrong side is taken for one made for its neighbour",
    file: "core/answer/explain-whole-way.ts",
    find: "asIf: homeAfter(given.position.variant.home, steps),",
    replace: "asIf: homeAfter(given.position.variant.home, -steps),",
    tests: ["tests/core/answer/explain-whole-way.test.ts"],
  },
  {
    name: "a slip of the hand is logged as a confusion of cases",
    file: "renderer/state/practise/reviewed-answer.ts",
    find: "answeredAs = explanation && confusedWith(explanation);",
    replace:
      "answeredAs =\n    explanation && (confusedWith(explanation) ?? item.case);",
    tests: ["tests/renderer/practise/stored-answer.test.ts"],
  },
];
