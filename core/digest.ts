/**
 * A digest of a stream of words, for telling two things apart that nobody
 * forges: two with the same one are the same but for a chance of one in 2^64
 * or so. No protection against somebody who wants two to agree.
 */

/** What FNV-1a begins with and multiplies by. Source: draft-eastlake-fnv, 32 bits. */
const FNV_START = 0x811c9dc5;
const FNV_PRIME = 0x01000193;

/** A digest that grows word by word. What it comes to is in codes on paper: never changed. */
export class Digest {
  #forward = FNV_START;
  #mixed = ~FNV_START;

  /** Takes a word. Units: 32 bits, signed or not. */
  take(word: number): void {
    this.#forward = Math.imul(this.#forward ^ word, FNV_PRIME);
    // Multiplying carries upwards only; this one turns the high bits down.
    const turned = (this.#mixed << 13) | (this.#mixed >>> 19);
    this.#mixed = Math.imul(turned, 5) ^ word;
  }

  /** Takes a text, letter by letter. */
  takeText(text: string): void {
    for (let i = 0; i < text.length; i++) this.take(text.charCodeAt(i));
  }

  /** FNV-1a by whole words. Units: 32 bits, signed. */
  get forward(): number {
    return this.#forward;
  }

  /** The other half. Units: 32 bits, signed. */
  get mixed(): number {
    return this.#mixed;
  }
}
