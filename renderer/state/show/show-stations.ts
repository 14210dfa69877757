/**
 * What a case shown to a class goes through, one press after the other: the
 * case by itself, the set-up six turns at a time, the way turn by turn. Six,
 * because more pictures with words that can be read from the back of a room
 * have no place beside the case.
 */

/** How many turns are shown at a time. */
export const TURNS_A_PAGE = 6;

/** How many of them stand side by side. */
export const TURNS_A_ROW = 3;

/** What is shown of a case. */
export type Station =
  | { readonly kind: "case" }
  /** The set-up's turns from `from` to before `to`. */
  | { readonly kind: "set-up"; readonly from: number; readonly to: number }
  /** Of the way's turns those on the same page, up to before `to`. */
  | { readonly kind: "way"; readonly from: number; readonly to: number };

function pageBegin(turn: number): number {
  return turn - (turn % TURNS_A_PAGE);
}

/**
 * The stations of a case, in order.
 *
 * Shape: `setUp` and `way` are numbers of turns. A set-up without turns has
 *        one station all the same: it is being looked for, or none was found.
 */
export function stationsOf(setUp: number, way: number): readonly Station[] {
  const stations: Station[] = [{ kind: "case" }];
  for (let from = 0; from === 0 || from < setUp; from += TURNS_A_PAGE)
    stations.push({
      kind: "set-up",
      from,
      to: Math.min(setUp, from + TURNS_A_PAGE),
    });
  for (let turn = 0; turn < way; turn++)
    stations.push({ kind: "way", from: pageBegin(turn), to: turn + 1 });
  return stations;
}

/** The station at which as many turns are shown as fit, from one on: the end of its page, or of the next. */
export function endOfPage(stations: readonly Station[], at: number): number {
  const isLastOfPage = (n: number) => {
    const [here, next] = [stations[n], stations[n + 1]];
    if (here?.kind !== "way") return false;
    return next?.kind !== "way" || next.from !== here.from;
  };
  const end = stations.findIndex((_, n) => n > at && isLastOfPage(n));
  return end < 0 ? at : end;
}
