/**
 * What time a learner usually needs for something, in log time: times of one
 * person spread evenly in the logarithm and not in seconds.
 *
 * A median and not a mean, over the last few times and not all: one long look
 * out of the window moves nothing, and an old time is soon forgotten by
 * somebody who gets faster. A prior fills in while there are few.
 */

/** How many of the last times of a case count. */
const RECENT = 10;

/** How many times the prior is worth. */
const PRIOR_WEIGHT = 4;

/** The spread expected of a case that has no times yet. Units: ln. */
const PRIOR_SPREAD = 0.3;

/** Nobody is taken to be steadier than this. Units: ln. */
const LEAST_SPREAD = 0.12;

/** From the median deviation to the standard deviation of a normal spread. */
const DEVIATIONS = 1.4826;

/** A time is taken in as at most so many spreads above what was expected. */
const WINSOR = 2.5;

/** The last few of a row of numbers, kept sorted as well: a median for the price of an insertion. */
export class RecentValues {
  readonly #most: number;
  readonly #byAge: number[] = [];
  readonly #sorted: number[] = [];
  /** Where the oldest stands once the row is full. */
  #oldest = 0;

  constructor(most: number) {
    this.#most = most;
  }

  /** How many there are, at most as many as are kept. */
  get count(): number {
    return this.#sorted.length;
  }

  /** Takes a number in; the oldest goes where there are too many. */
  add(value: number): void {
    const sorted = this.#sorted;
    if (this.#byAge.length < this.#most) {
      this.#byAge.push(value);
    } else {
      const gone = this.#byAge[this.#oldest] ?? value;
      this.#byAge[this.#oldest] = value;
      this.#oldest = (this.#oldest + 1) % this.#most;
      sorted.splice(sorted.indexOf(gone), 1);
    }
    let place = sorted.length;
    while (place > 0 && (sorted[place - 1] ?? 0) > value) place--;
    sorted.splice(place, 0, value);
  }

  /** The middle one, or halfway between the middle two; 0 without any. */
  median(): number {
    const sorted = this.#sorted;
    const half = sorted.length >> 1;
    const upper = sorted[half] ?? 0;
    return sorted.length % 2 === 1
      ? upper
      : (upper + (sorted[half - 1] ?? upper)) / 2;
  }

  /** The median distance from a centre; of an even number the lower one. 0 without any. */
  medianDeviation(centre: number): number {
    const sorted = this.#sorted;
    let above = 0;
    while (above < sorted.length && (sorted[above] ?? 0) < centre) above++;
    let below = above - 1;
    let deviation = 0;
    // Outwards from the centre, the nearer side first: distances in order.
    for (let n = (sorted.length + 1) >> 1; n > 0; n--) {
      const up = (sorted[above] ?? Infinity) - centre;
      const down = centre - (sorted[below] ?? -Infinity);
      deviation = up < down ? up : down;
      if (up < down) above++;
      else below--;
    }
    return deviation;
  }

  /** The same numbers, to be changed apart. */
  copy(): RecentValues {
    const copy = new RecentValues(this.#most);
    copy.#byAge.push(...this.#byAge);
    copy.#sorted.push(...this.#sorted);
    copy.#oldest = this.#oldest;
    return copy;
  }
}

/** What is expected of the next time. Units: ln of milliseconds. */
export interface ExpectedTime {
  readonly centre: number;
  readonly spread: number;
}

/** What the next time of a case should be, by its last clean ones and a prior for it. Units: ln of milliseconds. */
export function expectedTime(
  times: RecentValues | undefined,
  prior: number,
): ExpectedTime {
  if (times === undefined) return { centre: prior, spread: PRIOR_SPREAD };
  const n = times.count;
  const median = times.median();
  const own = Math.max(
    LEAST_SPREAD,
    DEVIATIONS * times.medianDeviation(median),
  );
  const weight = n + PRIOR_WEIGHT;
  return {
    centre: (n * median + PRIOR_WEIGHT * prior) / weight,
    spread: Math.sqrt(
      (n * own * own + PRIOR_WEIGHT * PRIOR_SPREAD * PRIOR_SPREAD) / weight,
    ),
  };
}

/** The last clean times of a case, empty. */
export function noTimes(): RecentValues {
  return new RecentValues(RECENT);
}

/** A time as it is taken in: one far above what was expected only as far as that. Units: ln. */
export function winsorised(time: number, expected: ExpectedTime): number {
  return Math.min(time, expected.centre + WINSOR * expected.spread);
}
