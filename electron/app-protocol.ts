/**
 * The page's scheme inside Electron: the same files and the same headers as
 * the local server's, without a port.
 */
import { protocol } from "electron";
import { APP_ORIGIN, isOwnAddress } from "./messages";
import { answerRequest, textAnswer, type ServedFiles } from "./served-files";

/** The scheme's name, without the colon. */
const SCHEME = APP_ORIGIN.slice(0, APP_ORIGIN.indexOf(":"));

/** Declares the scheme; Electron wants it before it is ready. */
export function registerAppScheme(): void {
  protocol.registerSchemesAsPrivileged([
    {
      scheme: SCHEME,
      privileges: { standard: true, secure: true, supportFetchAPI: true },
    },
  ]);
}

/** Begins to answer requests to the scheme. */
export function serveAppScheme(files: ServedFiles): void {
  protocol.handle(SCHEME, ({ method, url }) => {
    const answer = isOwnAddress(url)
      ? answerRequest(files, method, url.slice(APP_ORIGIN.length))
      : textAnswer(421, `Turnwise is at ${APP_ORIGIN}/ only.`);
    return new Response(answer.body, {
      status: answer.status,
      headers: answer.headers,
    });
  });
}
