/** What was named for which mistakes, counted. */
import type { Explanation } from "../../../core/answer/explanation";
import { type Stage, STAGES } from "../../../core/cases/stage";
import type { Finding } from "./judged-explanation";
import { MISTAKE_KINDS, type MistakeKind } from "./simulated-mistakes";

/** One mistake and what was named for it. */
export interface Counted {
  readonly stage: Stage;
  readonly made: MistakeKind;
  readonly named: Explanation["kind"];
  readonly finding: Finding;
}

/** Counts mistakes. */
export class Tally {
  readonly #all: Counted[] = [];

  add(one: Counted): void {
    this.#all.push(one);
  }

  /** How many agree with all that is given. */
  count(wanted: Partial<Counted>): number {
    return this.#all.filter((one) =>
      (Object.keys(wanted) as (keyof Counted)[]).every(
        (key) => one[key] === wanted[key],
      ),
    ).length;
  }

  /** The share named rightly or explained as briefly. Units: a fraction of 1. */
  shareExplained(wanted: Partial<Counted>): number {
    return 1 - this.count({ ...wanted, finding: "wrong" }) / this.count(wanted);
  }

  /** The share named as what it was, with all that it names. Units: a fraction of 1. */
  shareNamed(wanted: Partial<Counted>): number {
    return (
      this.count({ ...wanted, finding: "right-kind" }) / this.count(wanted)
    );
  }
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)}%`;
}

/** The confusion table for a person: what was made down the side, what was named across. */
export function confusionLines(tally: Tally): readonly string[] {
  const kinds: readonly Explanation["kind"][] = [
    ...MISTAKE_KINDS,
    "unexplained",
  ];
  const share = (wanted: Partial<Counted>) =>
    `${percent(tally.shareExplained(wanted))} explained, ${percent(tally.shareNamed(wanted))} named`;
  return [
    `diagnosis of ${tally.count({})} mistakes: ${share({})}`,
    ...MISTAKE_KINDS.map((made) => {
      const named = kinds
        .map((kind) => [kind, tally.count({ made, named: kind })] as const)
        .filter(([, count]) => count > 0)
        .map(([kind, count]) => `${kind} ${count}`);
      return `  ${made} (${share({ made })}): ${named.join(", ")}`;
    }),
    ...STAGES.map((stage) => `  ${stage}: ${share({ stage })}`),
  ];
}
