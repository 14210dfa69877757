import "fake-indexeddb/auto";
import { beforeEach, describe, expect, it } from "vitest";
import { outerBlockTurns } from "../../../core/notation/metrics";
import { openApp } from "../../../renderer/state/app-state.svelte";
import { caseWays } from "../../../renderer/state/case-ways";
import { caseNamed } from "../practise/asked";
import { forgetDatabases } from "../storage/fresh-database";
import { windowLocks } from "../storage/window-locks";

const CASE = caseNamed("last-layer-placed:0132-0321");

beforeEach(async () => {
  await forgetDatabases();
  Object.defineProperty(navigator, "locks", {
    configurable: true,
    value: windowLocks(),
  });
});

describe("the ways of a case", () => {
  it("begin with those that the learner chose in the settings", async () => {
    const opened = await openApp();
    if (!opened.ok) throw new Error(opened.error.code);
    const { current } = opened.value;
    const lengths = () =>
      caseWays(CASE, current).map(({ turns }) => outerBlockTurns(turns));
    const usual = lengths();
    await current.changeSettings({ ways: "shortest" });
    const [fewest, ...longer] = lengths();
    expect(fewest).toBe(Math.min(...usual));
    expect(longer.length).toBeGreaterThan(0);
    expect(usual[0]).toBeGreaterThan(Math.min(...usual));
  });
});
