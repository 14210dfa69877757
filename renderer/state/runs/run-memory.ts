/**
 * What a window remembers of a run over a reload: the turns that mix the cube,
 * and that a run was under way, which then is not counted.
 */
import * as v from "valibot";
import type { Turn } from "../../../core/cube/turns";
import { formatTurns } from "../../../core/notation/format";
import { parseTurns } from "../../../core/notation/parse";
import { RUN_KINDS, RUN_RULES } from "../../../core/runs/run";
import {
  rememberedInWindow,
  rememberInWindow,
} from "../../platform/window-memory";

const CHOICE = v.object({
  kind: v.picklist(RUN_KINDS),
  rules: v.picklist(RUN_RULES),
  withParts: v.boolean(),
});

const REMEMBERED = v.variant("stage", [
  v.object({
    stage: v.literal("mixing"),
    choice: CHOICE,
    turns: v.string(),
    done: v.pipe(v.number(), v.integer(), v.minValue(0)),
  }),
  v.object({ stage: v.literal("under-way") }),
]);

/** What kind of run was chosen. */
export type RunChoice = Readonly<v.InferOutput<typeof CHOICE>>;

/** What is remembered of a run. */
export type RunMemory =
  | {
      readonly stage: "mixing";
      readonly choice: RunChoice;
      readonly turns: readonly Turn[];
      readonly done: number;
    }
  | { readonly stage: "under-way" };

function nameOf(learner: string): string {
  return `whole-run:${learner}`;
}

/** What this window remembers of a learner's run; undefined: nothing. */
export function rememberedRun(learner: string): RunMemory | undefined {
  const parsed = v.safeParse(REMEMBERED, rememberedInWindow(nameOf(learner)));
  if (!parsed.success) return undefined;
  if (parsed.output.stage === "under-way") return parsed.output;
  const { stage, choice, done } = parsed.output;
  const turns = parseTurns(parsed.output.turns);
  return turns.ok && done <= turns.value.length
    ? { stage, choice, turns: turns.value, done }
    : undefined;
}

/** Remembers how far a run is; undefined: none is. */
export function rememberRun(
  learner: string,
  memory: RunMemory | undefined,
): void {
  rememberInWindow(
    nameOf(learner),
    memory?.stage === "mixing"
      ? { ...memory, turns: formatTurns(memory.turns) }
      : memory,
  );
}
