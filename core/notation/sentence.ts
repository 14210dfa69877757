/** What English needs to make a sentence of words. */

/** The same text with a capital letter first. */
export function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Words as a list: "a", "a and b", "a, b and c"; empty for none. */
export function listInWords(words: readonly string[]): string {
  const last = words.at(-1) ?? "";
  const before = words.slice(0, -1);
  return before.length === 0 ? last : `${before.join(", ")} and ${last}`;
}
