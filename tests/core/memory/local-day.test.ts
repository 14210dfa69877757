import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayAfter, endOfDay, localDay } from "../../../core/memory/local-day";

const HOUR = 3_600_000;
// Offsets in use run from 12 hours west to 14 hours east, in quarter hours.
const OFFSETS = fc.integer({ min: -48, max: 56 }).map((n) => n * 15);
const INSTANTS = fc.integer({
  min: Date.UTC(1990, 0, 1),
  max: Date.UTC(2090, 0, 1),
});

function dayOf(iso: string, turnsOverAt?: number): number {
  const offset = /([+-])(\d\d):(\d\d)$/.exec(iso);
  const minutes =
    offset === null
      ? 0
      : (offset[1] === "-" ? -1 : 1) *
        (Number(offset[2]) * 60 + Number(offset[3]));
  return localDay(Date.parse(iso), minutes, turnsOverAt);
}

function date(year: number, month: number, day: number): number {
  return Date.UTC(year, month - 1, day) / 86_400_000;
}

describe("a learner's day", () => {
  it.each(["+00:00", "+14:00", "-12:00", "+05:45", "-03:30"])(
    "turns over at three in the morning, to the millisecond, at offset %s",
    (offset) => {
      expect(dayOf(`2026-03-10T02:59:59.999${offset}`)).toBe(date(2026, 3, 9));
      expect(dayOf(`2026-03-10T03:00:00.000${offset}`)).toBe(date(2026, 3, 10));
      expect(dayOf(`2026-03-10T23:59:59.999${offset}`)).toBe(date(2026, 3, 10));
    },
  );

  it("turns over at the hour the learner chose", () => {
    expect(dayOf("2026-03-10T00:00:00+01:00", 0)).toBe(date(2026, 3, 10));
    expect(dayOf("2026-03-10T04:59:00+01:00", 5)).toBe(date(2026, 3, 9));
    expect(dayOf("2026-03-10T05:00:00+01:00", 5)).toBe(date(2026, 3, 10));
  });

  it("is one day and no other through the night the clocks go forward", () => {
    // Central Europe, 29 March 2026: 01:59:59+01:00 is followed by 03:00+02:00.
    expect(dayOf("2026-03-29T01:59:59+01:00")).toBe(date(2026, 3, 28));
    expect(dayOf("2026-03-29T03:00:00+02:00")).toBe(date(2026, 3, 29));
  });

  it("is one day and no other through the night the clocks go back", () => {
    // Central Europe, 25 October 2026: 02:59:59+02:00 is followed by 02:00+01:00.
    expect(dayOf("2026-10-25T02:59:59+02:00")).toBe(date(2026, 10, 24));
    expect(dayOf("2026-10-25T02:00:00+01:00")).toBe(date(2026, 10, 24));
    expect(dayOf("2026-10-25T03:00:00+01:00")).toBe(date(2026, 10, 25));
  });

  it("begins at the first instant that belongs to it", () => {
    fc.assert(
      fc.property(
        INSTANTS,
        OFFSETS,
        fc.integer({ min: 0, max: 12 }),
        (at, offset, hour) => {
          const day = localDay(at, offset, hour);
          const start = day * 24 * HOUR + hour * HOUR - offset * 60_000;
          expect(localDay(start, offset, hour)).toBe(day);
          expect(localDay(start - 1, offset, hour)).toBe(day - 1);
          expect(endOfDay(dayAfter(day, -1), offset, hour)).toBe(start);
          expect(at - start).toBeGreaterThanOrEqual(0);
          expect(at - start).toBeLessThan(24 * HOUR);
        },
      ),
    );
  });
});
