/** What progress's worker does with a message, apart from being a worker. */
import { unpacked } from "../../core/progress/packed-log";
import {
  type ProgressFacts,
  progressFacts,
} from "../../core/progress/progress-facts";
import { parseProgressRequest } from "./progress-request";

/** What the worker says to one request. */
export type ProgressReply =
  | { readonly kind: "facts"; readonly facts: ProgressFacts }
  /** A bug of ours, caught at the worker's edge. */
  | { readonly kind: "failed"; readonly reason: string };

/** Answers a request for progress facts. Never throws. */
export function answerProgress(message: unknown): ProgressReply {
  const request = parseProgressRequest(message);
  if (!request.ok) {
    const { code, field } = request.error;
    return { kind: "failed", reason: `not understood: ${code} at "${field}"` };
  }
  const { log, today, settings } = request.value;
  try {
    const facts = progressFacts(unpacked(log), today, settings);
    return { kind: "facts", facts };
  } catch (error) {
    return { kind: "failed", reason: String(error) };
  }
}
