/** Digests, by the browser's own means. */

/** The SHA-256 of some bytes (FIPS 180-4). Shape: 64 hexadecimal digits, lower case. */
export async function sha256(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = await crypto.subtle.digest("SHA-256", bytes);
  return Array.from(new Uint8Array(digest), (byte) =>
    byte.toString(16).padStart(2, "0"),
  ).join("");
}
