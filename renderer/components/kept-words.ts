/** How much was kept, as people read it. */

function counted(count: number, one: string): string {
  return `${count.toLocaleString("en")} ${count === 1 ? one : `${one}s`}`;
}

/** Answers and whole runs: "240 answers and 3 runs", "1 run"; "0 answers" where there are neither. */
export function keptInWords(answers: number, runs: number): string {
  if (runs === 0) return counted(answers, "answer");
  return answers === 0
    ? counted(runs, "run")
    : `${counted(answers, "answer")} and ${counted(runs, "run")}`;
}
