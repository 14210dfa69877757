import { describe, expect, it } from "vitest";
import type { Turn } from "../../../core/cube/turns";
import { formatTurn } from "../../../core/notation/format";
import { parseTurns } from "../../../core/notation/parse";
import { guideStep } from "../../../renderer/state/practise/guide";

function turns(text: string): readonly Turn[] {
  const parsed = parseTurns(text);
  return parsed.ok ? parsed.value : [];
}

function next(way: string, line: string): string | undefined {
  const step = guideStep(turns(way), turns(line));
  return step === undefined
    ? undefined
    : `${formatTurn(step.turn)} ${step.step ?? "back"}`;
}

describe("a way that is followed", () => {
  it("asks for its turns in order and then for none", () => {
    expect(next("D' R' D R", "")).toBe("D' 0");
    expect(next("D' R' D R", "D' R'")).toBe("D 2");
    expect(next("D' R' D R", "D' R' D R")).toBeUndefined();
  });

  it("asks for the other quarter of a half turn made in quarters", () => {
    expect(next("F2", "F")).toBe("F 0");
    expect(next("F2", "F'")).toBe("F' 0");
  });

  it("asks to take a turn back that leads off it", () => {
    expect(next("D' R' D R", "D' L")).toBe("L' back");
  });

  it("asks for what is missing where the layer was turned the other way", () => {
    expect(next("F R", "F'")).toBe("F2 0");
  });
});
