/** Who of a class needs something else than its lesson, as the coach reads it. */
import type { Lesson } from "../../../../core/class/lesson";
import { type ClassReader, NAMED, someNames } from "./class-words";

type BesideTheLesson = Pick<
  Lesson,
  "kind" | "alone" | "hold" | "otherHold" | "away" | "notBegun"
>;

/** Who is stuck but not helped by the lesson, and who holds the cube otherwise. */
function besideSentences(
  { kind, alone, hold, otherHold }: BesideTheLesson,
  { nameOf }: Pick<ClassReader, "nameOf">,
): readonly string[] {
  const sentences: string[] = [];
  if (alone.length > 0) {
    const [are, need] = alone.length === 1 ? ["is", "needs"] : ["are", "need"];
    const where = kind === "stuck" ? " at other cases" : "";
    sentences.push(
      `${someNames(alone.map(nameOf), NAMED)} ${are} stuck${where}, and ${need} a moment alone with you.`,
    );
  }
  if (otherHold.length > 0) {
    const holds = otherHold.length === 1 ? "holds" : "hold";
    const place = hold === "down" ? "at the bottom" : "on top";
    sentences.push(
      `${someNames(otherHold.map(nameOf), NAMED)} ${holds} the cube the other way up: this lesson and its sheets have the first layer ${place}.`,
    );
  }
  return sentences;
}

/** Who needs something else than the lesson: who is stuck elsewhere, holds the cube the other way up, has not practised for over a week, or has never answered, in a sentence each. */
export function otherSentences(
  lesson: BesideTheLesson,
  reader: Pick<ClassReader, "nameOf">,
): readonly string[] {
  const { away, notBegun } = lesson;
  const { nameOf } = reader;
  const sentences: string[] = [...besideSentences(lesson, reader)];
  const names = away.map(({ member }) => nameOf(member));
  const [only] = away;
  if (only !== undefined && away.length === 1)
    sentences.push(
      `${nameOf(only.member)} has not practised for ${only.days} days.`,
    );
  else if (away.length > 1)
    sentences.push(
      `${someNames(names, NAMED)} have not practised for over a week.`,
    );
  if (notBegun.length > 0) {
    const verb = notBegun.length === 1 ? "has" : "have";
    const new_ = someNames(notBegun.map(nameOf), NAMED);
    sentences.push(`${new_} ${verb} not answered anything yet.`);
  }
  return sentences;
}
