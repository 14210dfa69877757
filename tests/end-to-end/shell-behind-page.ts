/**
 * The desktop app's shell behind a page in a plain browser: what the page asks
 * of the bridge is read and answered by the shell's own code, in this process,
 * on real files.
 */
import type { BrowserContext } from "@playwright/test";
import { DESKTOP_BRIDGE_NAME } from "../../core/desktop-bridge";
import { err } from "../../core/result";
import { answerMessage, type Desk } from "../../electron/answer-message";
import { bridgeOver } from "../../electron/bridge";
import { parseMessage } from "../../electron/messages";

const OWN = { url: "turnwise://app/", isTopFrame: true };

/** How bytes go between the page and this process, which speak JSON. */
interface AsList {
  readonly listOfBytes: readonly number[];
}

function isList(value: unknown): value is AsList {
  return typeof value === "object" && value !== null && "listOfBytes" in value;
}

function fromPage(value: object): object {
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]: [string, unknown]) => [
      key,
      isList(inner) ? new Uint8Array(inner.listOfBytes) : inner,
    ]),
  );
}

function toPage(value: unknown): unknown {
  if (value instanceof Uint8Array) return { listOfBytes: [...value] };
  if (typeof value !== "object" || value === null || Array.isArray(value))
    return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [key, toPage(inner)]),
  );
}

/** Puts the shell behind every page of a browser. */
export async function putShellBehind(
  context: BrowserContext,
  desk: Desk,
): Promise<void> {
  // Which functions there are, and what each sends, is the bridge's to say.
  const kinds: Record<string, readonly string[]> = {};
  let sent: object = {};
  const bridge = bridgeOver({
    ask: (message) => {
      sent = message;
      return Promise.resolve(err({ code: "not-done", reason: "only asked" }));
    },
    hear: () => () => undefined,
  });
  type Call = (...words: readonly unknown[]) => unknown;
  for (const [name, call] of Object.entries(bridge)) {
    if (name === "onNews" || name === "automaticBackup") continue;
    void (call as Call)("1", "2");
    kinds[name] = fieldsOf(sent);
  }
  await context.exposeFunction("askShell", async (body: object) => {
    const read = parseMessage(OWN, fromPage(body));
    if (!read.ok) return read;
    const answer: unknown = await answerMessage(desk, read.value, (error) => {
      throw error;
    });
    return toPage(answer);
  });
  await context.addInitScript(installBridge, {
    name: DESKTOP_BRIDGE_NAME,
    kinds,
  });
}

/** A message's kind, then the names of its fields in the order of the function's words. */
function fieldsOf(message: unknown): readonly string[] {
  const { kind, ...fields } = message as Record<string, unknown>;
  const inOrder = Object.entries(fields).sort(([, a], [, b]) =>
    String(a) < String(b) ? -1 : 1,
  );
  return [String(kind), ...inOrder.map(([field]) => field)];
}

/** Runs in the page. */
function installBridge({
  name,
  kinds,
}: {
  readonly name: string;
  readonly kinds: Readonly<Record<string, readonly string[]>>;
}): void {
  const toShell = (value: unknown) =>
    value instanceof Uint8Array ? { listOfBytes: [...value] } : value;
  const fromShell = (value: unknown): unknown => {
    if (typeof value !== "object" || value === null || Array.isArray(value))
      return value;
    if ("listOfBytes" in value)
      return new Uint8Array(value.listOfBytes as number[]);
    return Object.fromEntries(
      Object.entries(value).map(([key, inner]) => [key, fromShell(inner)]),
    );
  };
  const ask = Reflect.get(window, "askShell") as (
    message: object,
  ) => Promise<unknown>;
  const bridge = Object.fromEntries(
    Object.entries(kinds).map(([method, [kind, ...fields]]) => [
      method,
      async (...words: readonly unknown[]) => {
        const message: Record<string, unknown> = { kind };
        fields.forEach((field, i) => (message[field] = toShell(words[i])));
        return fromShell(await ask(message));
      },
    ]),
  );
  Object.assign(window, { [name]: { ...bridge, onNews: () => () => 0 } });
}
