/**
 * Undo and redo of any kind of value: the values themselves are kept instead
 * of what was done to them, because a deck is small, its edits share all that
 * they leave alone, and a value cannot be undone wrongly.
 */

/** How many steps can be undone; the oldest are forgotten first. */
export const MOST_STEPS = 200;

/** A step: what it was, and the value on the other side of it. */
interface Step<Value, Label> {
  readonly label: Label;
  readonly value: Value;
}

/** A value with what it was before, and what was undone. */
export interface EditHistory<Value, Label> {
  readonly value: Value;
  /** The values before each step, the last step last. */
  readonly past: readonly Step<Value, Label>[];
  /** The values after each undone step, the next to redo last. */
  readonly undone: readonly Step<Value, Label>[];
}

/** A history in which nothing has happened yet. */
export function startHistory<Value, Label>(
  value: Value,
): EditHistory<Value, Label> {
  return { value, past: [], undone: [] };
}

/**
 * The history after a step. What had been undone can no longer be redone.
 *
 * `joins` makes it one step with the last one, where that has the same label
 * and nothing was undone since: a text is undone as a whole and not letter by
 * letter.
 */
export function recordStep<Value, Label>(
  history: EditHistory<Value, Label>,
  label: Label,
  value: Value,
  { joins = false }: { readonly joins?: boolean } = {},
): EditHistory<Value, Label> {
  const { past, undone } = history;
  const isJoined = joins && undone.length === 0 && past.at(-1)?.label === label;
  const steps = isJoined ? past : [...past, { label, value: history.value }];
  return { value, past: steps.slice(-MOST_STEPS), undone: [] };
}

/** The label of the step that undoing would take back; undefined where there is none. */
export function stepToUndo<Value, Label>(
  history: EditHistory<Value, Label>,
): Label | undefined {
  return history.past.at(-1)?.label;
}

/** The label of the step that redoing would make again; undefined where there is none. */
export function stepToRedo<Value, Label>(
  history: EditHistory<Value, Label>,
): Label | undefined {
  return history.undone.at(-1)?.label;
}

/** Whether there is a step to take back. */
export function canUndo(history: EditHistory<unknown, unknown>): boolean {
  return history.past.length > 0;
}

/** Whether there is a step to make again. */
export function canRedo(history: EditHistory<unknown, unknown>): boolean {
  return history.undone.length > 0;
}

/** The history with its last step taken back; itself where there is none. */
export function undo<Value, Label>(
  history: EditHistory<Value, Label>,
): EditHistory<Value, Label> {
  const step = history.past.at(-1);
  if (step === undefined) return history;
  return {
    value: step.value,
    past: history.past.slice(0, -1),
    undone: [...history.undone, { label: step.label, value: history.value }],
  };
}

/** The history with its last undone step made again; itself where there is none. */
export function redo<Value, Label>(
  history: EditHistory<Value, Label>,
): EditHistory<Value, Label> {
  const step = history.undone.at(-1);
  if (step === undefined) return history;
  return {
    value: step.value,
    past: [...history.past, { label: step.label, value: history.value }],
    undone: history.undone.slice(0, -1),
  };
}
