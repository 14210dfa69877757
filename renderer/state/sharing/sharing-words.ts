/** What was shared, taken back and taken in, in words. */
import type { Intake } from "./intake";
import type { Sent } from "./share";

function counted(count: number, one: string, many: string): string {
  return count === 1 ? `1 ${one}` : `${count.toLocaleString("en")} ${many}`;
}

/** What went into the folder. */
export function sentInWords({ answers, shown, leftOut }: Sent): string {
  const odd =
    leftOut === 0
      ? ""
      : ` ${counted(leftOut, "answer is", "answers are")} too odd to be shared and stay here.`;
  if (answers + shown === 0)
    return `Nothing is new since you last shared.${odd}`;
  const what =
    answers === 0
      ? counted(shown, "time shown the way", "times shown the way")
      : counted(answers, "answer", "answers");
  return `Shared with your coach: ${what}.${odd}`;
}

/** So many people are named one by one. */
const MOST_TOLD = 20;

/** What a look came to, a sentence each; what could not be read is told apart. */
export function intakeInWords(intake: Intake): readonly string[] {
  const { arrivals, withdrawn, leftOut, unread } = intake;
  const more = arrivals.length - MOST_TOLD;
  const came = arrivals
    .slice(0, MOST_TOLD)
    .map(
      ({ name, answers }) =>
        `${name}: ${answers === 0 ? "no new answer" : counted(answers, "answer", "answers")}.`,
    );
  const others = [
    ...(more > 0
      ? [`And ${counted(more, "more person", "more people")}.`]
      : []),
    ...(withdrawn === 0
      ? []
      : [
          `${counted(withdrawn, "person has", "people have")} taken back what they had shared.`,
        ]),
    ...(leftOut === 0
      ? []
      : [
          `${counted(leftOut, "file is", "files are")} of somebody whose results were deleted here, and stays away.`,
        ]),
    // A file that is handed over holds everything, what came before as well.
    ...(arrivals.some(({ wasHere }) => wasHere)
      ? ["Answers that were here already count once."]
      : []),
  ];
  const all = [...came, ...others];
  return all.length > 0 || unread.length > 0 ? all : ["Nothing new came."];
}
