/**
 * Whole runs at this window: what is chosen, the cube that is mixed, the run
 * under way, and the runs that were made.
 *
 * The desk is the learner's and outlives a look at another place; over a
 * reload only the mixing comes back (`run-memory.ts`). It is long, and one class
 * all the same: every step reads and sets the one stage, and what is kept of a
 * run is gathered from all of them.
 */
import { holdOfVariant } from "../../../core/cases/variant";
import { type Cubies, SOLVED } from "../../../core/cube/cubies";
import type { HeldCube } from "../../../core/cube/held-cube";
import type { Turn } from "../../../core/cube/turns";
import type { Milliseconds } from "../../../core/memory/review";
import { formatTurns } from "../../../core/notation/format";
import { inverseTurns } from "../../../core/notation/inverse";
import { ok, type Result } from "../../../core/result";
import { mixedCube } from "../../../core/runs/mixed-cube";
import {
  type Run,
  RUN_PARTS,
  type RunEnding,
  type RunKind,
  type RunRow,
  type RunRules,
  standingRuns,
} from "../../../core/runs/run";
import { type RunHistory, runHistory } from "../../../core/runs/run-history";
import {
  BOUNCE,
  endRun,
  measuredRun,
  startRun,
  takeTapBack,
  type TappedRun,
  tapRun,
} from "../../../core/runs/taps";
import { CHANCE } from "../../platform/chance";
import { now, utcOffset } from "../../platform/clock";
import { freshId } from "../../platform/random";
import { keepRunRow, readRunRows } from "../../storage/runs";
import type { StorageError } from "../../storage/storage-error";
import type { SolverError } from "../../workers/solver-client";
import { lasting } from "../lasting.svelte";
import type { LearnerState } from "../learner.svelte";
import {
  afterTap,
  RESTED,
  type TurningTime,
  wantsPause,
} from "../practise/pause-advice";
import { findSolution } from "../practise/set-up-service";
import type { SolutionFinder } from "../practise/show-my-cube.svelte";
import {
  beginWalk,
  type TurnWalk,
  walkBack,
  walkOn,
} from "../practise/turn-walk";
import { rememberedRun, rememberRun, type RunChoice } from "./run-memory";

/** Where somebody stands. Units: instants in milliseconds of the page's running time. */
export type RunStage =
  | { readonly kind: "choose" }
  | { readonly kind: "searching" }
  | { readonly kind: "no-mix"; readonly error: SolverError }
  /** The last turn made, the cube is mixed. */
  | { readonly kind: "mixing"; readonly walk: TurnWalk }
  | { readonly kind: "ready" }
  /** The cube is looked at, by competition rules. */
  | { readonly kind: "looking"; readonly since: number }
  /** The clock runs, or has just stopped and nobody has said yet what the cube shows. */
  | {
      readonly kind: "running";
      readonly run: TappedRun;
      readonly inspection: number | undefined;
    }
  | { readonly kind: "kept"; readonly run: Run };

/**
 * So soon after the last tap nothing is reported: the finger that stopped the
 * clock is still on its way. Units: milliseconds.
 */
const REPORT_AFTER = 2 * BOUNCE;

/** The runs of one learner at this window. */
export class RunDesk {
  readonly learner: LearnerState;
  readonly #findSolution: SolutionFinder;
  kind: RunKind = $state("first-layer");
  rules: RunRules = $state("plain");
  /** Whether each piece or stage is tapped. */
  withParts: boolean = $state(false);
  #rows: readonly RunRow[] = $state.raw([]);
  #damaged: number = $state(0);
  #runs: readonly Run[] = $derived(standingRuns(this.#rows));
  #history: RunHistory = $derived(
    runHistory(this.#runs, this.kind, this.rules),
  );
  #stage: RunStage = $state.raw({ kind: "choose" });
  #mix: readonly Turn[] | undefined;
  #wasInterrupted: boolean = $state(false);
  #wasHidden: boolean = $state(false);
  #turningTime: TurningTime = $state.raw(RESTED);
  #hasChosen = false;
  /** The same however often keeping it is tried. */
  #id = freshId();

