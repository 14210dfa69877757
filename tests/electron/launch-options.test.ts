import { describe, expect, it } from "vitest";
import { parseLaunchOptions } from "../../electron/launch-options";

const USUAL = { open: true, port: undefined, buildOnly: false };

describe("the words behind npm start", () => {
  it.each([
    [[], USUAL],
    [["--no-open"], { ...USUAL, open: false }],
    [["--build-only"], { ...USUAL, buildOnly: true }],
    [["--port", "0"], { ...USUAL, port: 0 }],
    [["--port", "65535"], { ...USUAL, port: 65535 }],
    [["--port=8000", "--no-open"], { ...USUAL, open: false, port: 8000 }],
  ])("%j are understood", (words, options) => {
    expect(parseLaunchOptions(words)).toEqual({ ok: true, value: options });
  });

  it.each([
    [["--prot", "1"], "unknown-option", "--prot"],
    [["--no-open", "extra"], "unknown-option", "extra"],
    [[""], "unknown-option", ""],
    [["--port"], "port-missing", "--port"],
    [["--port", "--no-open"], "port-invalid", "--no-open"],
    [["--port", "65536"], "port-invalid", "65536"],
    [["--port", "-1"], "port-invalid", "-1"],
    [["--port", "80a"], "port-invalid", "80a"],
    [["--port", "1e3"], "port-invalid", "1e3"],
    [["--port="], "port-invalid", ""],
  ])("%j are refused as %s at %j", (words, code, text) => {
    expect(parseLaunchOptions(words)).toEqual({
      ok: false,
      error: { code, text },
    });
  });
});
