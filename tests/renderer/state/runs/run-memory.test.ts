import { beforeEach, describe, expect, it } from "vitest";
import {
  rememberedRun,
  rememberRun,
} from "../../../../renderer/state/runs/run-memory";
import { turnsOf } from "../../../core/notation/turns-of";

beforeEach(() => sessionStorage.clear());

describe("a run that a window remembers", () => {
  const choice = { kind: "solve", rules: "plain", withParts: true } as const;
  const mixing = {
    stage: "mixing",
    choice,
    turns: turnsOf("R U' F2"),
    done: 2,
  } as const;

  it("is one learner's, and comes back as it was", () => {
    rememberRun("ann", mixing);
    expect(rememberedRun("ann")).toEqual(mixing);
    expect(rememberedRun("ben")).toBeUndefined();
    rememberRun("ann", { stage: "under-way" });
    expect(rememberedRun("ann")).toEqual({ stage: "under-way" });
    rememberRun("ann", undefined);
    expect(rememberedRun("ann")).toBeUndefined();
  });

  it.each([
    { stage: "mixing", choice, turns: "R Q", done: 0 },
    { stage: "mixing", choice, turns: "R", done: 2 },
    { stage: "mixing", choice, turns: "R", done: -1 },
    {
      stage: "mixing",
      choice: { ...choice, kind: "half" },
      turns: "",
      done: 0,
    },
    { stage: "later" },
  ])("is nothing where it says %j", (stored) => {
    sessionStorage.setItem("whole-run:ann", JSON.stringify(stored));
    expect(rememberedRun("ann")).toBeUndefined();
  });
});
