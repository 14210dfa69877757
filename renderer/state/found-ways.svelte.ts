/** Ways that were looked for on demand, kept for as long as the window is open. */
import { SvelteMap } from "svelte/reactivity";
import type { CaseId } from "../../core/cases/case-ids";
import type { Turn } from "../../core/cube/turns";
import type { WaysOnDemand } from "../../core/solver/ways-on-demand";
import {
  startWayFinder,
  type WayFinderClient,
  type WayFinderError,
} from "../workers/way-finder-client";

/** A search that is going on. */
export interface WaySearch {
  readonly case: CaseId;
  readonly mostTurns: number;
}

/** Looks for ways, one case at a time, and keeps what it found. */
export class FoundWays {
  readonly #start: () => WayFinderClient;
  #client: WayFinderClient | undefined;
  #controller: AbortController | undefined;
  readonly #found = new SvelteMap<CaseId, WaysOnDemand>();
  readonly #atOnce = new SvelteMap<CaseId, readonly Turn[]>();
  /** The search that is going on. */
  search: WaySearch | undefined = $state.raw();
  /** How far it has come. Units: 0–1. */
  progress = $state(0);
  /** Why the last search came to nothing; not said where it was cancelled. */
  trouble: WayFinderError | undefined = $state.raw();

  constructor(start: () => WayFinderClient = startWayFinder) {
    this.#start = start;
  }

  /** What was found of a case; undefined where nobody has looked yet. */
  of(id: CaseId): WaysOnDemand | undefined {
    return this.#found.get(id);
  }

  /** The way that was there at once, kept where the search is given up; undefined where nobody has looked yet. */
  atOnce(id: CaseId): readonly Turn[] | undefined {
    return this.#atOnce.get(id);
  }

  /** Finds a way at once, then looks for ways of at most so many turns; a search that is still going on is given up. */
  async look(id: CaseId, mostTurns: number): Promise<void> {
    this.cancel();
    const controller = new AbortController();
    const client = (this.#client ??= this.#start());
    this.#controller = controller;
    this.search = { case: id, mostTurns };
    this.progress = 0;
    this.trouble = undefined;
    const found = await client.find(id, mostTurns, {
      signal: controller.signal,
      onprogress: (progress) => (this.progress = progress),
      onatonce: (way) => this.#atOnce.set(id, way),
    });
    if (this.#controller !== controller) return;
    this.search = undefined;
    this.#controller = undefined;
    if (found.ok) this.#found.set(id, found.value);
    else if (found.error.code !== "cancelled") {
      this.trouble = found.error;
      this.#client = undefined;
    }
  }

  /** Gives the search up. */
  cancel(): void {
    this.#controller?.abort();
    this.#controller = undefined;
    this.search = undefined;
  }
}

/** The window's one keeper of found ways. */
export const foundWays = new FoundWays();
