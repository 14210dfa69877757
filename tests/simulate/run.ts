/**
 * The program behind `npm run simulate`: made-up learners whose memory is
 * known, and what our forecasts and our schedule are worth to them. It prints
 * tables; what they came to is in the closing note of the issue.
 *
 * `npm run simulate -- fit` or `-- holding` runs one of the two.
 */
import { fitAfter, FULL, holding, minutesToHold, seedsOf } from "./experiments";
import type { Figure } from "./forecast-score";
import { LEARNERS, type LearnerKind } from "./learners";
import { loadTrainer } from "./node-trainer";

const AMOUNTS = [400, 600, 800, 1200];
const LEVELS = [0.8, 0.85, 0.88, 0.9];

/** What is to be known on average. */
const HELD = 0.9;

const KINDS = Object.keys(LEARNERS) as readonly LearnerKind[];

function shown({ value, low, high }: Figure, digits: number): string {
  const text = (number: number) => number.toFixed(digits);
  return `${text(value)} [${text(low)}, ${text(high)}]`;
}

const percent = ({ value, low, high }: Figure) =>
  `${shown({ value: 100 * value, low: 100 * low, high: 100 * high }, 1)}%`;

const train = await loadTrainer();
const [wanted = ""] = process.argv.slice(2);
console.log(`seeds ${seedsOf(FULL).join(" ")}`);
for (const kind of KINDS) {
  if ("fit".startsWith(wanted))
    for (const one of fitAfter(kind, FULL, train, AMOUNTS)) {
      console.log(
        `${kind} | fit after ${one.after} | ${one.learners} learners, ${one.installed} installed, ${one.gated.forecasts} forecasts`,
      );
      for (const [name, score] of [
        ["defaults", one.before],
        ["gated", one.gated],
      ] as const)
        console.log(
          `  ${name}: loss/oracle ${shown(score.loss, 3)}  rmse ${shown(score.rmse, 3)}  calibration ${shown(score.calibration, 3)}  bias ${shown(score.bias, 3)}`,
        );
      console.log(
        `  gain ${percent(one.gain)}, ungated ${percent(one.gainUngated)}, worst learner ${(100 * one.worst).toFixed(1)}%`,
      );
    }
  if ("holding".startsWith(wanted)) {
    const results = holding(kind, FULL, train, LEVELS);
    const minutes = minutesToHold(results, HELD);
    console.log(
      `${kind} | to hold ${HELD}: ${minutes?.toFixed(1) ?? "none of these levels holds it"} min a week`,
    );
    for (const one of results)
      console.log(
        `${kind} | ${one.chooser}: ${shown(one.minutesAWeek, 1)} min a week, known ${shown(one.known, 3)}`,
      );
  }
}
