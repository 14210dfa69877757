import { describe, expect, it } from "vitest";
import { dataFolder } from "../../electron/data-folder";

describe("the data folder", () => {
  // Source: the XDG Base Directory Specification, $XDG_DATA_HOME.
  it("follows the XDG rule on Linux", () => {
    expect(dataFolder("linux", { XDG_DATA_HOME: "/data" }, "/home/a")).toBe(
      "/data/turnwise",
    );
    for (const XDG_DATA_HOME of [undefined, "", "relative/data"]) {
      expect(dataFolder("linux", { XDG_DATA_HOME }, "/home/a")).toBe(
        "/home/a/.local/share/turnwise",
      );
    }
  });

  it("is in Application Support on a Mac", () => {
    expect(dataFolder("darwin", {}, "/Users/a")).toBe(
      "/Users/a/Library/Application Support/Turnwise",
    );
  });

  it("is in the roaming application data on Windows", () => {
    expect(
      dataFolder("win32", { APPDATA: "D:\\Roaming" }, "C:\\Users\\a"),
    ).toBe("D:\\Roaming\\Turnwise");
    expect(dataFolder("win32", {}, "C:\\Users\\a")).toBe(
      "C:\\Users\\a\\AppData\\Roaming\\Turnwise",
    );
  });
});
