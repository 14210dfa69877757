/** Ids that follow from a name, where the same thing entered twice must be one. */

/** The bytes of a UUID. */
const BYTES = 16;

/**
 * The UUID that belongs to a name: half of its SHA-256.
 *
 * Source: RFC 9562, 5.8 (version 8, for ids that are made in a way of one's own).
 */
export async function namedId(name: string): Promise<string> {
  const digest = await crypto.subtle.digest(
    "SHA-256",
    new TextEncoder().encode(name),
  );
  const bytes = new Uint8Array(digest).slice(0, BYTES);
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x80;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0"));
  return hex
    .join("")
    .replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}
