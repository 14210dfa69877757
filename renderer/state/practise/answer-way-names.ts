import type { AnswerWay } from "../../../core/memory/review";

/** The ways of answering as a learner reads them. */
export const ANSWER_WAY_NAMES: Readonly<Record<AnswerWay, string>> = {
  "on-screen": "On screen",
  "my-cube": "My cube",
  "write-it": "Write it",
  "which-is-it": "Which is it?",
  "find-it": "Find it",
  "where-is-home": "Where is home?",
  "on-paper": "On paper",
};
