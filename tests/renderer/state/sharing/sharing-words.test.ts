import { expect, it } from "vitest";
import type { Intake } from "../../../../renderer/state/sharing/intake";
import {
  intakeInWords,
  sentInWords,
} from "../../../../renderer/state/sharing/sharing-words";

const NOTHING: Intake = {
  arrivals: [],
  withdrawn: 0,
  leftOut: 0,
  known: 0,
  unread: [],
};

it("says of whom how many answers came, and that those that were here count once", () => {
  const ben = { learner: "ben", name: "Ben", answers: 2, wasHere: false };
  expect(intakeInWords({ ...NOTHING, arrivals: [ben] })).toEqual([
    "Ben: 2 answers.",
  ]);
  expect(
    intakeInWords({ ...NOTHING, arrivals: [{ ...ben, wasHere: true }] }),
  ).toEqual(["Ben: 2 answers.", "Answers that were here already count once."]);
  expect(
    intakeInWords({ ...NOTHING, arrivals: [{ ...ben, answers: 0 }] }),
  ).toEqual(["Ben: no new answer."]);
  expect(intakeInWords(NOTHING)).toEqual(["Nothing new came."]);
});

it("says what went along where no answer did", () => {
  const sent = { answers: 0, shown: 0, leftOut: 0 };
  expect(sentInWords(sent)).toBe("Nothing is new since you last shared.");
  expect(sentInWords({ ...sent, shown: 1 })).toBe(
    "Shared with your coach: 1 time shown the way.",
  );
  expect(sentInWords({ ...sent, answers: 2, shown: 1 })).toBe(
    "Shared with your coach: 2 answers.",
  );
});