  constructor(learner: LearnerState, findTurns: SolutionFinder = findSolution) {
    this.learner = learner;
    this.#findSolution = findTurns;
    const memory = rememberedRun(learner.learner.id);
    if (memory?.stage === "mixing") {
      this.#mix = memory.turns;
      this.#choose(memory.choice);
      const walk = beginWalk(this.#solved(), memory.turns);
      this.#stage = { kind: "mixing", walk: { ...walk, done: memory.done } };
    } else if (memory !== undefined) {
      this.#wasInterrupted = true;
      rememberRun(learner.learner.id, undefined);
    }
  }

  get stage(): RunStage {
    return this.#stage;
  }

  /** The runs of the chosen kind, with the averages of those by the chosen rules. */
  get history(): RunHistory {
    return this.#history;
  }

  /** How many stored runs cannot be read; they are kept as they are. */
  get damaged(): number {
    return this.#damaged;
  }

  /** Whether the window closed or loaded again in the middle of a run, which was not counted. */
  get wasInterrupted(): boolean {
    return this.#wasInterrupted;
  }

  /** Whether the window was out of sight during the run. */
  get wasHidden(): boolean {
    return this.#wasHidden;
  }

  /** Whether hands have turned for so long that a pause is due. */
  get wantsPause(): boolean {
    return wantsPause(this.#turningTime);
  }

  /** How many taps a run has after the one that starts it. */
  get parts(): number {
    return this.withParts ? RUN_PARTS[this.kind].length : 1;
  }

  /** Reads the learner's runs; the first time it goes on with what the last one was. */
  async read(): Promise<Result<void, StorageError>> {
    const { database, learner } = this.learner;
    const read = await readRunRows(database, learner.id);
    if (!read.ok) return read;
    this.#rows = read.value.rows;
    this.#damaged = read.value.damaged.length;
    const last = this.#runs.at(-1);
    if (!this.#hasChosen && last !== undefined)
      this.#choose({ ...last, withParts: last.splits.length > 0 });
    this.#hasChosen = true;
    return ok(undefined);
  }

  /** The cube is solved: it is told how to mix it. */
  async tellMix(): Promise<void> {
    this.#wasInterrupted = false;
    this.#set({ kind: "searching" });
    const state = mixedCube(CHANCE);
    const start = this.#solved();
    const found = await this.#findSolution({ cubies: state, hold: start.hold });
    // It may have been left meanwhile.
    if (this.#stage.kind !== "searching") return;
    if (!found.ok) {
      this.#set({ kind: "no-mix", error: found.error });
      return;
    }
    const turns = inverseTurns(found.value);
    this.#mix = turns;
    this.#set({ kind: "mixing", walk: beginWalk(start, turns) });
  }

  /** A turn of the mix is made; all of them at once where `all`. */
  mixOn(at: number, all = false): void {
    const stage = this.#stage;
    if (stage.kind !== "mixing") return;
    this.#tapped(at);
    const { walk } = stage;
    const done = all ? { ...walk, done: walk.turns.length } : walkOn(walk);
    this.#set({ kind: "mixing", walk: done });
  }

  /** The last turn of the mix was not made. */
  mixBack(): void {
    const stage = this.#stage;
    if (stage.kind === "mixing")
      this.#set({ kind: "mixing", walk: walkBack(stage.walk) });
  }

  /** The cube is mixed. Shape: `asTold` where it looks as it was told to. */
  mixed(asTold: boolean): void {
    if (!asTold) this.#mix = undefined;
    this.#wasInterrupted = false;
    this.#set({ kind: "ready" });
  }

  /** The cube is looked at, by competition rules. */
  look(at: number): void {
    if (this.#stage.kind !== "ready" || this.rules !== "competition") return;
    this.#tapped(at);
    this.#set({ kind: "looking", since: at });
  }

  /** A tap: the run starts, a part is done, or the run is. */
  tap(at: number): void {
    const stage = this.#stage;
    this.#tapped(at);
    if (stage.kind === "running")
      this.#takeRun(stage, tapRun(stage.run, at, this.parts));
    else if (stage.kind === "looking" && at - stage.since >= BOUNCE)
      this.#start(at, at - stage.since);
    else if (stage.kind === "ready" && this.rules === "plain")
      this.#start(at, undefined);
  }

  /** All is done at once, whatever parts are left. */
  allDone(at: number): void {
    const stage = this.#stage;
    if (stage.kind === "running") this.#takeRun(stage, endRun(stage.run, at));
  }

  /** The last tap slipped: the clock has run on. */
  takeTapBack(): void {
    const stage = this.#stage;
    if (stage.kind === "running") this.#takeRun(stage, takeTapBack(stage.run));
  }

  /** The window went out of sight. */
  hidden(): void {
    if (this.#stage.kind === "running") this.#wasHidden = true;
  }

  /** What was begun is left, and nothing is counted. */
  leave(): void {
    this.#mix = undefined;
    this.#wasInterrupted = false;
    this.#set({ kind: "choose" });
  }

  /** The learner says what the cube shows, and the run is kept. */
  async keep(
    ending: RunEnding,
    at: number,
  ): Promise<Result<void, StorageError>> {
    const stage = this.#stage;
    if (stage.kind !== "running") return ok(undefined);
    const measured = measuredRun(stage.run);
    const { endedAt } = stage.run;
    if (measured === undefined || endedAt === undefined) return ok(undefined);
    if (at - endedAt < REPORT_AFTER) return ok(undefined);
    this.learner.refreshToday();
    const instant = now();
    const run: Run = {
      id: this.#id,
      learner: this.learner.learner.id,
      kind: this.kind,
      rules: this.rules,
      at: instant,
      utcOffset: utcOffset(instant),
      localDay: this.learner.today,
      hold: this.learner.settings.hold,
      ...measured,
      ending,
      ...(this.#mix === undefined ? {} : { mix: formatTurns(this.#mix) }),
      ...(stage.inspection === undefined
        ? {}
        : { inspection: stage.inspection as Milliseconds }),
      ...(this.#wasHidden ? { wasHidden: true } : {}),
    };
    const kept = await keepRunRow(this.learner.database, run);
    if (!kept.ok) return kept;
    this.#rows = [...this.#rows, run];
    this.#mix = undefined;
    this.#set({ kind: "kept", run });
    return kept;
  }

  /** A run no longer counts. It stays as it was measured. */
  async strike(id: string): Promise<Result<void, StorageError>> {
    const { database, learner } = this.learner;
    const row = { id: freshId(), learner: learner.id, at: now(), strikes: id };
    const kept = await keepRunRow(database, row);
    if (!kept.ok) return kept;
    this.#rows = [...this.#rows, row];
    if (this.#stage.kind === "kept" && this.#stage.run.id === id) this.leave();
    return kept;
  }

  /** The hands have rested. */
  rested(): void {
    this.#turningTime = RESTED;
  }

  #choose({ kind, rules, withParts }: RunChoice): void {
    this.kind = kind;
    this.rules = rules;
    this.withParts = withParts;
    this.#hasChosen = true;
  }

  #start(at: number, inspection: number | undefined): void {
    this.#id = freshId();
    this.#wasHidden = false;
    this.#set({ kind: "running", run: startRun(at), inspection });
  }

  #takeRun(
    stage: Extract<RunStage, { kind: "running" }>,
    run: TappedRun,
  ): void {
    if (run !== stage.run) this.#set({ ...stage, run });
  }

  #tapped(at: number): void {
    this.#turningTime = afterTap(this.#turningTime, at);
  }

  /** A solved cube, as its first layer is held. */
  #solved(): HeldCube<Cubies> {
    const { hold } = this.learner.settings;
    return {
      cubies: SOLVED,
      hold: holdOfVariant({ home: 0, seenFrom: 0 }, hold),
    };
  }

  #set(stage: RunStage): void {
    this.#stage = stage;
    const { id } = this.learner.learner;
    if (stage.kind === "mixing") {
      const { turns, done } = stage.walk;
      const { kind, rules, withParts } = this;
      const choice = { kind, rules, withParts };
      rememberRun(id, { stage: "mixing", choice, turns, done });
    } else if (stage.kind === "looking" || stage.kind === "running")
      rememberRun(id, { stage: "under-way" });
    else rememberRun(id, undefined);
  }
}

const DESKS = new WeakMap<LearnerState, RunDesk>();

/** The desk of a learner: the same as before while the window lives. */
export function runDeskOf(learner: LearnerState): RunDesk {
  const kept = DESKS.get(learner);
  if (kept !== undefined) return kept;
  const fresh = lasting(() => new RunDesk(learner));
  DESKS.set(learner, fresh);
  return fresh;
}
