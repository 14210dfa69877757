import { beforeEach, describe, expect, it, vi } from "vitest";
import {
  forgetInWindow,
  rememberedInWindow,
  rememberInWindow,
} from "../../../renderer/platform/window-memory";

beforeEach(() => sessionStorage.clear());

describe("what a window remembers", () => {
  it("comes back until it is forgotten", () => {
    rememberInWindow("x", { a: 1 });
    expect(rememberedInWindow("x")).toEqual({ a: 1 });
    rememberInWindow("x", undefined);
    expect(rememberedInWindow("x")).toBeUndefined();
  });

  it("is forgotten by whose it is, under whatever name", () => {
    rememberInWindow("run:ann", 1);
    rememberInWindow("ann/other", 2);
    rememberInWindow("run:ben", 3);
    forgetInWindow("ann");
    expect(Object.keys(sessionStorage)).toEqual(["run:ben"]);
  });

  it("is nothing where it was changed by hand, or the browser keeps nothing", () => {
    sessionStorage.setItem("x", "{");
    expect(rememberedInWindow("x")).toBeUndefined();
    const refuse = () => {
      throw new DOMException("no", "QuotaExceededError");
    };
    vi.stubGlobal("sessionStorage", { getItem: refuse, setItem: refuse });
    rememberInWindow("x", 1);
    expect(rememberedInWindow("x")).toBeUndefined();
    vi.unstubAllGlobals();
  });
});
