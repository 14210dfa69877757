import { describe, expect, it } from "vitest";
import {
  afterTap,
  PAUSE_AFTER,
  RESTED,
  wantsPause,
} from "../../../renderer/state/practise/pause-advice";

describe("the advice to pause", () => {
  it("comes after twenty minutes of taps, and not after as long a silence", () => {
    let time = RESTED;
    for (let at = 0; at <= PAUSE_AFTER; at += 30_000) time = afterTap(time, at);
    expect(wantsPause(time)).toBe(true);
    const rested = afterTap(time, PAUSE_AFTER + 600_000);
    expect(wantsPause(rested)).toBe(false);
  });
});
