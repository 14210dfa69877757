/**
 * The last layer by stickers: every state of it that turning reaches, and how
 * many classes it falls into. Slow and plain, to count a second time what the
 * program counts by tables.
 *
 * The last layer is on top. A state says for each of its 20 stickers' places
 * (eight of the top face, three on each side) which of the 20 stickers is there.
 */
import {
  afterTurns,
  isSameVector,
  NORMALS,
  solvedStickers,
  type Sticker,
} from "./geometric-cube";

/** The stickers of the top layer's pieces, without the centre. */
const STICKERS: readonly Sticker[] = solvedStickers().filter(
  ({ at }) => at[1] === 1 && (at[0] !== 0 || at[2] !== 0),
);

/** For each of the 20 places, the index of the sticker there. */
export type TopState = readonly number[];

/** Where each sticker of the top comes from after turns that keep it on top. */
function effectOf(turns: string): TopState {
  const after = afterTurns(solvedStickers(), turns);
  return STICKERS.map((place) => {
    const found = after.find(
      (sticker) =>
        isSameVector(sticker.at, place.at) &&
        isSameVector(sticker.facing, place.facing),
    );
    return STICKERS.findIndex(
      (own) =>
        found &&
        isSameVector(own.piece, found.piece) &&
        isSameVector(own.colour, found.colour),
    );
  });
}

function then(first: TopState, second: TopState): TopState {
  return second.map((source) => first[source] ?? -1);
}

/** Every state of the top layer that some sequences reach, each once. */
export function topStates(sequences: readonly string[]): readonly TopState[] {
  const effects = sequences.map(effectOf);
  const states: TopState[] = [STICKERS.map((_, i) => i)];
  const met = new Set(states.map(keyOf));
  for (const state of states) {
    for (const effect of effects) {
      const next = then(state, effect);
      const key = keyOf(next);
      if (met.has(key)) continue;
      met.add(key);
      states.push(next);
    }
  }
  return states;
}

function keyOf(state: TopState): string {
  return String.fromCharCode(...state);
}

/** What can be seen of the top layer: of which kind of piece, and what of it. */
export type Aspect =
  "corners turned" | "edges turned" | "corners placed" | "edges placed";

// A corner's place has three stickers, an edge's two; of a top place, only the
// one that faces up is asked.
const TOP_PLACES = STICKERS.flatMap(({ at, facing }, i) =>
  isSameVector(facing, NORMALS.U)
    ? [{ i, at, isCorner: at[0] !== 0 && at[2] !== 0 }]
    : [],
);

/** What an aspect of a state looks like, as a text. */
function seenOf(state: TopState, aspect: Aspect): string {
  const isAboutCorners = aspect.startsWith("corners");
  return TOP_PLACES.filter(({ isCorner }) => isCorner === isAboutCorners)
    .map(({ at, i }) => {
      if (aspect.endsWith("placed"))
        return String(STICKERS[state[i] ?? -1]?.piece);
      const top = STICKERS.findIndex(
        (place, j) =>
          isSameVector(place.at, at) &&
          isSameVector(STICKERS[state[j] ?? -1]?.colour ?? at, NORMALS.U),
      );
      return String(STICKERS[top]?.facing);
    })
    .join(" ");
}

function everySide(state: TopState): readonly TopState[] {
  const turns = ["", "U", "U2", "U'"].map(effectOf);
  return turns.flatMap((before) =>
    turns.map((after) => then(then(before, state), after)),
  );
}

/** How many looks each class has that some states show, turns of the top before and after not counted. */
export type ClassSizes = readonly number[];

/**
 * The classes of what `asked` shows, among states in which `done` is done up to
 * turns of the top.
 *
 * Shape: the size of each class in looks of `done` and `asked` together, the
 *        solved class among them, ascending.
 */
export function classSizes(
  states: readonly TopState[],
  done: readonly Aspect[],
  asked: readonly Aspect[],
): ClassSizes {
  const lookOf = (state: TopState, aspects: readonly Aspect[]) =>
    aspects.map((aspect) => seenOf(state, aspect)).join("|");
  const solved = STICKERS.map((_, i) => i);
  const doneLooks = new Set(
    everySide(solved).map((state) => lookOf(state, done)),
  );
  const one = new Map<string, TopState>();
  for (const state of states)
    if (doneLooks.has(lookOf(state, done)))
      one.set(lookOf(state, [...done, ...asked]), state);
  const sizes = new Map<string, number>();
  for (const state of one.values()) {
    const least = everySide(state)
      .map((side) => lookOf(side, [...done, ...asked]))
      .toSorted()[0];
    if (least !== undefined) sizes.set(least, (sizes.get(least) ?? 0) + 1);
  }
  return [...sizes.values()].toSorted((a, b) => a - b);
}
