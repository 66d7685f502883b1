/** For screens whose buttons change under the finger: a second press at once, in the same place, is a slip, and none. */

const SLIP_MS = 300;
const FINGER_PX = 40;
const PRESSED = new Set(["button", "a"]);

/** Listens to clicks, before anything that is pressed does: `host.addEventListener("click", new NoSlips(), { capture: true })`. */
export class NoSlips implements EventListenerObject {
  private last: MouseEvent | undefined;

  handleEvent(event: MouseEvent): void {
    if (!event.composedPath().some((node) => PRESSED.has((node as Partial<Element>).localName ?? ""))) return;
    if (!this.last || !repeats(this.last, event)) return void (this.last = event);
    event.preventDefault();
    event.stopImmediatePropagation();
  }
}

/** A key presses a button at (0, 0). */
function repeats(before: MouseEvent, now: MouseEvent): boolean {
  const apart_px = Math.max(Math.abs(now.clientX - before.clientX), Math.abs(now.clientY - before.clientY));
  return now.timeStamp - before.timeStamp < SLIP_MS && apart_px < FINGER_PX;
}
