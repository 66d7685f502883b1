/**
 * Follows the session that another tab of this device runs, without touching it: its facts and its sign of life are
 * read again and again, and between two readings the same clock is looked at here.
 */
import { database } from "../data/database.js";
import { factsOf, isSound, openSession, type SessionRecord } from "../data/sessions.js";
import { WriteQueue } from "../data/write-queue.js";
import { differs, present, presentNothing, type Around } from "./present.js";
import { look, type Reading } from "./session-clock.js";
import { SessionRun } from "./session-run.js";
import type { Snapshot } from "./snapshot.js";

const READ_EVERY_MS = 500;
/** Signs of life come every second, from a hidden tab too. */
const QUIET_MS = 5000;

/** Nothing of the tab that runs it is known here, and nothing is missing. */
const AROUND: Around = { sound: "off", screen: "on", owner: true, kept: "disk", absence: null, notice: null };

export class Follower {
  /** Whether the tab that runs it gives no sign of life any more. */
  quiet = false;
  private run: SessionRun | undefined;
  private record: SessionRecord | undefined;
  private facts = 0;
  private last: Snapshot = { ...presentNothing(AROUND), version: 0 };
  private timer: ReturnType<typeof setInterval> | undefined;
  private reading: Promise<void> | undefined;

  constructor(
    private readonly changed: () => void,
    private readonly read: () => Reading = () => ({ wall_ms: Date.now(), mono_ms: performance.now() }),
  ) {}

  /** Begins to follow what is open; true when there is something. */
  async begin(): Promise<boolean> {
    this.timer ??= setInterval(() => void this.readAgain(), READ_EVERY_MS);
    await this.readAgain();
    return this.run !== undefined;
  }

  stop(): void {
    clearInterval(this.timer);
    this.timer = undefined;
  }

  snapshot(): Snapshot {
    const { run } = this;
    if (!run) return this.last;
    run.clock = look(run.clock, this.read()).state;
    const picture = present(run, run.now_s, AROUND);
    return (this.last = { ...picture, version: this.last.version + (differs(picture, this.last) ? 1 : 0) });
  }

  /** Reads what is new; one reading at a time. Never rejects: storage that does not answer is asked again. */
  readAgain(): Promise<void> {
    this.reading ??= this.readOnce().catch(() => undefined).finally(() => (this.reading = undefined));
    return this.reading;
  }

  private async readOnce(): Promise<void> {
    if (!this.record) return this.open();
    const { id } = this.record;
    const [facts, heartbeat] = await Promise.all([factsOf(id), database.get("heartbeats", id)]);
    if (!facts.length) return this.over();
    const quiet = !heartbeat || this.read().wall_ms - heartbeat.wall_ms > QUIET_MS;
    const news = facts.length !== this.facts || quiet !== this.quiet;
    this.quiet = quiet;
    // The clock of the tab that runs it may have been put right: its sign of life is nearer to it than ours.
    this.run = SessionRun.resume({ record: this.record, facts, heartbeat }, this.read(), NO_WRITES).run;
    this.facts = facts.length;
    if (news) this.changed();
  }

  private async open(): Promise<void> {
    const stored = await openSession();
    if (!stored || !isSound(stored)) return;
    this.record = stored.record;
    this.facts = stored.facts.length;
    this.run = SessionRun.resume(stored, this.read(), NO_WRITES).run;
    this.changed();
  }

  /** What led a room is gone when it is over, and its last picture with it. */
  private over(): void {
    this.run = undefined;
    this.record = undefined;
    this.last = { ...this.last, phase: "finished", version: this.last.version + 1 };
    this.stop();
    this.changed();
  }
}

/** A session that is only followed is never written to. */
const NO_WRITES = new WriteQueue(() => undefined);
