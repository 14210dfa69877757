/** The keys of a case that is shown to a class: a keyboard's, and what a presenter's remote sends in their place. */
import { isDialogsKey } from "../../platform/open-dialog";

/** What a key asks for. */
export type ShowAction =
  | "next"
  | "previous"
  /** One step more, and after the last one the next case. */
  | "on"
  /** One step less, and from the first one the case before. */
  | "back"
  | "blank"
  | "full-screen"
  | "leave";

// Common practice: remotes that pass for a keyboard send PageDown and PageUp
// for their two large buttons, F5 or Escape for the third, and `b` or `.` for
// the one that blanks. Many have only the two: everything is reached by them.
const ACTIONS: Readonly<Record<string, ShowAction>> = {
  ArrowRight: "next",
  ArrowLeft: "previous",
  PageDown: "on",
  PageUp: "back",
  " ": "on",
  Enter: "on",
  Backspace: "back",
  b: "blank",
  ".": "blank",
  f: "full-screen",
  F5: "full-screen",
  Escape: "leave",
};

/** Keys that press whatever button has the focus. */
const PRESSING = [" ", "Enter"];

type ShowKey = Pick<
  KeyboardEvent,
  "key" | "ctrlKey" | "metaKey" | "altKey" | "target"
>;

/** What a key asks for; undefined: nothing, or it is the focused button's or an open question's. */
export function showKey({
  key,
  ctrlKey,
  metaKey,
  altKey,
  target,
}: ShowKey): ShowAction | undefined {
  if (isDialogsKey({ target })) return undefined;
  if (ctrlKey || metaKey || altKey) return undefined;
  const isPress =
    PRESSING.includes(key) &&
    target instanceof Element &&
    target.closest("button, a") !== null;
  if (isPress) return undefined;
  return ACTIONS[key.length === 1 ? key.toLowerCase() : key];
}
