/**
 * Storage that gives no answer. Engines may leave a request without one: a request that waits long is told of, and given
 * up after a while, so that it can be asked anew.
 */

/** Longer than storage takes, shorter than people wait without a word. */
const TELL_MS = 3000;
/** Until a request is asked anew; twice as long each time, since storage may only be slow, or have much to do. */
const GIVE_UP_MS = 5000;
const LONGEST_MS = 120_000;

/** A request was given up: it is not known whether it would have been answered. */
export class Silence extends Error {
  constructor() {
    super("storage does not answer");
  }
}

/** A write was called off before storage had answered. */
export class CalledOff extends Error {}

export class Silences {
  /** Whether what was asked last is still without an answer. */
  now = false;
  private give_up_ms = GIVE_UP_MS;
  private readonly waiting = new Set<() => void>();

  /** `changed` is called when silence begins or ends. */
  constructor(private readonly changed: () => void) {}

  /** The answer of a request, which ends any silence; Silence where there is none in time, after `takeBack` has undone what was asked. */
  answered<Answer>(answer: Promise<Answer>, takeBack: () => void): Promise<Answer> {
    // One that comes after it was given up is an answer too, and may be the last that is heard.
    answer.then(() => this.heard(), () => undefined);
    return this.inTime(answer, takeBack);
  }

  /** The same of an opening, which does not show that requests are answered. */
  inTime<Answer>(answer: Promise<Answer>, takeBack: () => void): Promise<Answer> {
    return new Promise((done, failed) => {
      const giveUp = () => {
        stop();
        takeBack();
        failed(new Silence());
      };
      const telling = setTimeout(() => this.tell(true), TELL_MS);
      const waiting = setTimeout(() => this.tooLong(), this.give_up_ms);
      const stop = () => {
        [telling, waiting].forEach((timer) => clearTimeout(timer));
        this.waiting.delete(giveUp);
      };
      this.waiting.add(giveUp);
      answer.finally(stop).then(done, failed);
    });
  }

  /** Gives up whatever waits, in its order, so that what is asked anew comes in the same. */
  giveUpAll(): void {
    [...this.waiting].forEach((giveUp) => giveUp());
  }

  private tooLong(): void {
    this.give_up_ms = Math.min(2 * this.give_up_ms, LONGEST_MS);
    this.giveUpAll();
  }

  private heard(): void {
    this.give_up_ms = GIVE_UP_MS;
    this.tell(false);
  }

  private tell(now: boolean): void {
    if (this.now === now) return;
    this.now = now;
    this.changed();
  }
}

const STORING_MS = 1000;

/** Settled with what is stored, or after a second, which is longer than that takes and shorter than people wait for a button. */
export async function forASecond(storing: Promise<unknown>): Promise<void> {
  await Promise.race([storing, new Promise((go) => setTimeout(go, STORING_MS))]);
}
