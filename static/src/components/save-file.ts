/** Hands a file to the browser, which keeps it where downloads go. */

/** A browser has taken the file over well before. */
const LET_GO_MS = 60_000;

export function saveFile(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), LET_GO_MS);
}
