/** Says something aloud, where the machine has a voice: for who looks at a cube and not at the screen. */
export function sayAloud(text: string): void {
  if (!("speechSynthesis" in globalThis)) return;
  const words = new SpeechSynthesisUtterance(text);
  words.lang = "en";
  speechSynthesis.cancel();
  speechSynthesis.speak(words);
}

/** Says no more. */
export function stopSaying(): void {
  if ("speechSynthesis" in globalThis) speechSynthesis.cancel();
}
