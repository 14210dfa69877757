/** The keys of a case that is shown to a class: a keyboard's, and what a presenter's remote sends in their place. */

/** What a key asks for. */
export type ShowAction =
  | "next"
  | "previous"
  | "reveal"
  | "take-back"
  | "blank"
  | "full-screen"
  | "leave";

// Common practice: remotes that pass for a keyboard send PageDown and PageUp
// for their two large buttons, F5 or Escape for the third, and `b` or `.` for
// the one that blanks.
const ACTIONS: Readonly<Record<string, ShowAction>> = {
  ArrowRight: "next",
  PageDown: "next",
  ArrowLeft: "previous",
  PageUp: "previous",
  " ": "reveal",
  Enter: "reveal",
  Backspace: "take-back",
  b: "blank",
  ".": "blank",
  F5: "full-screen",
  Escape: "leave",
};

/** Keys that press whatever button has the focus. */
const PRESSING = [" ", "Enter"];

type ShowKey = Pick<
  KeyboardEvent,
  "key" | "ctrlKey" | "metaKey" | "altKey" | "target"
>;

/** What a key asks for; undefined: nothing, or it is the focused button's. */
export function showKey({
  key,
  ctrlKey,
  metaKey,
  altKey,
  target,
}: ShowKey): ShowAction | undefined {
  if (ctrlKey || metaKey || altKey) return undefined;
  const isPress =
    PRESSING.includes(key) &&
    target instanceof Element &&
    target.closest("button, a") !== null;
  if (isPress) return undefined;
  return ACTIONS[key.length === 1 ? key.toLowerCase() : key];
}
