/** Whether a question is open over the page: while it is, every key is the question's. */

/** Whether a dialog is open. */
export function isDialogOpen(): boolean {
  return document.querySelector("dialog[open]") !== null;
}

/**
 * Whether a key is a dialog's, so that no page acts on it: while one is open
 * every key is, wherever the focus has fallen, and so is the press in it that
 * has just closed it.
 */
export function isDialogsKey({
  target,
}: Pick<KeyboardEvent, "target">): boolean {
  const isWithin = target instanceof Element && target.closest("dialog");
  return Boolean(isWithin) || isDialogOpen();
}
