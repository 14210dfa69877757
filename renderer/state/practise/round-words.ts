/** A round as marks, and as the sentences at its end. */
import type { CaseId } from "../../../core/cases/case-ids";
import type { PlannedCase } from "../../../core/memory/plan-candidates";
import { type Round, roundMarks } from "../../../core/memory/round";
import type { Outcome } from "../../../core/memory/grade";

/** One mark of the row. */
export type RoundMark = Outcome | "done" | "skipped" | "current" | "to-come";

/** The row of marks with its words. */
export interface RoundRow {
  readonly marks: readonly RoundMark[];
  readonly label: string;
}

/** What of a round is on the desk: its current item, or once more the one answered last. */
export type OnDesk = "current" | "once-more";

/** A round as its row. */
export function roundRow(round: Round, onDesk: OnDesk | undefined): RoundRow {
  const { done, toCome } = roundMarks(round);
  const marks: RoundMark[] = done.map((result) => {
    switch (result) {
      case "shown":
        return "done";
      case "skipped":
      case "quick":
      case "steady":
      case "slow":
      case "missed":
        return result;
    }
  });
  const coming = Array.from({ length: toCome }, (): RoundMark => "to-come");
  if (onDesk === "current" && coming.length > 0) coming[0] = "current";
  const all = done.length + toCome;
  return {
    marks: [...marks, ...coming],
    label: labelOf(done.length, all, onDesk),
  };
}

function labelOf(
  done: number,
  all: number,
  onDesk: OnDesk | undefined,
): string {
  switch (onDesk) {
    case "current":
      return `${done + 1} of ${all}`;
    case "once-more":
      return `${done} of ${all}`;
    case undefined:
      return `${done} of ${all} done`;
  }
}

/** As many marks around the current one as fit a narrow bar. */
export function marksThatFit(
  marks: readonly RoundMark[],
  room: number,
): readonly RoundMark[] {
  if (marks.length <= room) return marks;
  const first = marks.findIndex(
    (mark) => mark === "current" || mark === "to-come",
  );
  const at = first < 0 ? marks.length : first;
  const from = Math.min(
    Math.max(0, at - Math.floor(room / 2)),
    marks.length - room,
  );
  return marks.slice(from, from + room);
}

/** What came of a round, counted. */
export interface RoundSummary {
  readonly right: number;
  readonly missed: number;
  /** The cases that were asked, each once, in the order they first came. */
  readonly cases: readonly Pick<PlannedCase, "case" | "hold">[];
  /** Those of them that were missed at least once. */
  readonly missedCases: readonly Pick<PlannedCase, "case" | "hold">[];
  /** The cases that were new in this round. */
  readonly met: readonly CaseId[];
  /** Whether everything was asked beyond the schedule: no case comes back by it. */
  readonly isExtra: boolean;
}

/** Counts a round. */
export function summaryOf(round: Round): RoundSummary {
  const asked = round.results.filter(
    ({ outcome }) => outcome !== "shown" && outcome !== "skipped",
  );
  const missed = asked.filter(({ outcome }) => outcome === "missed");
  const unique = (ids: readonly CaseId[]) => [...new Set(ids)];
  const casesOf = (results: Round["results"]) =>
    unique(results.map((result) => result.case)).flatMap(
      (id) =>
        round.tracks.find(({ planned }) => planned.case === id)?.planned ?? [],
    );
  return {
    right: asked.length - missed.length,
    missed: missed.length,
    cases: casesOf(round.results),
    missedCases: casesOf(missed),
    met: unique(
      round.results
        .filter(({ outcome }) => outcome === "shown")
        .map((result) => result.case),
    ),
    isExtra: round.tracks.every(({ planned }) => planned.asking === "extra"),
  };
}
