/**
 * A real browser that can be killed, and what was seen of it from outside.
 *
 * The browser is a process group of its own, so that one SIGKILL ends it with
 * all its children at once, as a crash or a power cut would. What the page
 * writes and acknowledges is told to this process while it happens: what it
 * knows afterwards, it knew before the kill.
 */
import { type Browser, chromium, type Page } from "@playwright/test";
import { type ChildProcess, spawn } from "node:child_process";
import { chromiumOptions } from "../../runner/chromium";

/** A review as the page handed it to the store, as JSON. */
export interface WrittenReview {
  readonly id: string;
  readonly json: string;
}

/** What the outside saw of one browser until it was killed. */
export interface Sightings {
  /** Reviews handed to the store, in order. */
  readonly written: WrittenReview[];
  /** Ids that the page showed as acknowledged, in order. */
  readonly acknowledged: string[];
  /** Rounds handed to the store, in order, as JSON. */
  readonly rounds: string[];
  /** The durability of every writing transaction over reviews. */
  readonly durabilities: string[];
}

/** What the page tells of itself. */
type Report = readonly [kind: keyof Sightings, id: string, json: string];

/**
 * Runs in the page before its own scripts: reports what goes into the store
 * and what is shown as acknowledged, and changes neither.
 */
function watchPage(): void {
  const report = (kind: string, id: string, json: string): void => {
    const tell: unknown = Reflect.get(globalThis, "reportSighting");
    if (typeof tell === "function")
      Reflect.apply(tell, undefined, [kind, id, json]);
  };
  const watchWrites = (method: "add" | "put"): void => {
    const original = Reflect.get(IDBObjectStore.prototype, method);
    Reflect.set(
      IDBObjectStore.prototype,
      method,
      function (this: IDBObjectStore, row: unknown, key?: IDBValidKey) {
        const json = JSON.stringify(row);
        const id = String(Reflect.get(Object(row), "id"));
        if (this.name === "reviews") report("written", id, json);
        if (this.name === "rounds") report("rounds", id, json);
        const request = Reflect.apply(
          original,
          this,
          key === undefined ? [row] : [row, key],
        ) as IDBRequest;
        // The page dawdles, so that a kill that its word calls for can come
        // before it goes on, on a busy machine too.
        const until = performance.now() + (this.name === "reviews" ? 40 : 0);
        while (performance.now() < until);
        return request;
      },
    );
  };
  watchWrites("add");
  watchWrites("put");
  const begin = Reflect.get(IDBDatabase.prototype, "transaction");
  Reflect.set(
    IDBDatabase.prototype,
    "transaction",
    function (this: IDBDatabase, ...words: unknown[]) {
      const transaction = Reflect.apply(begin, this, words) as IDBTransaction;
      if (
        transaction.mode === "readwrite" &&
        transaction.objectStoreNames.contains("reviews")
      )
        report("durabilities", transaction.durability, "");
      return transaction;
    },
  );
  const shown = new Set<string>();
  new MutationObserver(() => {
    for (const element of document.querySelectorAll("[data-review-id]")) {
      const id = element.getAttribute("data-review-id");
      if (id === null || shown.has(id)) continue;
      shown.add(id);
      report("acknowledged", id, "");
    }
  }).observe(document, {
    subtree: true,
    childList: true,
    attributeFilter: ["data-review-id"],
  });
}

async function devToolsAddress(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = "";
    child.stderr?.setEncoding("utf8").on("data", (chunk: string) => {
      text += chunk;
      const address = /DevTools listening on (ws:\S+)/.exec(text)?.[1];
      if (address !== undefined) resolve(address);
    });
    child.once("error", reject);
    child.once("exit", () =>
      reject(new Error(`the browser ended early: ${text}`)),
    );
  });
}

/** A browser on a profile that outlives it. */
export interface WatchedBrowser {
  readonly page: Page;
  readonly sightings: Sightings;
  /** Calls back at once whenever a review is handed to the store. */
  onWritten: () => void;
  /** Ends every process of the browser at once; resolves when they are gone, also a second time. */
  kill(): Promise<void>;
}

/** Starts a browser on a profile folder and opens the address. */
export async function watchedBrowser(
  profile: string,
  address: string,
): Promise<WatchedBrowser> {
  const { executablePath, args } = chromiumOptions();
  const child = spawn(
    executablePath,
    [
      ...args,
      "--headless=new",
      "--remote-debugging-port=0",
      `--user-data-dir=${profile}`,
      "--window-size=1280,800",
      "about:blank",
    ],
    { detached: true, stdio: ["ignore", "ignore", "pipe"] },
  );
  const gone = new Promise<void>((resolve) =>
    child.once("exit", () => resolve()),
  );
  const browser: Browser = await chromium.connectOverCDP(
    await devToolsAddress(child),
  );
  const [context] = browser.contexts();
  if (context === undefined) throw new Error("the browser has no context");
  const page = context.pages()[0] ?? (await context.newPage());

  const sightings: Sightings = {
    written: [],
    acknowledged: [],
    rounds: [],
    durabilities: [],
  };
  const watched: WatchedBrowser = {
    page,
    sightings,
    onWritten: () => undefined,
    kill: async () => {
      if (child.pid === undefined) throw new Error("the browser never ran");
      if (child.signalCode === null) process.kill(-child.pid, "SIGKILL");
      await gone;
    },
  };
  await page.exposeFunction("reportSighting", (...report: Report) => {
    const [kind, id, json] = report;
    if (kind === "written") {
      sightings.written.push({ id, json });
      watched.onWritten();
    } else sightings[kind].push(kind === "rounds" ? json : id);
  });
  await page.addInitScript(watchPage);
  await page.goto(address);
  return watched;
}
