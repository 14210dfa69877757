/** Sharing without being asked, for the page that tells what came of it. */
import { sharingErrorText } from "../../sharing-error-text";
import type { LearnerState } from "../learner.svelte";
import { shareNow } from "./share";
import { folderChosenBefore, sharerOf } from "./sharing-desk.svelte";
import { sentInWords } from "./sharing-words";

/** Lays what is new into the folder. Resolves with what to say; undefined where there is no folder, because results go by file. */
export async function shareByItself(
  learner: LearnerState,
): Promise<string | undefined> {
  const known = await folderChosenBefore(learner.database);
  if (!known.ok) return sharingErrorText(known.error);
  if (known.value.kind === "none") return undefined;
  if (known.value.kind === "asks")
    return sharingErrorText({ code: "not-allowed" });
  const sent = await shareNow(sharerOf(learner), known.value.folder);
  return sent.ok ? sentInWords(sent.value) : sharingErrorText(sent.error);
}
