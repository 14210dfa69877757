/**
 * A person's choices in file dialogs, laid down beforehand, and what they were
 * asked.
 */
import type { FileDialogs } from "../../electron/file-dialogs";

/** What a person will choose. */
interface Choices {
  readonly open?: string;
  readonly save?: string;
  readonly replace?: boolean;
  readonly folder?: string;
}

/** Dialogs that answer by themselves. */
export function standInDialogs(
  choices: Choices,
): FileDialogs & { readonly asked: string[] } {
  const asked: string[] = [];
  return {
    asked,
    placeToOpen: ({ words }) => {
      asked.push(`open ${words}`);
      return Promise.resolve(choices.open);
    },
    placeToSave: ({ words }, name) => {
      asked.push(`save ${words} as ${name}`);
      return Promise.resolve(choices.save);
    },
    folderToShare: () => {
      asked.push("folder");
      return Promise.resolve(choices.folder);
    },
    mayReplace: (name) => {
      asked.push(`replace ${name}`);
      return Promise.resolve(choices.replace ?? false);
    },
  };
}
