/**
 * What a deck file holds: short keys in words, so that it is pleasant to write
 * by hand. The descriptions go into the JSON Schema beside this file, where an
 * editor shows them while somebody writes.
 */
import * as v from "valibot";
import { FIRST_LAYER_IDS } from "../cases/case-ids";
import { HANDS, WAY_SCHOOLS } from "../cases/way";
import { DECK_LIMITS, DECK_VALUES, someOf } from "./deck-values";

/** The form of deck files that this version writes. */
export const DECK_FILE_VERSION = 1;

/** The words of a file for the values of a deck; none is ever renamed. */
export const FILE_WORDS = {
  stage: {
    "first-layer-edges": "first-layer edges",
    "first-layer-corners": "first-layer corners",
    "second-layer-edges": "second-layer edges",
    pairs: "pairs",
    "last-layer-edges-turned": "last layer: edges turned",
    "last-layer-edges-placed": "last layer: edges placed",
    "last-layer-corners-placed": "last layer: corners placed",
    "last-layer-corners-turned-last": "last layer: corners turned at last",
    "last-layer-corners-turned": "last layer: corners turned",
    "last-layer-corners-placed-first": "last layer: corners placed first",
    "last-layer-edges-placed-last": "last layer: edges placed at last",
    "last-layer-turned": "last layer: all turned",
    "last-layer-placed": "last layer: all placed",
    "last-layer-corners": "last layer: all corners",
    "last-layer-but-edges-turned": "last layer: all but turning edges",
    "last-layer-whole": "last layer: all at once",
  },
  school: {
    first: "a way of its own",
    repeating: "one pattern, repeated",
    "repeating-bottom-first": "one pattern, the bottom first",
    shortest: "the fewest turns",
    easiest: "the least trouble",
  },
  hand: { right: "right hand", left: "left hand" },
  home: { front: "in front", anywhere: "anywhere" },
  lining: { "lined-up": "lined up", "turned-away": "turned away" },
  answerWay: {
    "on-screen": "on screen",
    "my-cube": "my cube",
    "write-it": "write it",
  },
} as const;

/** The words for the ways of the app's own schools, with or without a hand. */
export const SCHOOL_WORDS = WAY_SCHOOLS.flatMap((school) => [
  { word: FILE_WORDS.school[school], school, hand: undefined },
  ...HANDS.map((hand) => ({
    word: `${FILE_WORDS.school[school]}, ${FILE_WORDS.hand[hand]}`,
    school,
    hand,
  })),
]);

function wordsOf<Word extends string>(
  words: Readonly<Record<string, Word>>,
): readonly Word[] {
  return Object.values(words);
}

const VERSION = v.pipe(v.number(), v.integer(), v.minValue(1));

/** What every deck file says before anything else is read; a newer form may differ in all the rest. */
export const DECK_FILE_HEAD = v.object({
  turnwise: v.literal("deck"),
  version: VERSION,
  readableFrom: v.exactOptional(VERSION),
});

const CASE_FIELDS = {
  case: v.pipe(
    DECK_VALUES.caseId,
    v.description(
      `The case's id, as the address of its page says it: ${FIRST_LAYER_IDS.join(", ")}; for every other stage the stage and what the case shows, as in "pairs:DFR-R.FR-F" or "last-layer-turned:1212-1111". A case that this Turnwise does not know is named and left out.`,
    ),
  ),
  target: v.exactOptional(
    v.pipe(
      DECK_VALUES.target,
      v.description(
        "Seconds for the whole answer. Left out: the case's usual target for a beginner.",
      ),
    ),
  ),
  way: v.exactOptional(
    v.pipe(
      DECK_VALUES.way,
      v.description(
        `The way to show. Either turns in notation, from a lined-up position with the home in front (the first layer up for its own cases, and the last layer up for all others), or one of: ${SCHOOL_WORDS.map(({ word }) => word).join("; ")}. Any right answer counts, whatever stands here.`,
      ),
    ),
  ),
  note: v.exactOptional(
    v.pipe(
      DECK_VALUES.caseNote,
      v.description("To the learner, shown with the case."),
    ),
  ),
  "others placed": v.exactOptional(
    v.pipe(
      DECK_VALUES.placed,
      v.description(
        "How many of the other pieces of the first layer are home already. Left out: as many as the case allows.",
      ),
    ),
  ),
  home: v.exactOptional(
    v.pipe(
      v.picklist(wordsOf(FILE_WORDS.home)),
      v.description(
        "Whether the piece's home is always in front. Left out: in front until the case is kept.",
      ),
    ),
  ),
  piece: v.exactOptional(
    v.pipe(
      v.picklist(wordsOf(FILE_WORDS.lining)),
      v.description(
        "Whether a piece in the free layer is lined up with its home. Left out: lined up while the case is new.",
      ),
    ),
  ),
  marked: v.exactOptional(
    v.pipe(
      v.boolean(),
      v.description(
        "Whether the pieces that matter are told apart from the others. Left out: until the case is kept.",
      ),
    ),
  ),
  "ways of answering": v.exactOptional(
    v.pipe(
      someOf(wordsOf(FILE_WORDS.answerWay)),
      v.description("The ways of answering allowed. Left out: all."),
    ),
  ),
};

