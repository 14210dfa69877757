import { describe, expect, it } from "vitest";
import { MAX_DECK_FILE_LENGTH } from "../../core/deck/deck-file";
import { MAX_BACKUP_BYTES } from "../../core/desktop-bridge";
import { MAX_RESULTS_BYTES } from "../../core/sharing/results-file-name";
import {
  isOwnAddress,
  type Message,
  parseMessage,
} from "../../electron/messages";

const OWN = { url: "turnwise://app/", isTopFrame: true };
const GZIP = new Uint8Array([0x1f, 0x8b, 8, 0]);
const TEXT = "x".repeat(MAX_DECK_FILE_LENGTH);
const RESULTS = `${"0123456789abcdef".repeat(4)}.turnwise-results`;
const TITLE = "x".repeat(1000);

describe("a message from the window", () => {
  it.each<Message>([
    { kind: "info" },
    { kind: "show-data-folder" },
    { kind: "open-deck-file" },
    { kind: "save-deck-file", title: "", text: TEXT },
    { kind: "take-deck-file" },
    { kind: "save-backup", title: TITLE, bytes: GZIP },
    { kind: "open-backup" },
    { kind: "automatic-backup", reviews: 0, bytes: GZIP },
    { kind: "automatic-backup", reviews: 0, runs: 3, bytes: GZIP },
    { kind: "list-backups" },
    { kind: "read-backup", name: "a" },
    { kind: "last-known" },
    { kind: "forget-last-known" },
    { kind: "choose-shared-folder" },
    { kind: "shared-folder" },
    { kind: "leave-shared-folder" },
    { kind: "list-shared" },
    { kind: "read-shared", name: "Mia (1).turnwise-results" },
    { kind: "write-shared", name: RESULTS, bytes: GZIP },
    { kind: "remove-shared", name: RESULTS },
    { kind: "print-to-pdf", title: "a" },
    { kind: "set-full-screen", on: false },
  ])("may ask $kind", (message) => {
    expect(parseMessage(OWN, message)).toEqual({ ok: true, value: message });
  });

  it.each([
    undefined,
    { ...OWN, isTopFrame: false },
    { ...OWN, url: "https://evil.example/" },
    { ...OWN, url: "turnwise://app.evil.example/" },
    { ...OWN, url: "turnwise://application/" },
    { ...OWN, url: "file:///turnwise://app/" },
    { ...OWN, url: "about:blank" },
  ])("is refused from %j", (sender) => {
    expect(parseMessage(sender, { kind: "info" })).toEqual({
      ok: false,
      error: { code: "foreign-sender" },
    });
  });

  it.each([
    ["", undefined],
    ["", "info"],
    ["kind", {}],
    ["kind", { kind: "delete-everything" }],
    ["kind", { kind: ["info"] }],
    ["path", { kind: "show-data-folder", path: "/etc" }],
    ["title", { kind: "print-to-pdf", title: `${TITLE}x` }],
    ["title", { kind: "save-backup", bytes: GZIP }],
    ["text", { kind: "save-deck-file", title: "a", text: `${TEXT}x` }],
    ["text", { kind: "save-deck-file", title: "a", text: ["a"] }],
    ["path", { kind: "open-deck-file", path: "/etc/passwd" }],
    ["path", { kind: "save-deck-file", title: "a", text: "", path: "/a" }],
    ["name", { kind: "read-backup", name: "a".repeat(256) }],
    ["name", { kind: "read-backup" }],
    ["path", { kind: "choose-shared-folder", path: "/etc" }],
    ["name", { kind: "read-shared", name: "../a.turnwise-results" }],
    ["name", { kind: "read-shared", name: "passwd" }],
    ["name", { kind: "write-shared", name: `../${RESULTS}`, bytes: GZIP }],
    ["name", { kind: "write-shared", name: `b${RESULTS}`, bytes: GZIP }],
    ["bytes", { kind: "write-shared", name: RESULTS, bytes: "text" }],
    [
      "bytes",
      { kind: "write-shared", name: RESULTS, bytes: new Uint8Array([80, 75]) },
    ],
    ["name", { kind: "remove-shared", name: "Mia.turnwise-results" }],
    ["on", { kind: "set-full-screen", on: 1 }],
    ["reviews", { kind: "automatic-backup", reviews: -1, bytes: GZIP }],
    ["reviews", { kind: "automatic-backup", reviews: 1.5, bytes: GZIP }],
    ["reviews", { kind: "automatic-backup", reviews: 1e9, bytes: GZIP }],
    ["runs", { kind: "automatic-backup", reviews: 1, runs: -1, bytes: GZIP }],
    // By its number: in full a name would be as long as the largest bytes.
  ])("is refused at %j (message %#)", (field, body) => {
    expect(parseMessage(OWN, body)).toEqual({
      ok: false,
      error: { code: "unreadable-message", field },
    });
  });
});

describe("the bytes of results", () => {
  it("are no more than a reader takes", () => {
    const bytes = new Uint8Array(MAX_RESULTS_BYTES + 1);
    bytes.set(GZIP);
    const message = { kind: "write-shared", name: RESULTS, bytes };
    expect(parseMessage(OWN, message)).toEqual({
      ok: false,
      error: { code: "unreadable-message", field: "bytes" },
    });
  });
});

describe("the bytes of a backup", () => {
  const field = (bytes: unknown) => {
    const message = { kind: "save-backup", title: "a", bytes };
    const read = parseMessage(OWN, message);
    return read.ok ? undefined : read.error;
  };
  const refused = { code: "unreadable-message", field: "bytes" };

  it("are gzip and nothing else", () => {
    for (const bytes of [
      "text",
      [0x1f, 0x8b],
      GZIP.buffer,
      new Uint8Array(),
      new Uint8Array([0x1f]),
      new TextEncoder().encode("{}"),
      new Uint16Array([0x8b1f]),
    ])
      expect(field(bytes)).toEqual(refused);
    expect(field(GZIP)).toBeUndefined();
  });

  it("are no more than may go over the bridge", () => {
    const bytes = new Uint8Array(MAX_BACKUP_BYTES + 1);
    bytes.set(GZIP);
    expect(field(bytes)).toEqual(refused);
    expect(field(bytes.subarray(0, MAX_BACKUP_BYTES))).toBeUndefined();
  });
});

describe("our own addresses", () => {
  it("are those of the app's host only", () => {
    expect(isOwnAddress("turnwise://app/assets/a.js")).toBe(true);
    expect(isOwnAddress("turnwise://other/")).toBe(false);
    expect(isOwnAddress("turnwise://app@evil.example/")).toBe(false);
  });
});
