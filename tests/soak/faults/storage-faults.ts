import type { PlantedFault } from "../planted-fault";

/** Faults in what is stored, backed up and restored. */
export const STORAGE_FAULTS: readonly PlantedFault[] = [
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
    tests: ["tests/renderer/storage/restore-taken-back.test.ts"],
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
    file: "renderer/storage/table-csv.ts",
    find: "/^[=+\\-@\\t\\r\\n]/",
    replace: "/^[=+\\-@]$/",
    tests: ["tests/renderer/storage/table-csv.test.ts"],
  },
  {
    name: "automatic backups of a lost store push out those from before",
    file: "core/backup/retention.ts",
    find: "if (isProtected) names.add(most.name);",
    replace: "",
    tests: ["tests/core/backup/retention.test.ts"],
  },
  {
    name: "a restore brings back results that were taken back or deleted here",
    file: "renderer/storage/restore-class.ts",
    find: "if (!known.has(id) || torn.has(id)) theirs.push(read.value);",
    replace: "theirs.push(read.value);",
    tests: ["tests/renderer/storage/restore-class.test.ts"],
  },
];
