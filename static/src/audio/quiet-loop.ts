/** Silence in a loop: systems give the keys of headphones and the lock screen only to a page whose media element plays. */

const RATE = 8000;
/** Shorter media get no keys in Chromium, which asks for 5 s [M: from memory of its media session]. */
const SECONDS = 10;

/** A media element that plays silence once it is told to. */
export function quietLoop(): HTMLAudioElement {
  const element = new Audio(URL.createObjectURL(new Blob([silence()], { type: "audio/wav" })));
  element.loop = true;
  return element;
}

/** A WAV file of 8-bit samples, all of them at rest. */
export function silence(): ArrayBuffer {
  const length = RATE * SECONDS;
  const file = new DataView(new ArrayBuffer(44 + length));
  const text = (at: number, letters: string) => [...letters].forEach((letter, index) => file.setUint8(at + index, letter.charCodeAt(0)));
  text(0, "RIFF");
  file.setUint32(4, 36 + length, true);
  text(8, "WAVEfmt ");
  file.setUint32(16, 16, true);
  file.setUint16(20, 1, true);
  file.setUint16(22, 1, true);
  file.setUint32(24, RATE, true);
  file.setUint32(28, RATE, true);
  file.setUint16(32, 1, true);
  file.setUint16(34, 8, true);
  text(36, "data");
  file.setUint32(40, length, true);
  new Uint8Array(file.buffer, 44).fill(128);
  return file.buffer;
}
