/**
 * What the way finder's worker does with a message, apart from being a worker:
 * tests run it as it is.
 */
import { caseEntry } from "../../core/cases/case-table";
import { invariant } from "../../core/invariant";
import {
  type CaseSearch,
  createCaseSearch,
} from "../../core/solver/case-search";
import {
  createLastLayerSequences,
  type LastLayerSequences,
} from "../../core/solver/last-layer-set-ups";
import { findWayAtOnce } from "../../core/solver/way-at-once";
import { findWays } from "../../core/solver/ways-on-demand";
import { driveSteps, type Slicing } from "./drive-steps";
import {
  parseWayRequest,
  type WayReply,
  type WayRequest,
} from "./way-finder-messages";

/** Takes messages; resolves when a message is dealt with. */
export interface WayFinderService {
  receive(message: unknown): Promise<void>;
}

/** A service that answers by `post`. */
export function createWayFinderService(
  post: (reply: WayReply) => void,
  slicing: Slicing,
  search: CaseSearch = createCaseSearch(),
  sequences: LastLayerSequences = createLastLayerSequences(),
): WayFinderService {
  const underWay = new Map<number, AbortController>();

  async function find(
    request: Extract<WayRequest, { readonly kind: "find-ways" }>,
  ): Promise<void> {
    const { id, mostTurns } = request;
    const controller = new AbortController();
    underWay.set(id, controller);
    try {
      const entry = caseEntry(request.case);
      invariant(
        entry.group === "last-layer",
        "ways are looked for where none is written down",
      );
      const way = await driveSteps(
        findWayAtOnce(sequences, entry),
        slicing,
        controller.signal,
        // It is there before a bar would have got anywhere.
        () => undefined,
      );
      if (way === undefined) return;
      post({ kind: "at-once", id, way });
      const found = await driveSteps(
        findWays(search, entry, mostTurns),
        slicing,
        controller.signal,
        (progress) => post({ kind: "progress", id, progress }),
      );
      if (found !== undefined) post({ kind: "found", id, ...found });
    } catch (error) {
      // The worker's edge: a bug of ours is told to the window, once.
      post({ kind: "failed", id, reason: String(error) });
    } finally {
      underWay.delete(id);
    }
  }

  return {
    async receive(message) {
      const request = parseWayRequest(message);
      if (!request.ok) {
        const { code, field } = request.error;
        const reason = `not understood: ${code} at "${field}"`;
        post({ kind: "failed", reason });
        return;
      }
      if (request.value.kind === "cancel")
        underWay.get(request.value.id)?.abort();
      else await find(request.value);
    },
  };
}
