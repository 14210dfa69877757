import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  canRedo,
  canUndo,
  type EditHistory,
  MOST_STEPS,
  recordStep,
  redo,
  startHistory,
  stepToRedo,
  stepToUndo,
  undo,
} from "../../../core/deck/edit-history";

type History = EditHistory<number, string>;

function steps(count: number, start: History = startHistory(0)): History {
  let history = start;
  for (let i = 1; i <= count; i++)
    history = recordStep(history, `step ${i}`, i);
  return history;
}

describe("a history of edits", () => {
  it("has nothing to undo or redo before anything happened", () => {
    const history: History = startHistory(7);
    expect([canUndo(history), canRedo(history)]).toEqual([false, false]);
    expect(undo(history)).toBe(history);
    expect(redo(history)).toBe(history);
    expect(stepToUndo(history)).toBeUndefined();
    expect(stepToRedo(history)).toBeUndefined();
  });

  it("names the step that would be undone or redone", () => {
    const history = undo(steps(3));
    expect(history.value).toBe(2);
    expect(stepToUndo(history)).toBe("step 2");
    expect(stepToRedo(history)).toBe("step 3");
    expect(redo(history)).toEqual(steps(3));
  });

  it("forgets what was undone once something new is done", () => {
    const history = recordStep(undo(steps(3)), "other", 9);
    expect(canRedo(history)).toBe(false);
    expect(undo(history).value).toBe(2);
  });

  it("keeps the last 200 steps", () => {
    let history = steps(MOST_STEPS + 5);
    let undone = 0;
    for (; canUndo(history); undone++) history = undo(history);
    expect(undone).toBe(200);
    expect(history.value).toBe(5);
    for (; canRedo(history); undone--) history = redo(history);
    expect(undone).toBe(0);
    expect(history.value).toBe(MOST_STEPS + 5);
  });

  it("joins a step with the one before where both are the same and nothing was undone", () => {
    const joins = { joins: true };
    const typed = recordStep(
      recordStep(startHistory(0), "name", 1, joins),
      "name",
      2,
      joins,
    );
    expect(typed.value).toBe(2);
    expect(undo(typed).value).toBe(0);
    expect(canUndo(undo(typed))).toBe(false);
    const other = recordStep(typed, "note", 3, joins);
    expect(undo(other).value).toBe(2);
    const afterUndo = recordStep(undo(other), "name", 4, joins);
    expect(undo(afterUndo).value).toBe(2);
  });

  it("is at any time where a plain list of values would be", () => {
    const acts = fc.array(
      fc.oneof(fc.constant("undo"), fc.constant("redo"), fc.nat(99)),
      { maxLength: 60 },
    );
    fc.assert(
      fc.property(acts, (list) => {
        let history: EditHistory<number, string> = startHistory(-1);
        let values = [-1];
        let at = 0;
        for (const act of list) {
          if (act === "undo") {
            history = undo(history);
            at = Math.max(0, at - 1);
          } else if (act === "redo") {
            history = redo(history);
            at = Math.min(values.length - 1, at + 1);
          } else if (typeof act === "number") {
            history = recordStep(history, "step", act);
            values = [...values.slice(0, at + 1), act];
            at++;
          }
          expect(history.value).toBe(values[at]);
          expect(canUndo(history)).toBe(at > 0);
          expect(canRedo(history)).toBe(at < values.length - 1);
        }
      }),
    );
  });
});
