/** Names for what is made on this device. */

const LETTERS = "0123456789abcdefghjkmnpqrstvwxyz";
const LENGTH = 16;

/** Sixteen letters and digits at random (80 bits); works on plain http, where randomUUID is missing. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(LENGTH));
  return Array.from(bytes, (byte) => LETTERS[byte % LETTERS.length]).join("");
}
