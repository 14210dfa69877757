import { EventEmitter } from "node:events";
import { describe, expect, it } from "vitest";
import {
  isOwnPage,
  refuseEveryPermission,
  SHUT_IN_PREFERENCES,
  shutIn,
} from "../../electron/shut-in";

/** What Electron tells of a wish, and whether it was refused. */
interface Wish {
  readonly url: string;
  readonly isMainFrame: boolean;
  refused: boolean;
  preventDefault(): void;
}

/** A stand-in for a page's contents: its events are Node's own emitter. */
class Contents extends EventEmitter {
  openHandler: ((details: never) => unknown) | undefined;

  setWindowOpenHandler(handler: (details: never) => unknown): void {
    this.openHandler = handler;
  }

  /** Is the wish refused? */
  refuses(event: string, url: string, isMainFrame = true): boolean {
    const wish: Wish = {
      url,
      isMainFrame,
      refused: false,
      preventDefault() {
        this.refused = true;
      },
    };
    this.emit(event, wish);
    return wish.refused;
  }
}

function shutInContents(): Contents {
  const contents = new Contents();
  shutIn(contents);
  return contents;
}

const ELSEWHERE = [
  "https://evil.example/",
  "http://127.0.0.1:28417/",
  "file:///etc/passwd",
  "javascript:alert(1)",
  "data:text/html,<p>",
  "about:blank",
  "turnwise://app.evil.example/",
  "turnwise://app@evil.example/",
  "turnwise://app/licences.txt",
  "turnwise://app",
  "",
];

const OWN = ["turnwise://app/", "turnwise://app/#/cases", "turnwise://app/?a"];

describe("a page that is shut in", () => {
  it.each(["will-navigate", "will-frame-navigate"])(
    "may be loaded again, and may not leave (%s)",
    (event) => {
      const contents = shutInContents();
      for (const url of OWN) expect(contents.refuses(event, url)).toBe(false);
      for (const url of ELSEWHERE) {
        expect(contents.refuses(event, url), url).toBe(true);
      }
    },
  );

  it("may not load even itself into a frame", () => {
    const contents = shutInContents();
    for (const url of [...OWN, ...ELSEWHERE]) {
      expect(contents.refuses("will-frame-navigate", url, false)).toBe(true);
    }
  });

  it.each(["will-redirect", "will-attach-webview"])(
    "is refused every %s",
    (event) => {
      for (const url of [...OWN, ...ELSEWHERE]) {
        expect(shutInContents().refuses(event, url)).toBe(true);
      }
    },
  );

  it("opens no window, not even of its own page", () => {
    const { openHandler } = shutInContents();
    for (const url of [...OWN, ...ELSEWHERE]) {
      expect(openHandler?.({ url } as never)).toEqual({ action: "deny" });
    }
  });

  it("is refused nothing before: the stand-in does not refuse by itself", () => {
    expect(new Contents().refuses("will-navigate", "https://a/")).toBe(false);
  });
});

describe("the page's own address", () => {
  it("is the root of our scheme, whatever place in it is asked for", () => {
    expect(OWN.filter((url) => !isOwnPage(url))).toEqual([]);
    expect(ELSEWHERE.filter(isOwnPage)).toEqual([]);
  });
});

describe("permissions", () => {
  it("are refused whoever asks for whatever", () => {
    const answers: unknown[] = [];
    refuseEveryPermission({
      setPermissionRequestHandler: (handler) =>
        handler?.(
          undefined as never,
          "media",
          (granted) => answers.push(granted),
          undefined as never,
        ),
      setPermissionCheckHandler: (handler) =>
        answers.push(
          handler?.(null, "media", "turnwise://app", undefined as never),
        ),
      setDevicePermissionHandler: (handler) =>
        answers.push(handler?.(undefined as never)),
    });
    expect(answers).toEqual([false, false, false]);
  });
});

describe("the settings of every window", () => {
  // Source: Electron's security checklist, items 2 to 4, 6, 8, 9, 11 (from memory).
  it("are the checklist's", () => {
    expect(SHUT_IN_PREFERENCES).toMatchObject({
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
    });
  });
});
