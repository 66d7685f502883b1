/** A session while it runs: its facts and its clock. Every fact is saved as it is written, and kept until it is. */
import { saveFact, saveHeartbeat, saveSession, type SessionRecord, type StoredSession } from "../data/sessions.js";
import { advance, follow, replay, type Fact, type State } from "../timeline/facts.js";
import { placeAt, type Place } from "../timeline/place.js";
import {
  byWallClock, resumeClock, saved, sessionAt, startClock, type ClockState, type Found, type Reading, type Saved,
} from "./session-clock.js";

/** The sign of life is saved this often. */
const HEARTBEAT_MS = 1000;
/** A device that has just been switched on learns the time from the network within so long: judgement [C]. */
const SETTLING_MS = 15 * 60_000;

export class SessionRun {
  /** It has come to its end, by the plan or by a command. */
  over = false;
  private facts: Fact[];
  private state: State;
  private unsaved: (() => Promise<void>)[] = [];
  private saving: Promise<void> | undefined;
  private beaten_ms = -Infinity;
  /** Since it was gone on with: the wall clock at second 0 as it was known before, and until when that counts. */
  private settling: { wall_zero_ms: number; until_ms: number } | undefined;

  private constructor(
    readonly record: SessionRecord,
    facts: readonly Fact[],
    public clock: ClockState,
  ) {
    this.facts = [...facts];
    this.state = replay(record.timeline, facts);
  }

  /** A session that is made now. */
  static make(record: SessionRecord, now: Reading): SessionRun {
    const run = new SessionRun(record, [], startClock(now));
    run.unsaved.push(() => saveSession(record));
    return run;
  }

  /** A session that is gone on with; `since_s` is its age at its last sign of life. */
  static resume(stored: StoredSession, now: Reading): { run: SessionRun; found: Found; since_s: number } {
    const { record, facts } = stored;
    const written_s = facts.at(-1)?.at_s ?? 0;
    const life = stored.heartbeat ?? lifeAt(record, written_s);
    const { state, found } = resumeClock(life, now);
    const run = new SessionRun(record, facts, state);
    run.settling = { wall_zero_ms: life.wall_zero_ms, until_ms: now.mono_ms + SETTLING_MS };
    return { run, found, since_s: Math.max(life.session_s, written_s) };
  }

  /** Whether something waits that storage has refused so far. */
  get behind(): boolean {
    return this.unsaved.length > 0 && !this.saving;
  }

  /** Seconds of the session at the last look. */
  get now_s(): number {
    return sessionAt(this.clock, this.clock.last.mono_ms);
  }

  /**
   * A clock put forward soon after a session that leads a room was gone on with: the device had come back without the
   * time, and now has it. True when the session has followed.
   */
  settles(moved_s: number): boolean {
    const { settling, clock } = this;
    if (!this.record.led_by || !settling || moved_s < 0 || clock.last.mono_ms > settling.until_ms) return false;
    this.clock = byWallClock(clock, settling.wall_zero_ms);
    return true;
  }

  placeAt(at_s: number): Place {
    return placeAt(this.record.timeline, this.state, at_s);
  }

  stateAt(at_s: number): State {
    return advance(this.record.timeline, this.state, at_s);
  }

  /** Writes a fact: it counts at once, and is saved durably as soon as storage allows. */
  write(fact: Fact): void {
    const number = this.facts.length;
    this.unsaved.push(() => saveFact(this.record.id, number, fact));
    this.facts.push(fact);
    this.state = follow(this.record.timeline, this.state, fact);
    void this.save();
  }

  /** Saves what is not saved yet, in its order: first the session itself, then its facts. Never rejects. */
  save(): Promise<void> {
    this.saving ??= this.saveAll().finally(() => (this.saving = undefined));
    return this.saving;
  }

  private async saveAll(): Promise<void> {
    try {
      for (let next = this.unsaved[0]; next; next = this.unsaved[0]) {
        await next();
        this.unsaved.shift();
      }
    } catch {
      // Kept, and tried again with the next sign of life; `behind` says so meanwhile.
    }
  }

  /** Saves a sign of life if the last one is a second old, or when it has to be `now`. */
  beat(now = false): void {
    const { mono_ms } = this.clock.last;
    if (!now && mono_ms - this.beaten_ms < HEARTBEAT_MS) return;
    this.beaten_ms = mono_ms;
    if (!this.over) saveHeartbeat({ session: this.record.id, ...saved(this.clock) }).catch(() => undefined);
    if (this.unsaved.length) void this.save();
  }
}

/** The sign of life that the last fact itself is, where no other was saved. */
function lifeAt({ made_at_ms }: SessionRecord, session_s: number): Saved {
  return { session_s, wall_ms: made_at_ms + session_s * 1000, wall_zero_ms: made_at_ms };
}
