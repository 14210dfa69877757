/**
 * What may stand behind `npm start --`.
 */
import { err, ok, type Result } from "../core/result";

/** What was asked for on the command line. */
export interface LaunchOptions {
  /** Open a window; otherwise only serve and print the address. */
  readonly open: boolean;
  /** Serve on this port instead of using Electron or the usual port. */
  readonly port: number | undefined;
  /** Build what is stale and stop. */
  readonly buildOnly: boolean;
}

/** What is wrong with the command line, with the word it is about. */
export type LaunchOptionError =
  | { readonly code: "unknown-option"; readonly text: string }
  | { readonly code: "port-missing"; readonly text: string }
  | { readonly code: "port-invalid"; readonly text: string };

/**
 * Reads the words behind the program's name.
 *
 * Units: a port is an integer from 0 to 65535; 0 takes any free one.
 */
export function parseLaunchOptions(
  words: readonly string[],
): Result<LaunchOptions, LaunchOptionError> {
  let open = true;
  let buildOnly = false;
  let port: number | undefined;
  for (let i = 0; i < words.length; i++) {
    const word = words[i] ?? "";
    if (word === "--no-open") open = false;
    else if (word === "--build-only") buildOnly = true;
    else if (word === "--port" || word.startsWith("--port=")) {
      const text = word === "--port" ? words[++i] : word.slice(7);
      if (text === undefined) return err({ code: "port-missing", text: word });
      if (!/^\d{1,5}$/.test(text) || Number(text) > 65535) {
        return err({ code: "port-invalid", text });
      }
      port = Number(text);
    } else return err({ code: "unknown-option", text: word });
  }
  return ok({ open, port, buildOnly });
}
