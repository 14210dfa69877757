/**
 * The program behind `npm run compute-ways`: computes the shortest and the
 * easiest way of every case but those of the two largest sets, and writes them
 * into `computed-ways.ts`. What it writes is committed.
 *
 * On a machine shared by a dozen programs (Node 20, a fifth to a half of a
 * core): easy turns of the last layer 48 s, all its sequences of 13 turns
 * 100 s, those of 14 turns 13 minutes, the first two layers 4 minutes.
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { format } from "prettier";
import { formatTurns } from "../notation/format";
import { createCaseSearch } from "../solver/case-search";
import type { EasyTurns } from "../solver/easiest-writing";
import { runToEnd } from "../steps";
import type { CaseId } from "./case-ids";
import { CORNER_SWAP_IDS } from "./case-ids";
import { casesOfStage } from "./case-table";
import { easiestHomeWays } from "./home-ways";
import { type LastLayerCase, lastLayerCases } from "./last-layer-cases";
import { LAST_LAYER_STAGES, type LastLayerStage } from "./last-layer-stages";
import {
  EASY_ROUNDS,
  type EasiestByLook,
  easiestOfStage,
  lookForEasyWays,
  shortestUpTo,
} from "./last-layer-ways";
import { FIRST_LAYER_STAGES, SLOT_STAGES } from "./stage";
import { betterOf, easiestOf, wayReference } from "./way-reference";

// The built file is `dist/tools/compute-ways.js`.
const FILE = join(import.meta.dirname, "../../core/cases/computed-ways.ts");

/** The stages whose ways are found on demand. */
const ON_DEMAND: readonly LastLayerStage[] = [
  "last-layer-but-edges-turned",
  "last-layer-whole",
];

const ways: (readonly [id: CaseId, shortest: EasyTurns, easiest: EasyTurns])[] =
  [];

function tell(what: string): void {
  console.log(`${Math.round(process.uptime())} s: ${what}`);
}

function ready<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`no way was found for ${what}`);
  return value;
}

function add(
  id: CaseId,
  shortest: EasyTurns | undefined,
  easiest: EasyTurns | undefined,
): void {
  const short = ready(shortest, id);
  ways.push([id, short, betterOf(easiest, short)]);
}

function computeHomes(): void {
  const search = createCaseSearch();
  for (const stage of [...FIRST_LAYER_STAGES, ...SLOT_STAGES]) {
    const references = casesOfStage(stage)
      .filter(({ id }) => !CORNER_SWAP_IDS.some((swap) => swap === id))
      .map(({ id }) => wayReference(id));
    const easiest = runToEnd(easiestHomeWays(references));
    for (const reference of references)
      add(
        reference.id,
        easiestOf(
          reference,
          // A turn of the free layer before is counted, so one more may be as short.
          runToEnd(search.answers({ ...reference, extraTurns: 1 })),
        ).shortest,
        easiest.get(reference.id),
      );
    tell(stage);
  }
}

function computeLastLayer(): void {
  const stages = LAST_LAYER_STAGES.filter((one) => !ON_DEMAND.includes(one));
  const byLook: EasiestByLook = new Map();
  for (const round of EASY_ROUNDS) {
    lookForEasyWays(round, byLook);
    tell(`easy turns of ${round.layers ?? "all layers"} up to ${round.most}`);
  }
  // Few cases need more than twelve turns, and these take the most time.
  const shortest = new Map<LastLayerCase, EasyTurns>();
  for (const most of [13, 14]) {
    for (const [one, way] of shortestUpTo(stages, most, shortest))
      shortest.set(one, way);
    tell(`all sequences of ${most} turns`);
  }
  for (const stage of stages) {
    const easiest = easiestOfStage(stage, byLook);
    for (const one of lastLayerCases(stage))
      // One needs 15 turns: no sequence of 14 answers it, and its easiest way has 15.
      add(one.id, shortest.get(one) ?? easiest.get(one), easiest.get(one));
  }
}

computeLastLayer();
computeHomes();

const lines = ways.map(([id, { turns: short }, { turns: easy }]) => {
  const texts = [formatTurns(short), formatTurns(easy)];
  return `${JSON.stringify(id)}: [${texts.map((text) => JSON.stringify(text)).join()}],`;
});
const text = `/**
 * The shortest and the easiest way of every case but those of the two largest
 * sets, as the learner makes it: right-handed, from the case's reference, the
 * first layer held up in its own stages and down in all others.
 *
 * Written by \`npm run compute-ways\`; never by hand.
 */
import type { CaseId } from "./case-ids";

/** Shortest and easiest ways by case. Shape: text that \`parseTurns\` reads. */
export const COMPUTED_WAYS: Readonly<
  Partial<Record<CaseId, readonly [shortest: string, easiest: string]>>
> = {
${lines.join("\n")}
};
`;
writeFileSync(FILE, await format(text, { parser: "typescript" }));
for (const [id, short, easy] of ways)
  console.log(
    `${id}: ${formatTurns(short.turns)} (${short.ease}) | ${formatTurns(easy.turns)} (${easy.ease})`,
  );
tell(`${ways.length} cases`);
