/** Carries out what a key asks of the cube, and says it. */
import { turnInWords } from "../../../core/notation/say-in-words";
import type { CaseAttempt } from "../../state/practise/case-attempt.svelte";
import type { CubeKeyAction } from "../../state/practise/turn-keys";

/** Does it; returns what a screen reader says. Units: `at` on the page's running time. */
export function performAction(
  attempt: CaseAttempt,
  action: CubeKeyAction,
  at: number,
): string {
  switch (action.kind) {
    case "turn":
      attempt.turn(action.turn, at);
      return turnInWords(action.turn, "short");
    case "wide-next":
      attempt.wideNext = !attempt.wideNext;
      return attempt.wideNext ? "Two layers with the next letter" : "";
    case "take-back":
      attempt.takeBack(at);
      return "Taken back";
    case "start-over":
      attempt.startOver(at);
      return "Back to the start";
    case "look-underneath":
      attempt.looking.from("underneath", at);
      return attempt.looking.name === "underneath"
        ? "Looking underneath"
        : "Looking from the front";
    case "look-behind":
      attempt.looking.from("behind", at);
      return attempt.looking.name === "behind"
        ? "Looking behind"
        : "Looking from the front";
  }
}
