import { describe, expect, it } from "vitest";
import {
  findBrowser,
  windowCommand,
  type Machine,
} from "../../electron/app-window";

const LINUX: Machine = {
  platform: "linux",
  environment: { PATH: "/usr/local/bin:/usr/bin", DISPLAY: ":0" },
  home: "/home/a",
};

function has(...paths: string[]): (path: string) => boolean {
  return (path) => paths.includes(path);
}

describe("finding a browser", () => {
  it("looks along the path on Linux", () => {
    expect(findBrowser(LINUX, has("/usr/bin/google-chrome"))).toBe(
      "/usr/bin/google-chrome",
    );
    expect(
      findBrowser(LINUX, has("/usr/bin/chromium", "/usr/bin/google-chrome")),
    ).toBe("/usr/bin/chromium");
  });

  it("finds none where there is none", () => {
    expect(findBrowser(LINUX, has())).toBeUndefined();
  });

  it("finds none on Linux without a screen to open it on", () => {
    const there = has("/usr/bin/chromium");
    const PATH = "/usr/bin";
    const without = { ...LINUX, environment: { PATH } };
    expect(findBrowser(without, there)).toBeUndefined();
    const wayland = { ...LINUX, environment: { PATH, WAYLAND_DISPLAY: "w" } };
    expect(findBrowser(wayland, there)).toBe("/usr/bin/chromium");
  });

  it("finds what a Mac or Windows machine has installed", () => {
    const mac: Machine = { platform: "darwin", environment: {}, home: "/U/a" };
    const chrome =
      "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome";
    expect(findBrowser(mac, has(chrome))).toBe(chrome);
    const windows: Machine = {
      platform: "win32",
      environment: { "ProgramFiles(x86)": "C:\\Program Files (x86)" },
      home: "C:\\Users\\a",
    };
    const edge =
      "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe";
    expect(findBrowser(windows, has(edge))).toBe(edge);
  });

  it("takes the browser that the environment names, and no other", () => {
    const named = {
      ...LINUX,
      environment: { ...LINUX.environment, TURNWISE_BROWSER: "/opt/mine" },
    };
    expect(findBrowser(named, has("/opt/mine", "/usr/bin/chromium"))).toBe(
      "/opt/mine",
    );
    expect(findBrowser(named, has("/usr/bin/chromium"))).toBeUndefined();
  });
});

describe("the app window's command", () => {
  const address = "http://127.0.0.1:1/";

  it("opens the address as an app with a profile of its own", () => {
    expect(windowCommand("/usr/bin/chromium", address, LINUX)).toEqual({
      program: "/usr/bin/chromium",
      words: [
        "--app=http://127.0.0.1:1/",
        "--user-data-dir=/home/a/.local/share/turnwise/browser",
        "--no-first-run",
        "--no-default-browser-check",
      ],
    });
  });

  // From memory: a snap's home interface leaves out hidden folders.
  it("keeps a snap's profile where a snap may write", () => {
    const { words } = windowCommand("/snap/bin/chromium", address, LINUX);
    expect(words).toContain(
      "--user-data-dir=/home/a/snap/chromium/common/turnwise/browser",
    );
  });
});
