import { describe, expect, it } from "vitest";
import {
  CONTENT_POLICY,
  PROTECTING_HEADERS,
} from "../../electron/content-policy";

describe("the content policy", () => {
  // Source: the design's architecture, "Shell and local server".
  it("is the design's, word for word", () => {
    expect(CONTENT_POLICY).toBe(
      "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
    );
  });

  it("travels with headers that keep other origins out", () => {
    expect(PROTECTING_HEADERS).toMatchObject({
      "Content-Security-Policy": CONTENT_POLICY,
      "X-Content-Type-Options": "nosniff",
      "Cross-Origin-Opener-Policy": "same-origin",
      "Cross-Origin-Resource-Policy": "same-origin",
    });
  });
});
