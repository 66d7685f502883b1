/** Wakes the page again and again, by a worker where there is one: a page's own timers are slowed down when hidden. */

export class Ticker {
  private worker: Worker | undefined;
  private timer: ReturnType<typeof setInterval> | undefined;

  /** `makeWorker` starts the worker of ticker-worker.ts; it may fail, and then the page's own timer has to do. */
  constructor(
    private readonly tick: () => void,
    private readonly makeWorker: () => Worker,
  ) {}

  /** Ticks every so many milliseconds from now on. */
  start(every_ms: number): void {
    try {
      this.worker ??= this.startWorker();
      this.worker.postMessage(every_ms);
    } catch {
      this.fallBack(every_ms);
    }
  }

  stop(): void {
    clearInterval(this.timer);
    this.worker?.terminate();
    this.worker = this.timer = undefined;
  }

  private startWorker(): Worker {
    const worker = this.makeWorker();
    worker.onmessage = () => this.tick();
    worker.onerror = () => this.fallBack(1000);
    return worker;
  }

  private fallBack(every_ms: number): void {
    this.stop();
    this.timer = setInterval(this.tick, every_ms);
  }
}
