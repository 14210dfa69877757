/** What the worker that fits weights does with a message, apart from being a worker: tests run it as it is. */
import { fitWeights, type Trainer } from "../../core/memory/fit";
import { daysOfRequest, type FitReply, parseFitRequest } from "./fit-messages";

/** Loads the library; `onround` is called after each round of training. */
export type LoadTrainer = (onround: () => void) => Promise<Trainer>;

/** How many rounds the library trains. A wrong number only shifts the progress that is shown. */
const ROUNDS = 5;

/** Answers a request for a fit by `post`. */
export async function answerFitRequest(
  message: unknown,
  load: LoadTrainer,
  post: (reply: FitReply) => void,
): Promise<void> {
  const request = parseFitRequest(message);
  if (!request.ok) {
    const { code, field } = request.error;
    post({ kind: "failed", reason: `not understood: ${code} at "${field}"` });
    return;
  }
  try {
    let rounds = 0;
    const train = await load(() => {
      rounds += 1;
      post({ kind: "progress", progress: Math.min(1, rounds / ROUNDS) });
    });
    const days = daysOfRequest(request.value);
    const outcome = fitWeights(days, request.value.inUse, train);
    post({ kind: "done", outcome });
  } catch (error) {
    // The worker's edge: what the library throws is told to the window, once.
    post({ kind: "failed", reason: String(error) });
  }
}
