/** The licences that are shipped beside the page. */

/** Reads them; undefined where the file is not there. */
export async function readLicences(): Promise<string | undefined> {
  try {
    const answer = await fetch("./licences.txt");
    return answer.ok ? await answer.text() : undefined;
  } catch {
    return undefined;
  }
}
