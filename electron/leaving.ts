/**
 * Asking before something is lost: a page that has not kept everything yet
 * refuses to be left (its `beforeunload`), which Electron takes for a plain no
 * unless somebody asks. Closing, quitting and loading again all come by here;
 * a page that refuses nothing is left at once.
 */
import type { Dialog } from "electron";

/** As much of a page as asking needs. */
interface LeftPage {
  on(
    event: "will-prevent-unload",
    listener: (event: { preventDefault(): void }) => void,
  ): unknown;
}

/** Lets the person decide where a page refuses to be left. */
export function askBeforeLeaving(
  page: LeftPage,
  dialog: Pick<Dialog, "showMessageBoxSync">,
): void {
  page.on("will-prevent-unload", (event) => {
    // Electron wants the answer before the listener ends.
    const choice = dialog.showMessageBoxSync({
      type: "warning",
      message: "Something here is not kept yet.",
      detail: "If you leave now, it is lost.",
      buttons: ["Stay", "Leave"],
      defaultId: 0,
      cancelId: 0,
    });
    // To prevent the preventing is to leave.
    if (choice === 1) event.preventDefault();
  });
}
