/** The keys of the desk that are no turns: going on, help, leaving, taking back. */
import { isDialogsKey } from "../../platform/open-dialog";

/** What a key of the desk asks for. */
export type DeskKey = "go-on" | "hint" | "leave" | "take-back";

const KEYS: Readonly<Record<string, DeskKey>> = {
  Enter: "go-on",
  "?": "hint",
  Escape: "leave",
  Backspace: "take-back",
};

/** Whether a key belongs to an open question or to the control that has the focus. */
function isTaken(event: KeyboardEvent): boolean {
  const { target, key } = event;
  if (isDialogsKey(event)) return true;
  if (!(target instanceof Element)) return false;
  if (key === "Escape" || key === "?") return target.closest("select") !== null;
  if (key === "Enter") return target.closest("button, a, select") !== null;
  const writes = target.closest("input:not([type=radio]), select, textarea");
  return writes !== null;
}

/** What a key that was pressed asks of the desk; undefined where it is no key of the desk, or somebody else's. */
export function deskKey(event: KeyboardEvent): DeskKey | undefined {
  if (event.defaultPrevented || event.repeat || isTaken(event))
    return undefined;
  if (event.ctrlKey || event.metaKey || event.altKey) return undefined;
  return Object.hasOwn(KEYS, event.key) ? KEYS[event.key] : undefined;
}
