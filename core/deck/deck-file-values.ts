/** From a deck as its file says it to a deck as the app keeps it, and back. */
import type { CaseId } from "../cases/case-ids";
import { caseEntry, parseCaseId } from "../cases/case-table";
import { present } from "../invariant";
import type { Deck, DeckCase, DeckWay, UnknownFields } from "./deck";
import type { ValuePath } from "./deck-fault";
import {
  DECK_FILE,
  DECK_FILE_VERSION,
  type DeckFile,
  type DeckFileCase,
  FILE_WORDS,
  SCHOOL_WORDS,
} from "./deck-file-schema";

/** How many new cases a round brings where a file does not say. */
export const USUAL_NEW_PER_ROUND = 2;

/** A deck that may have no id yet: whoever takes it in gives it one. */
export type DeckDraft = Omit<Deck, "id"> & { readonly id?: string };

/** The names in a file of a case's fields. */
const CASE_KEYS = {
  case: "case",
  target: "target",
  way: "way",
  note: "note",
  placed: "others placed",
  home: "home",
  lining: "piece",
  pieces: "marked",
  answerWays: "ways of answering",
} as const satisfies Partial<Record<keyof DeckCase, keyof DeckFileCase>>;

/** The path in a file of a value of a deck; `places` are the places in the file of the deck's cases. */
export function filePath(
  path: ValuePath,
  places: readonly number[],
): ValuePath {
  const [field, place, key, ...rest] = path;
  if (field === "ceiling") return ["every case at least", ...path.slice(1)];
  if (field !== "cases" || typeof place !== "number") return path;
  const named = Object.entries(CASE_KEYS).find(([own]) => own === key)?.[1];
  return [field, places[place] ?? place, named ?? `${key}`, ...rest];
}

function keyOfWord<Key extends string>(
  words: Readonly<Record<Key, string>>,
  word: string,
): Key {
  const keys = Object.keys(words) as Key[];
  return present(
    keys.find((key) => words[key] === word),
    "the schema knows the words",
  );
}

/** The fields of which the schema knows nothing; undefined where there are none. */
function unknownFields(
  value: object,
  known: object,
): { readonly extra?: UnknownFields } {
  const fields = Object.entries(value).filter(
    ([key]) => !Object.hasOwn(known, key),
  );
  return fields.length === 0 ? {} : { extra: Object.fromEntries(fields) };
}

function wayFromText(text: string): DeckWay {
  const known = SCHOOL_WORDS.find(({ word }) => word === text);
  if (known === undefined) return { kind: "turns", turns: text };
  const { school, hand } = known;
  return { kind: "school", school, ...(hand === undefined ? {} : { hand }) };
}

function textFromWay(way: DeckWay): string {
  if (way.kind === "turns") return way.turns;
  const { school, hand } = way;
  return present(
    SCHOOL_WORDS.find((word) => word.school === school && word.hand === hand),
    "every school has words",
  ).word;
}

const CASE_ENTRIES = DECK_FILE.entries.cases.item.entries;
const CEILING_ENTRIES =
  DECK_FILE.entries["every case at least"].wrapped.entries;

function caseFromFile(id: CaseId, written: DeckFileCase): DeckCase {
  const { target, way, note, home, piece, marked } = written;
  const placed = written["others placed"];
  const ways = written["ways of answering"];
  const words = FILE_WORDS;
  return {
    case: id,
    target: target ?? caseEntry(id).targets.starting,
    ...(way === undefined ? {} : { way: wayFromText(way) }),
    ...(note === undefined ? {} : { note }),
    ...(placed === undefined ? {} : { placed }),
    ...(home === undefined ? {} : { home: keyOfWord(words.home, home) }),
    ...(piece === undefined ? {} : { lining: keyOfWord(words.lining, piece) }),
    ...(marked === undefined ? {} : { pieces: marked ? "marked" : "unmarked" }),
    ...(ways === undefined
      ? {}
      : { answerWays: ways.map((way) => keyOfWord(words.answerWay, way)) }),
    ...unknownFields(written, CASE_ENTRIES),
  };
}

