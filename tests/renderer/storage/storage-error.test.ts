import { describe, expect, it } from "vitest";
import { storageErrorText } from "../../../renderer/error-text";
import {
  type StorageError,
  storageErrorFrom,
  tryReading,
  tryWriting,
} from "../../../renderer/storage/storage-error";

// Names: Indexed Database API 3.0 (W3C) and the Storage Standard (WHATWG);
// the library wraps them and keeps what was thrown in `inner`.
const thrown = (name: string) => new DOMException("…", name);
const wrapped = (name: string, inner: unknown) =>
  Object.assign(new Error("…"), { name, inner });

describe("what the browser throws", () => {
  it.each<[unknown, StorageError]>([
    [thrown("QuotaExceededError"), { code: "full" }],
    [wrapped("AbortError", thrown("QuotaExceededError")), { code: "full" }],
    [wrapped("DatabaseClosedError", undefined), { code: "closed" }],
    [thrown("InvalidStateError"), { code: "closed" }],
    [thrown("SecurityError"), { code: "unavailable", reason: "SecurityError" }],
    [
      wrapped("MissingAPIError", undefined),
      { code: "unavailable", reason: "MissingAPIError" },
    ],
    [thrown("UnknownError"), { code: "not-written", reason: "UnknownError" }],
    ["a string", { code: "not-written", reason: "unknown" }],
  ])("%s becomes a code", (error, code) => {
    expect(storageErrorFrom(error, "write")).toEqual(code);
  });

  it("comes back as an outcome, never as an exception", async () => {
    const outcome = await tryWriting(() =>
      Promise.reject(thrown("QuotaExceededError")),
    );
    expect(outcome).toEqual({ ok: false, error: { code: "full" } });
  });

  it("is told apart as reading and as writing where it has no name of its own", async () => {
    const fail = () => Promise.reject(thrown("UnknownError"));
    const reason = "UnknownError";
    expect(await tryReading(fail)).toEqual({
      ok: false,
      error: { code: "not-read", reason },
    });
    expect(await tryWriting(fail)).toEqual({
      ok: false,
      error: { code: "not-written", reason },
    });
  });

  it("has a sentence for every code that says what to do next", () => {
    const next: Readonly<Record<StorageError["code"], RegExp>> = {
      unavailable: /ordinary window, then reload/,
      full: /Make some room, then try again/,
      "newer-version": /number 7.*Open that newer Turnwise/,
      closed: /Reload this window/,
      "not-written": /could not be kept.*AbortError.*Try again/,
      "not-read": /could not be read.*AbortError.*Reload this window/,
      "learner-gone": /deleted in another window.*Reload this window/,
    };
    const errors: readonly StorageError[] = [
      { code: "unavailable", reason: "" },
      { code: "full" },
      { code: "newer-version", version: 7 },
      { code: "closed" },
      { code: "not-written", reason: "AbortError" },
      { code: "not-read", reason: "AbortError" },
      { code: "learner-gone" },
    ];
    for (const error of errors)
      expect(storageErrorText(error)).toMatch(next[error.code]);
  });
});