const CEILING_FIELDS = {
  days: DECK_VALUES.everyDays,
  until: v.pipe(
    DECK_VALUES.day,
    v.description("The last day on which it holds, YYYY-MM-DD."),
  ),
  note: v.exactOptional(
    v.pipe(DECK_VALUES.deckNote, v.description("For yourself.")),
  ),
};

const DECK_FIELDS = {
  $schema: v.exactOptional(
    v.pipe(
      v.string(),
      v.description(
        "Where this description lies, for an editor that shows it while you write. Turnwise does not look at it and does not keep it.",
      ),
    ),
  ),
  id: v.exactOptional(
    v.pipe(
      DECK_VALUES.id,
      v.description(
        "A UUID. A file with the id of a deck that is already there changes that deck. Left out: a new deck.",
      ),
    ),
  ),
  name: DECK_VALUES.name,
  description: v.exactOptional(
    v.pipe(
      DECK_VALUES.description,
      v.description("One line that says what is in it."),
    ),
  ),
  message: v.exactOptional(
    v.pipe(
      DECK_VALUES.message,
      v.description("To the learner, shown with the deck."),
    ),
  ),
  note: v.exactOptional(
    v.pipe(
      DECK_VALUES.deckNote,
      v.description("For yourself: no learner sees it."),
    ),
  ),
  hold: v.exactOptional(
    v.pipe(
      DECK_VALUES.hold,
      v.description(
        "Where the first layer is held. Left out: as the learner likes.",
      ),
    ),
  ),
  "first colour": v.exactOptional(
    v.pipe(
      v.literal("the learner's"),
      v.description("Always the learner's own; a deck cannot choose it."),
    ),
  ),
  "new a round": v.exactOptional(
    v.pipe(
      DECK_VALUES.newPerRound,
      v.description(
        "How many cases that the learner has not met come into one round. Left out: 2.",
      ),
    ),
  ),
  stages: v.exactOptional(
    v.pipe(
      someOf(wordsOf(FILE_WORDS.stage)),
      v.description(
        "The order in which the stages' new cases come. Left out: the order of the cases.",
      ),
    ),
  ),
};

function ceilingOf<Fields extends v.GenericSchema>(fields: Fields) {
  return v.exactOptional(
    v.pipe(
      fields,
      v.description(
        "Every case comes again after so many days at least, however well it is known: for a weekly class.",
      ),
    ),
  );
}

function columnOf<Fields extends v.GenericSchema>(fields: Fields) {
  return v.pipe(
    v.array(fields),
    v.maxLength(DECK_LIMITS.cases),
    v.description("In the order in which they are learnt; no case twice."),
  );
}

/**
 * This version's own files: a field that it does not know is a slip of the
 * pen. `$schema` is for the editor in which a file is written: it is taken,
 * and not kept, for it names a place on the author's own machine.
 */
export const DECK_FILE = v.strictObject({
  ...DECK_FILE_HEAD.entries,
  ...DECK_FIELDS,
  "every case at least": ceilingOf(v.strictObject(CEILING_FIELDS)),
  cases: columnOf(v.strictObject(CASE_FIELDS)),
});

/** Files of a newer form that this version can read: fields that it does not know are kept. */
export const NEWER_DECK_FILE = v.looseObject({
  ...DECK_FILE_HEAD.entries,
  ...DECK_FIELDS,
  "every case at least": ceilingOf(v.looseObject(CEILING_FIELDS)),
  cases: columnOf(v.looseObject(CASE_FIELDS)),
});

/** A deck as its file says it. */
export type DeckFile = v.InferOutput<typeof DECK_FILE>;

/** One case as a deck file says it. */
export type DeckFileCase = DeckFile["cases"][number];
