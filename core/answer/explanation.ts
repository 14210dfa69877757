/** What can be wrong with an answer. */
import type { CaseId } from "../cases/case-ids";
import type { HomeIndex } from "../cases/variant";
import type { Pieces } from "../cube/pieces";
import type { Quarters, Turn } from "../cube/turns";

/**
 * What is wrong with one turn: it is missing; it is one too many; it went the
 * other way round; it went not as far, or further; or another layer should
 * have been turned.
 */
export type TurnSlip =
  "missing" | "extra" | "reversed" | "amount" | "another-layer";

/**
 * One turn that is wrong.
 *
 * Shape: `index` counts the learner's own turns from 0; a missing turn belongs
 *        before the one there. `made` is absent where the turn is missing,
 *        `wanted` where it is one too many, both where the wrong turn became
 *        one with the turn beside it; as the learner then held the cube.
 */
export interface WrongTurn {
  readonly slip: TurnSlip;
  readonly index: number;
  readonly made?: Turn;
  readonly wanted?: Turn;
}

/**
 * Why an answer is not right.
 *
 * "from-known-way": its turns are those of a way that is known, changed as
 * told. "by-effect": whatever way it is, what it does to the cube is as told.
 */
export type Evidence = "from-known-way" | "by-effect";

/** The one explanation of an answer that is not right. */
export type Explanation =
  /** A way was begun and not finished. */
  | {
      readonly kind: "stopped-early";
      /** As they are turned from how the cube was held at the end. */
      readonly missing: readonly Turn[];
      /** Its last turn was wrong as told, and `missing` comes after the right one; absent: all turns were right. */
      readonly wrong?: WrongTurn;
    }
  /** The right turns, the free layer not lined up for them. */
  | {
      readonly kind: "lined-up-wrongly";
      /** Quarters by which the free layer had still to be turned before the answer. */
      readonly off: Quarters;
      /** That turn, as the cube was held then. */
      readonly wanted: Turn;
    }
  /** Others than those asked for were brought home, or into the home asked for. */
  | {
      readonly kind: "wrong-piece";
      readonly evidence: Evidence;
      readonly pieces: Pieces;
      /** Where they are now. */
      readonly into: HomeIndex;
      /** The case whose way it was, for the home asked for; absent: none that is known. */
      readonly case?: CaseId;
    }
  /** The piece faces as it should, in another home: its side colours are wrong. */
  | {
      readonly kind: "another-home";
      readonly evidence: Evidence;
      readonly home: HomeIndex;
    }
  | ({
      readonly kind: "one-turn";
      readonly evidence: Evidence;
      /** The answer with that turn put right. */
      readonly right: readonly Turn[];
    } & WrongTurn)
  /** Right for the case that a mirror shows. */
  | {
      readonly kind: "twin";
      readonly evidence: Evidence;
      readonly case: CaseId;
    }
  /** Right, had another side been in front; for a slot: had it been another slot, or the other hand's. */
  | {
      readonly kind: "other-side";
      readonly evidence: Evidence;
      /** The home that was taken for the one asked for: the side in front with it. */
      readonly asIf: HomeIndex;
    }
  /** The way backwards, or the way of the case that this one's answers make. */
  | {
      readonly kind: "inverse";
      readonly evidence: Evidence;
      /** Absent where the case has no inverse of its stage. */
      readonly case?: CaseId;
    }
  /** Right for another case. */
  | {
      readonly kind: "other-case";
      readonly evidence: Evidence;
      readonly case: CaseId;
      /** Quarters by which the free layer was off for it as well; absent: lined up, or no matter. */
      readonly off?: Quarters;
    }
  /** All that was asked for is as it should be, and others are no longer. */
  | { readonly kind: "others-lost"; readonly lost: Pieces }
  /** Nothing known explains it. */
  | { readonly kind: "unexplained" };

/** The case that was taken for the one shown: what the log keeps beside it. Undefined where the mistake was another. */
export function confusedWith(explanation: Explanation): CaseId | undefined {
  switch (explanation.kind) {
    case "twin":
    case "inverse":
    case "other-case":
      return explanation.case;
    case "stopped-early":
    case "lined-up-wrongly":
    case "wrong-piece":
    case "another-home":
    case "one-turn":
    case "other-side":
    case "others-lost":
    case "unexplained":
      return undefined;
  }
}
