/** The sum that tells whether bytes are those that were written. */

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

/** CRC-32 of ISO-HDLC over some bytes, one run after the other. */
export function crc32(...runs: ArrayLike<number>[]): number {
  let crc = 0xffffffff;
  for (const run of runs) for (let i = 0; i < run.length; i += 1) crc = TABLE[(crc ^ run[i]!) & 0xff]! ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}

/** The same of a text in UTF-8, in eight digits. */
export function sumOf(text: string): string {
  return crc32(new TextEncoder().encode(text)).toString(16).padStart(8, "0");
}
