/**
 * Writes that have to reach storage, in their order. Each is kept here until it has, and tried again whatever refused
 * it: a full device, a connection that is gone. The truth is meanwhile in memory, and `trouble` says so.
 */

/** `full`: there is no room left; `refused`: anything else. */
export type Trouble = "full" | "refused";

const TRY_AGAIN_MS = 1000;
/** More signs of life than that do not wait for storage that is silent. */
const MOST_AT_ONCE = 10;

/** Leaves off, and takes back what it can, once it is called off. */
export type Write = (calledOff: AbortSignal) => Promise<void>;

export class WriteQueue {
  /** Why something waits, or the last sign of life was not kept; null when all that was written is stored. */
  trouble: Trouble | null = null;
  private underWay = 0;
  private waiting: Write[] = [];
  private givingUp = new AbortController();
  private flushing: Promise<void> | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;

  /** `changed` is called when there is trouble, or no more. */
  constructor(private readonly changed: () => void) {}

  /** Writes this after all that waits. Settled when storage has taken everything, or has refused. */
  add(write: Write): Promise<void> {
    this.waiting.push(write);
    return this.flush();
  }

  /** Writes what is only worth something now: it is not kept when storage refuses it. */
  async once(write: Write): Promise<void> {
    if (this.underWay === MOST_AT_ONCE) return;
    const { signal } = this.givingUp;
    this.underWay += 1;
    const refused = await refusal(write, signal);
    this.underWay -= 1;
    if (signal.aborted) return;
    if (refused || !this.waiting.length) this.tell(refused);
    if (this.waiting.length) await this.flush();
  }

  /** Tries to write what waits. Never rejects. */
  flush(): Promise<void> {
    this.flushing ??= this.writeAll().finally(() => (this.flushing = undefined));
    return this.flushing;
  }

  /** Gives up what waits, and what storage has not answered: it is no longer this page's to write. */
  clear(): void {
    this.waiting = [];
    this.givingUp.abort();
    this.givingUp = new AbortController();
    clearTimeout(this.timer);
    this.tell(null);
  }

  private async writeAll(): Promise<void> {
    clearTimeout(this.timer);
    for (let next = this.waiting[0]; next; next = this.waiting[0]) {
      const refused = await refusal(next, this.givingUp.signal);
      if (refused && this.waiting[0] === next) return this.later(refused);
      if (this.waiting[0] === next) this.waiting.shift();
    }
    this.tell(null);
  }

  private later(refused: Trouble): void {
    this.timer = setTimeout(() => void this.flush(), TRY_AGAIN_MS);
    this.tell(refused);
  }

  private tell(trouble: Trouble | null): void {
    if (this.trouble === trouble) return;
    this.trouble = trouble;
    this.changed();
  }
}

async function refusal(write: Write, calledOff: AbortSignal): Promise<Trouble | null> {
  try {
    await write(calledOff);
    return null;
  } catch (error) {
    return (error as Error | undefined)?.name === "QuotaExceededError" ? "full" : "refused";
  }
}
