import { describe, expect, it } from "vitest";
import {
  endOfPage,
  stationsOf,
} from "../../../../renderer/state/show/show-stations";

describe("what is shown of a case", () => {
  it("begins with the case alone, then the set-up six turns at a time, then the way turn by turn", () => {
    expect(stationsOf(8, 2)).toEqual([
      { kind: "case" },
      { kind: "set-up", from: 0, to: 6 },
      { kind: "set-up", from: 6, to: 8 },
      { kind: "way", from: 0, to: 1 },
      { kind: "way", from: 0, to: 2 },
    ]);
  });

  it("has a place for a set-up that is still looked for", () => {
    expect(stationsOf(0, 0)).toEqual([
      { kind: "case" },
      { kind: "set-up", from: 0, to: 0 },
    ]);
  });

  it("starts a new page of the way after every sixth turn", () => {
    expect(stationsOf(1, 7).at(-1)).toEqual({ kind: "way", from: 6, to: 7 });
    expect(stationsOf(1, 7).at(-2)).toEqual({ kind: "way", from: 0, to: 6 });
  });

  it("can be shown a page at a time, to the last turn and no further", () => {
    const stations = stationsOf(3, 8);
    const first = endOfPage(stations, 1);
    expect(stations[first]).toEqual({ kind: "way", from: 0, to: 6 });
    const second = endOfPage(stations, first);
    expect(stations[second]).toEqual({ kind: "way", from: 6, to: 8 });
    expect(endOfPage(stations, second)).toBe(second);
    expect(endOfPage(stationsOf(3, 0), 1)).toBe(1);
  });
});
