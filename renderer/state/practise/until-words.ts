/** Until when a case should last, after an answer to it. */
import type { Asking, LocalDay } from "../../../core/memory/review";
import type { Memory, MemoryState } from "../../../core/memory/schedule";
import { capitalised } from "../../../core/notation/sentence";
import { dayInWords } from "../../components/time-words";

/** What the memory of a case is, before and after an answer. */
export interface MemoryChange {
  readonly before: Memory | undefined;
  readonly after: Memory | undefined;
  readonly state: MemoryState;
  readonly today: LocalDay;
  /** Whether the case is asked again in this round. */
  readonly comesAgain: boolean;
  readonly isMissed: boolean;
  readonly asking: Asking;
}

/** Two lines: what is to be expected, and the memory in a word with what it was. */
export interface UntilWords {
  readonly line: string;
  readonly more: string;
}

/** "on Thursday", but "today" and "tomorrow" as they are. */
function onDay(day: LocalDay, today: LocalDay): string {
  const name = dayInWords(day, today);
  return name === "today" || name === "tomorrow" ? name : `on ${name}`;
}

/** The words under an answer. */
export function untilWords(change: MemoryChange): UntilWords {
  const { before, after, state, today, comesAgain, isMissed } = change;
  const again = comesAgain ? "You will see it again in this round" : "";
  const memory =
    isMissed && state === "fading"
      ? "Fading: it was missed this time."
      : `${capitalised(state)}.`;
  if (after === undefined)
    return {
      line: again === "" ? "You have met this case." : `${again}.`,
      more: `${memory} It counts from the first answer without the way in sight.`,
    };
  const until = after.lastsUntil;
  if (isMissed) {
    const next = until <= today ? "tomorrow" : onDay(until, today);
    const had =
      before === undefined || before.lastsUntil <= today || before === after
        ? ""
        : ` Before this answer it should have lasted until ${dayInWords(before.lastsUntil, today)}.`;
    return {
      line: again === "" ? `It comes back ${next}.` : `${again}, then ${next}.`,
      more: memory + had,
    };
  }
  // Asked beside the schedule, a case stays as due as it was.
  if (until <= today)
    return {
      line: again === "" ? "It is still due today." : `${again}.`,
      more: memory,
    };
  const line = `Should last until ${dayInWords(until, today)}.`;
  return { line, more: again === "" ? memory : `${memory} ${again}.` };
}