/** A case of a file that this version does not have. */
export interface UnknownCase {
  readonly id: string;
  /** Its place in the file's list, counted from 0. */
  readonly index: number;
}

/** What a file says, and where in it. */
export interface DeckFromFile {
  readonly deck: DeckDraft;
  readonly unknownCases: readonly UnknownCase[];
  /** The places in the file of the deck's cases. */
  readonly places: readonly number[];
}

/** The deck that a file says, its cases that nobody knows set apart. */
export function deckFromFile(file: DeckFile): DeckFromFile {
  const read = file.cases.map((written, index) => {
    const id = parseCaseId(written.case);
    return { index, written, id };
  });
  const known = read.flatMap(({ index, written, id }) =>
    id === undefined ? [] : [{ index, made: caseFromFile(id, written) }],
  );
  const { id, hold, stages, message, note, version } = file;
  const ceiling = file["every case at least"];
  const unknown = unknownFields(file, DECK_FILE.entries);
  const deck: DeckDraft = {
    // Ids are compared letter by letter everywhere else.
    ...(id === undefined ? {} : { id: id.toLowerCase() }),
    name: file.name.trim(),
    description: file.description ?? "",
    cases: known.map(({ made }) => made),
    newPerRound: file["new a round"] ?? USUAL_NEW_PER_ROUND,
    ...(hold === undefined ? {} : { hold }),
    ...(stages === undefined
      ? {}
      : { stages: stages.map((stage) => keyOfWord(FILE_WORDS.stage, stage)) }),
    ...(ceiling === undefined
      ? {}
      : {
          ceiling: {
            everyDays: ceiling.days,
            until: ceiling.until,
            ...(ceiling.note === undefined ? {} : { note: ceiling.note }),
            ...unknownFields(ceiling, CEILING_ENTRIES),
          },
        }),
    ...(message === undefined ? {} : { message }),
    ...(note === undefined ? {} : { note }),
    ...(version > DECK_FILE_VERSION
      ? {
          extra: {
            version,
            readableFrom: file.readableFrom ?? version,
            fields: unknown.extra ?? {},
          },
        }
      : {}),
  };
  return {
    deck,
    unknownCases: read.flatMap(({ index, written, id: known }) =>
      known === undefined ? [{ id: written.case, index }] : [],
    ),
    places: known.map(({ index }) => index),
  };
}

function caseToFile(deckCase: DeckCase, isNewer: boolean): object {
  const { way, home, lining, pieces, answerWays } = deckCase;
  return {
    case: deckCase.case,
    target: deckCase.target,
    way: way === undefined ? undefined : textFromWay(way),
    note: deckCase.note,
    "others placed": deckCase.placed,
    home: home === undefined ? undefined : FILE_WORDS.home[home],
    piece: lining === undefined ? undefined : FILE_WORDS.lining[lining],
    marked: pieces === undefined ? undefined : pieces === "marked",
    "ways of answering": answerWays?.map((way) => FILE_WORDS.answerWay[way]),
    ...(isNewer ? deckCase.extra : {}),
  };
}

/** What a file says of a deck, in the order in which it is written; fields left out are undefined. */
export function fileFromDeck(
  deck: DeckDraft,
): Readonly<Record<string, unknown>> {
  const { ceiling, extra } = deck;
  // A case that came from a deck of a newer form leaves its new fields there.
  const isNewer = extra !== undefined;
  return {
    turnwise: "deck",
    version: extra?.version ?? DECK_FILE_VERSION,
    readableFrom: extra?.readableFrom ?? DECK_FILE_VERSION,
    id: deck.id,
    name: deck.name,
    description: deck.description,
    message: deck.message,
    note: deck.note,
    hold: deck.hold,
    "first colour": "the learner's",
    "new a round": deck.newPerRound,
    stages: deck.stages?.map((stage) => FILE_WORDS.stage[stage]),
    "every case at least":
      ceiling === undefined
        ? undefined
        : {
            days: ceiling.everyDays,
            until: ceiling.until,
            note: ceiling.note,
            ...(isNewer ? ceiling.extra : {}),
          },
    ...extra?.fields,
    cases: deck.cases.map((deckCase) => caseToFile(deckCase, isNewer)),
  };
}
