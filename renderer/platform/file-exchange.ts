/**
 * Files between the page and the person: one they choose, one that is handed
 * to them. In a browser both go through its own dialogs and its downloads.
 */

/** Lets a person choose a file; undefined where they chose none. Shape: `endings` with their dots. */
export function chooseFile(
  endings: readonly string[],
): Promise<File | undefined> {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = endings.join(",");
  return new Promise((resolve) => {
    input.addEventListener("cancel", () => resolve(undefined));
    input.addEventListener("change", () => resolve(input.files?.[0]));
    input.click();
  });
}

/** Lets a person choose files; none where they chose none. Shape: `endings` with their dots. */
export function chooseFiles(
  endings: readonly string[],
): Promise<readonly File[]> {
  const input = document.createElement("input");
  input.type = "file";
  input.multiple = true;
  input.accept = endings.join(",");
  return new Promise((resolve) => {
    input.addEventListener("cancel", () => resolve([]));
    input.addEventListener("change", () => resolve([...(input.files ?? [])]));
    input.click();
  });
}

/** Hands a file over under a name. Resolves when the browser has taken it. */
export function offerFile(name: string, file: Blob): Promise<void> {
  const address = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The download has begun by the next task; a revoked address cannot break it.
  return new Promise((resolve) =>
    setTimeout(() => {
      URL.revokeObjectURL(address);
      resolve();
    }),
  );
}
