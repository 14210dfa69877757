/**
 * The worker that fits weights. The library is compiled code that runs to its
 * end once begun; it says on the console when a round of training is over, and
 * that is our only sign of progress.
 */
import init, { Fsrs } from "fsrs-browser";
import zipped from "fsrs-browser/fsrs_browser_bg.wasm?url";
import type { Trainer } from "../../core/memory/fit";
import { answerFitRequest } from "./fit-service";

const ROUND = /^epoch: /;

/** The library's code, which the build has zipped (`vite.config.ts`). */
async function compiledCode(): Promise<ArrayBuffer> {
  const file = await fetch(zipped);
  if (!file.ok || file.body === null) throw new Error(`status ${file.status}`);
  const code = file.body.pipeThrough(new DecompressionStream("gzip"));
  return new Response(code).arrayBuffer();
}

async function loadTrainer(onround: () => void): Promise<Trainer> {
  await init({ module_or_path: await compiledCode() });
  return ({ ratings, days, lengths }) => {
    const { log } = console;
    console.log = (text: unknown) => {
      if (ROUND.test(String(text))) onround();
    };
    try {
      return new Fsrs().computeParameters(ratings, days, lengths, null, true);
    } finally {
      console.log = log;
    }
  };
}

self.addEventListener("message", (event: MessageEvent<unknown>) => {
  void answerFitRequest(event.data, loadTrainer, (reply) =>
    self.postMessage(reply),
  );
});
