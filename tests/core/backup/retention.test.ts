import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  FULLEST_KEPT_DAYS,
  KEPT_BACKUP_DAYS,
  planRetention,
  type StoredBackup,
} from "../../../core/backup/retention";
import { dayNumber } from "../../../core/memory/local-day";

const DAY = 86_400_000;

function backup(day: number, reviews: number, hour = 12): StoredBackup {
  return {
    name: `${day}-${hour}-${reviews}`,
    day: dayNumber(day),
    reviews,
    madeAt: day * DAY + (hour * DAY) / 24,
  };
}

/** The files after a plan was carried out. */
function after(
  existing: readonly StoredBackup[],
  fresh: StoredBackup,
): readonly StoredBackup[] {
  const { write, remove } = planRetention(existing, fresh);
  const left = existing.filter(({ name }) => !remove.includes(name));
  return write ? [...left, fresh] : left;
}

describe("automatic backups", () => {
  it("are one a day, the day's newest", () => {
    const morning = backup(100, 10, 8);
    const evening = backup(100, 12, 20);
    expect(planRetention([morning], evening)).toEqual({
      write: true,
      remove: [morning.name],
      fewerThan: undefined,
    });
    expect(after([evening], backup(101, 12))).toHaveLength(2);
  });

  it("are kept for fourteen days that have one, however far apart", () => {
    for (const gap of [1, 30]) {
      let kept: readonly StoredBackup[] = [];
      for (let i = 0; i < 40; i += 1)
        kept = after(kept, backup(100 + gap * i, 10 + i));
      expect(kept.map(({ day }) => day)).toEqual(
        Array.from(
          { length: KEPT_BACKUP_DAYS },
          (_, i) => 100 + gap * (26 + i),
        ),
      );
    }
  });

  it("with fewer answers are written beside and reported", () => {
    const full = backup(100, 500, 8);
    const poor = backup(100, 3, 20);
    expect(planRetention([full], poor)).toEqual({
      write: true,
      remove: [],
      fewerThan: full,
    });
    // The next of that day takes the place of the poor one, not of the full.
    const next = backup(100, 4, 21);
    expect(planRetention([full, poor], next)).toEqual({
      write: true,
      remove: [poor.name],
      fewerThan: undefined,
    });
  });

  it("of an empty store are not made, and the last one is told", () => {
    const full = backup(90, 500);
    expect(planRetention([full], backup(100, 0))).toEqual({
      write: false,
      remove: [],
      fewerThan: full,
    });
    expect(planRetention([], backup(100, 0)).fewerThan).toBeUndefined();
  });

  it("with fewer whole runs are written beside and reported as well", () => {
    const many = { ...backup(100, 0, 8), runs: 20 };
    const poor = { ...backup(100, 0, 20), runs: 1 };
    expect(planRetention([many], poor)).toEqual({
      write: true,
      remove: [],
      fewerThan: many,
    });
    const more = { ...backup(100, 0, 21), runs: 21 };
    expect(planRetention([many, poor], more)).toEqual({
      write: true,
      remove: [many.name, poor.name],
      fewerThan: undefined,
    });
  });

  it("keep the fullest beyond their days while there are fewer answers, for a while", () => {
    const full = backup(100, 500);
    let kept: readonly StoredBackup[] = [full];
    const lastDay = 100 + FULLEST_KEPT_DAYS;
    for (let day = 101; day <= lastDay; day += 1) {
      kept = after(kept, backup(day, day - 100));
      expect(kept).toContain(full);
      expect(kept.length).toBeLessThanOrEqual(KEPT_BACKUP_DAYS + 1);
    }
    expect(after(kept, backup(lastDay, 500, 20))).not.toContain(full);
    expect(after(kept, backup(lastDay + 1, 90))).not.toContain(full);
  });

  it("never lose the fullest, nor the newest, to one with fewer answers", () => {
    const some = fc
      .record({ day: fc.nat(40), hour: fc.nat(23), reviews: fc.nat(5) })
      .map(({ day, hour, reviews }) => backup(day, reviews, hour));
    fc.assert(
      fc.property(
        fc.uniqueArray(some, { selector: ({ name }) => name, maxLength: 30 }),
        some,
        (existing, fresh) => {
          fc.pre(!existing.some(({ name }) => name === fresh.name));
          const kept = after(existing, fresh);
          const most = Math.max(0, ...existing.map(({ reviews }) => reviews));
          // The days reach no further back than the fullest is kept.
          expect(
            Math.max(0, ...kept.map(({ reviews }) => reviews)),
          ).toBeGreaterThanOrEqual(most);
          if (fresh.reviews > 0) expect(kept).toContain(fresh);
          else expect(kept).toEqual(existing);
        },
      ),
    );
  });
});
