/** The worker that reads whole logs, for the progress page and for a class: one question, one answer. */
import { answerProgress } from "./progress-service";

self.addEventListener("message", (event: MessageEvent<unknown>) => {
  self.postMessage(answerProgress(event.data));
});
