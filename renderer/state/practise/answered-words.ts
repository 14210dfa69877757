/** What is said of an answer, right or missed: one sentence and what helps on. */
import { startOf } from "../../../core/cases/position";
import { applyTurns } from "../../../core/cube/held-cube";
import type { ColourScheme } from "../../../core/picture/colour-sets";
import type { AnsweredCase } from "./answered-case.svelte";
import type { DiagnosisWords } from "./confusion-words";
import { diagnosisWords } from "./diagnosis-words";
import { lastTurnInWords } from "./last-turn";
import { lookFirstInWords } from "./look-first";
import { missWords } from "./miss-words";
import { rightWords } from "./right-words";

const NOTHING_LOST = {
  lost: { corners: [], edges: [] },
  missing: { corners: [], edges: [] },
} as const;

/** How it is said. */
export interface SayingChoice {
  readonly scheme: ColourScheme;
  /** Whether turns are also written. */
  readonly withNotation: boolean;
}

/** The words about an answer, and what of the picture they speak of. */
export function answeredWords(
  { attempt, given, review, outcome, diagnosis, usual }: AnsweredCase,
  { scheme, withNotation }: SayingChoice,
): DiagnosisWords {
  const { position } = attempt;
  const { verdict, turns, reported, shownTheWay } = given;
  const after = applyTurns(startOf(position), turns);
  if (verdict.right && !shownTheWay)
    return {
      ...rightWords(review, outcome, {
        lookFirst: lookFirstInWords(position.case, scheme),
        usual,
        // What was reported nobody saw: how its top is turned is not known.
        lastTurn: reported ? undefined : lastTurnInWords(position, after),
      }),
      leaders: undefined,
    };
  const { explanation } = diagnosis;
  const explained =
    explanation === undefined || shownTheWay || reported
      ? undefined
      : diagnosisWords({ position, turns, scheme, withNotation }, explanation);
  return (
    explained ?? {
      ...missWords({
        position,
        verdict: verdict.right
          ? { right: false, pieceState: "placed", ...NOTHING_LOST }
          : verdict,
        after,
        scheme,
        hasTurned: turns.length > 0,
        shownTheWay,
        reported,
      }),
      leaders: undefined,
    }
  );
}
