import { describe, expect, it } from "vitest";
import { nextTrack } from "../../../core/memory/round-order";
import type {
  RoundStep,
  RoundTrack,
  StepKind,
} from "../../../core/memory/round-track";

/** A track whose next step wants `gap` others since the asking at `lastAsked`. */
function track(
  gap: number,
  lastAsked?: number,
  kind: StepKind = "plain",
): RoundTrack {
  const step: RoundStep = { asking: "alone", kind, gap };
  return {
    planned: {
      case: "E1",
      hold: "up",
      deck: "d",
      target: 8,
      memory: "settling",
      times: 1,
    },
    steps: [step],
    asked: lastAsked === undefined ? 0 : 1,
    returns: 0,
    hasThird: false,
    ...(lastAsked === undefined ? {} : { lastAsked }),
  };
}

const DONE: RoundTrack = { ...track(1, 0), steps: [] };

describe("whose turn it is", () => {
  // Ten askings so far: one last asked at index 3 has had six others since.
  it("is the repeat that is longest overdue, before anything not asked yet", () => {
    const waiting = [track(1), track(4, 3), track(1, 3), track(2, 3), DONE];
    expect(nextTrack(waiting, 10, 4)).toBe(2);
    expect(nextTrack(waiting.toReversed(), 10, 0)).toBe(2);
  });

  it("is a repeat as soon as enough others stood, and not one sooner", () => {
    expect(nextTrack([track(6, 3), track(1), DONE], 10, 2)).toBe(0);
    expect(nextTrack([track(7, 3), track(1), DONE], 10, 2)).toBe(1);
  });

  it("is the first case of the plan that was not asked, before a repeat before its time", () => {
    expect(nextTrack([track(9, 3), DONE, track(1), track(1)], 10, 1)).toBe(2);
  });

  it("is at the end the repeat nearest to its time", () => {
    const waiting = [track(9, 3), track(7, 3), track(8, 3), DONE];
    expect(nextTrack(waiting, 10, 3)).toBe(1);
  });

  it("is at the end a spaced repeat before a missed case, though the miss be nearer to its time", () => {
    const waiting = [track(3, 7, "return"), track(6, 6, "spaced"), DONE];
    expect(nextTrack(waiting, 10, 2)).toBe(1);
  });

  it("is a step that must follow at once, whatever waits", () => {
    expect(nextTrack([track(1, 0), track(0, 9)], 10, 1)).toBe(1);
  });

  it("is the case just asked only when no other is left", () => {
    expect(nextTrack([track(9, 3), track(1, 9)], 10, 1)).toBe(0);
    expect(nextTrack([DONE, track(1, 9)], 10, 1)).toBe(1);
    expect(nextTrack([DONE, { ...DONE, lastAsked: 9 }], 10, 1)).toBeUndefined();
  });
});
