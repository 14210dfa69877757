/** A learner's log as a table for other programs. */
import type { Review } from "../memory/review";
import { type Column, columnOf, readableInstant } from "./table";

const column = columnOf<Review>;

/** The columns in their order. */
export const LOG_COLUMNS: readonly Column<Review>[] = [
  column("id", "text", "the answer’s own id, random", ({ id }) => id),
  column("learner", "text", "the learner’s id", ({ learner }) => learner),
  column("at", "ms since 1970, UTC", "when it was answered", ({ at }) => at),
  column(
    "time",
    "ISO 8601, UTC",
    "the same, to be read; in CSV only",
    ({ at }) => readableInstant(at),
  ),
  column(
    "utcOffset",
    "min",
    "how far the learner’s clock was ahead of UTC",
    ({ utcOffset }) => utcOffset,
  ),
  column(
    "localDay",
    "days since 1 January 1970",
    "the learner’s day, which turns over at night",
    ({ localDay }) => localDay,
  ),
  column("case", "case id", "which case it was", (review) => review.case),
  column(
    "hold",
    "up, down",
    "whether the first layer was held up or down",
    ({ hold }) => hold,
  ),
  column(
    "variant.home",
    "0–3",
    "which of the four homes: how many turns `y` of the solved cube bring the front one there; in the last layer, which side was in front",
    ({ variant }) => variant.home,
  ),
  column(
    "variant.placed",
    "numbers 0–3",
    "which other homes held their pieces, counted in the same way; none in the last layer",
    ({ variant }) => variant.placed.join(" "),
  ),
  column(
    "variant.turnedAway",
    "quarter turns",
    "how far the free layer was turned from lined up",
    ({ variant }) => variant.turnedAway,
  ),
  column(
    "variant.seenFrom",
    "quarter turns",
    "how far the whole cube was turned from the home in front",
    ({ variant }) => variant.seenFrom,
  ),
  column(
    "firstColour",
    "text",
    "the colour of the first layer",
    ({ firstColour }) => firstColour,
  ),
  column(
    "position",
    "54 letters",
    "the stickers that were shown, U R F D L B, ? where not known",
    ({ position }) => position,
  ),
  column(
    "answerWay",
    "on-screen, my-cube, write-it; which-is-it, find-it, where-is-home; on-paper",
    "the way of answering: turned, chosen, or written on a sheet; what was chosen counts for mix-ups alone",
    ({ answerWay }) => answerWay,
  ),
  column(
    "asking",
    "shown, helped, alone, again, extra",
    "how much was given with the question; extra: asked beyond the schedule, which memory does not hear of",
    ({ asking }) => asking,
  ),
  column(
    "verdict",
    "right, missed",
    "how it was judged",
    ({ verdict }) => verdict,
  ),
  column(
    "answeredAs",
    "case id",
    "the case that was taken for it: the answer was right for that one, or it was chosen; empty where not known",
    ({ answeredAs }) => answeredAs ?? "",
  ),
  column(
    "mistook.piece",
    "letters U R F D L B",
    "the piece that was asked for, or whose home was, by its sides on the solved cube; empty where no other was chosen",
    ({ mistook }) => mistook?.piece ?? "",
  ),
  column(
    "mistook.for",
    "letters U R F D L B",
    "the piece that was chosen in its place, or whose home was",
    ({ mistook }) => mistook?.for ?? "",
  ),
  column(
    "thinking",
    "ms",
    "from the case shown to the first turn that is not lining up; empty where not known",
    ({ thinking }) => thinking ?? "",
  ),
  column(
    "turning",
    "ms",
    "from that turn to the last; empty where not known",
    ({ turning }) => turning ?? "",
  ),
  column(
    "total",
    "ms",
    "from the case shown to the end of the answer",
    ({ total }) => total,
  ),
  column(
    "untimed",
    "true",
    "there where nobody took the time, as on paper, and `total` is 0",
    ({ untimed }) => untimed ?? "",
  ),
  column(
    "turns.turn",
    "notation",
    "the turns that were made, in order",
    ({ turns }) => turns.map(({ turn }) => turn).join(" "),
  ),
  column(
    "turns.at",
    "ms",
    "when each turn was made, from the case shown",
    ({ turns }) => turns.map(({ at }) => at).join(" "),
  ),
  column(
    "corrections",
    "count",
    "turns that were taken back, finger slips aside",
    ({ corrections }) => corrections,
  ),
  column(
    "slips",
    "count",
    "finger slips: taken back on the same layer within a second",
    ({ slips }) => slips,
  ),
  column(
    "hints",
    "piece, home, first-turn, whole-way",
    "the help that was asked for",
    ({ hints }) => hints.join(" "),
  ),
  column(
    "hintTimes",
    "ms",
    "when the last of them were asked for, from the case shown; empty where not known",
    ({ hintTimes = [] }) => hintTimes.join(" "),
  ),
  column(
    "looks",
    "count",
    "looks underneath, behind or around; empty where not counted",
    ({ looks }) => looks ?? "",
  ),
  column(
    "reported",
    "true, false",
    "whether the learner said how it ended, instead of the app seeing it",
    ({ reported }) => reported,
  ),
  column(
    "interrupted",
    "true, false",
    "whether the window closed during the answer, or it was left alone",
    ({ interrupted }) => interrupted,
  ),
  column("deck", "text", "the id of the deck", ({ deck }) => deck),
  column(
    "target",
    "s",
    "the time the deck asked for, for the whole answer",
    ({ target }) => target,
  ),
  column(
    "gradingVersion",
    "number",
    "the version of the grading then",
    ({ gradingVersion }) => gradingVersion,
  ),
  column(
    "weightsVersion",
    "number",
    "the version of the memory’s weights then",
    ({ weightsVersion }) => weightsVersion,
  ),
];
