/** A session while it runs: its facts and its clock. Every fact counts and is saved as it is written. */
import { closeSession, discardSession, saveFact, saveHeartbeat, saveSession, type SessionRecord, type StoredSession } from "../data/sessions.js";
import type { WriteQueue } from "../data/write-queue.js";
import type { Timeline } from "../plan/types.js";
import { canExtend, follow, replay, type Fact } from "../timeline/facts.js";
import { placeAt, type Place } from "../timeline/place.js";
import { advance, keepsToClock, lineOf, type State } from "../timeline/running.js";
import {
  byWallClock, fromNowByTheWall, look, resumeClock, saved, sessionAt, startClock, type ClockState, type Found, type Reading, type Saved,
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
  /** How far it had gone by itself at the last look: hours of blocks are not gone through again at each. */
  private reached: { at_s: number; state: State };
  private beaten_ms = -Infinity;
  /** Since it was gone on with: the wall clock at second 0 as it was known before, and until when that counts. */
  private settling: { wall_zero_ms: number; until_ms: number } | undefined;

  private constructor(
    readonly record: SessionRecord,
    facts: readonly Fact[],
    public clock: ClockState,
    private readonly writes: WriteQueue,
  ) {
    this.facts = [...facts];
    this.state = replay(record.timeline, facts);
    this.reached = { at_s: -Infinity, state: this.state };
  }

  /** A session that is made now, with its first fact. */
  static make(record: SessionRecord, first: Fact, now: Reading, writes: WriteQueue): SessionRun {
    const run = new SessionRun(record, [first], startClock(now), writes);
    void writes.add((calledOff) => saveSession(record, first, calledOff));
    return run;
  }

  /** A session that is gone on with; `since_s` is its age at its last sign of life. */
  static resume(stored: StoredSession, now: Reading, writes: WriteQueue): { run: SessionRun; found: Found; since_s: number } {
    const { record, facts } = stored;
    const written_s = facts.at(-1)?.at_s ?? 0;
    const life = stored.heartbeat ?? lifeAt(record, written_s);
    const { state, found } = resumeClock(life, now);
    const run = new SessionRun(record, facts, state, writes);
    run.settling = { wall_zero_ms: life.wall_zero_ms, until_ms: now.mono_ms + SETTLING_MS };
    return { run, found, since_s: Math.max(life.session_s, written_s) };
  }

  /** Seconds of the session at the last look. */
  get now_s(): number {
    return sessionAt(this.clock, this.clock.last.mono_ms);
  }

  /** Looks at the clocks; what was found out about the time since the last look. */
  look(now: Reading): Found {
    const { state, found } = look(this.clock, now, keepsToClock(this.stateAt(this.now_s)));
    this.clock = state;
    return found;
  }

  /** As it runs now: the planned timeline, and what has been added to it. */
  get timeline(): Timeline {
    return lineOf(this.record.timeline, this.state);
  }

  canExtend(at_s: number): boolean {
    return canExtend(this.record.timeline, this.stateAt(at_s), at_s);
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
    return placeAt(this.record.timeline, this.stateAt(at_s), at_s);
  }

  stateAt(at_s: number): State {
    const { at_s: reached_s, state } = this.reached;
    const reached = advance(this.record.timeline, at_s < reached_s ? this.state : state, at_s);
    if (at_s <= this.now_s) this.reached = { at_s, state: reached };
    return reached;
  }

  /** Writes a fact: it counts at once, and is saved durably as soon as storage allows. */
  write(fact: Fact): void {
    const number = this.facts.length;
    this.facts.push(fact);
    if (fact.kind === "start-set") this.clock = fromNowByTheWall(this.clock);
    this.state = follow(this.record.timeline, this.state, fact);
    this.reached = { at_s: -Infinity, state: this.state };
    void this.writes.add((calledOff) => saveFact(this.record.id, number, fact, calledOff));
  }

  /** Marks it as ended in storage, after all its facts. */
  close(): Promise<void> {
    return this.writes.add((calledOff) => closeSession(this.record, calledOff));
  }

  /** Takes it off this device. */
  discard(): Promise<void> {
    return this.writes.add((calledOff) => discardSession(this.record.id, calledOff));
  }

  /** Saves a sign of life if the last one is a second old, or when it has to be `now`. */
  beat(now = false): void {
    const { mono_ms } = this.clock.last;
    if (!now && mono_ms - this.beaten_ms < HEARTBEAT_MS) return;
    this.beaten_ms = mono_ms;
    if (this.over) return;
    const life = { session: this.record.id, ...saved(this.clock) };
    void this.writes.once((calledOff) => saveHeartbeat(life, calledOff));
  }
}

/** The sign of life that the last fact itself is, where no other was saved. */
function lifeAt({ made_at_ms }: SessionRecord, session_s: number): Saved {
  return { session_s, wall_ms: made_at_ms + session_s * 1000, wall_zero_ms: made_at_ms };
}
