import { describe, expect, it } from "vitest";
import { isOwnAddress, parseMessage } from "../../electron/messages";

const OWN = { url: "turnwise://app/", isTopFrame: true };

describe("a message from the window", () => {
  it.each(["info", "show-data-folder"] as const)("may ask %s", (kind) => {
    expect(parseMessage(OWN, { kind })).toEqual({ ok: true, value: { kind } });
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
  ])("is refused at %j when it is %j", (field, body) => {
    expect(parseMessage(OWN, body)).toEqual({
      ok: false,
      error: { code: "unreadable-message", field },
    });
  });
});

describe("our own addresses", () => {
  it("are those of the app's host only", () => {
    expect(isOwnAddress("turnwise://app/assets/a.js")).toBe(true);
    expect(isOwnAddress("turnwise://other/")).toBe(false);
    expect(isOwnAddress("turnwise://app@evil.example/")).toBe(false);
  });
});
