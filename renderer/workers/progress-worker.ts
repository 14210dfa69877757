/** The worker that reads a whole log for the progress page: one question, one answer. */
import { answerProgress } from "./progress-service";

self.addEventListener("message", (event: MessageEvent<unknown>) => {
  self.postMessage(answerProgress(event.data));
});
