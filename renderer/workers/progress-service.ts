/** What progress's worker does with a message, apart from being a worker. */
import {
  type MemberSummary,
  memberSummary,
} from "../../core/class/member-summary";
import { unpacked } from "../../core/progress/packed-log";
import {
  type ProgressFacts,
  progressFacts,
} from "../../core/progress/progress-facts";
import { parseProgressRequest } from "./progress-request";

/** What the worker says to one request. */
export type ProgressReply =
  | { readonly kind: "facts"; readonly facts: ProgressFacts }
  | { readonly kind: "summary"; readonly summary: MemberSummary }
  /** A bug of ours, caught at the worker's edge. */
  | { readonly kind: "failed"; readonly reason: string };

/** Answers a request for what a log says. Never throws. */
export function answerProgress(message: unknown): ProgressReply {
  const request = parseProgressRequest(message);
  if (!request.ok) {
    const { code, field } = request.error;
    return { kind: "failed", reason: `not understood: ${code} at "${field}"` };
  }
  const { log, settings } = request.value;
  try {
    switch (request.value.question) {
      case "facts": {
        const { today } = request.value;
        const facts = progressFacts(unpacked(log), today, settings);
        return { kind: "facts", facts };
      }
      case "summary": {
        const summary = memberSummary(unpacked(log), settings);
        return { kind: "summary", summary };
      }
    }
  } catch (error) {
    return { kind: "failed", reason: String(error) };
  }
}
