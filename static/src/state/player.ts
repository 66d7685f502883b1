/**
 * The one object the screens watch: it starts, runs, restores and ends a session.
 *
 * Every command is written as a fact and counts at once; one that means nothing at this point changes nothing.
 * `start`, `wakeSound` and `setSound` are to be called in a tap, since browsers give sound and screen only then.
 */
import { newId } from "../data/ids.js";
import type { PlanRecord } from "../data/plans.js";
import { closeSession, isSound, openSession, putAside, type LedBy, type SessionRecord } from "../data/sessions.js";
import { FORMATS } from "../data/sound-session.js";
import { changeSettings, readSettings } from "../data/settings.js";
import { isRowed, type Segment, type Timeline } from "../plan/types.js";
import type { Fact } from "../timeline/facts.js";
import { chosen as chosenHere, type Chosen } from "./chosen.js";
import { Keeper, type Moment } from "./keeper.js";
import type { Reading } from "./session-clock.js";
import { makeSessionLock, sessionRunsSomewhere, type SessionLock } from "./session-lock.js";
import { SessionRun } from "./session-run.js";
import { Slips, type Pressed } from "./slips.js";
import type { Snapshot } from "./snapshot.js";

/** How to go on after an absence; `discard` also takes the session off the device. */
export type AbsenceAnswer = "clock" | "stopped" | "end" | "discard";

/** A session that leads a room: from which screen, and when it is to start if not at once, in ms since 1970. */
export interface Leading {
  led_by: LedBy;
  starts_at_ms?: number;
}

export class Player {
  private readonly keeper: Keeper;
  private readonly lock: SessionLock;
  private restoring: Promise<boolean> | undefined;
  private readonly slips = new Slips();

  /** Tests hand in clocks and a lock of their own. */
  constructor(
    private readonly read: () => Reading = readClocks,
    makeLock: (lost: () => void) => SessionLock = makeSessionLock,
    private readonly chosen: Chosen = chosenHere,
  ) {
    this.keeper = new Keeper(read, chosen);
    this.lock = makeLock(() => this.lostToAnotherTab());
    void this.followSettings();
  }

  /** Calls `listener` whenever the snapshot's version has grown; the answer stops that. */
  subscribe(listener: (snapshot: Snapshot) => void): () => void {
    return this.keeper.subscribe(listener);
  }

  /** The session at this moment; cheap enough for every frame. */
  snapshot(): Snapshot {
    return this.keeper.snapshot();
  }

  /**
   * Starts a session with a count-in. False when another tab has one running: the phase is then `elsewhere`.
   * A session that was left open on this device is ended. One that leads a room is best given a timeline that waits
   * for nobody (timeline/by-clock), and may be set to start when the wall clock shows a moment.
   */
  async start(plan: PlanRecord, timeline: Timeline, leading?: Leading): Promise<boolean> {
    const awake = leading !== undefined || this.chosen.now.keep_awake;
    this.keeper.speech.wake();
    const woken = Promise.all([this.keeper.sound.wake(), this.keeper.screen.want(awake), this.chosen.ready]);
    if (!(await this.lock.take())) return this.isElsewhere();
    await woken;
    this.keeper.setAside();
    const record: SessionRecord = { ...this.newRecord(plan, timeline), ...(leading && { led_by: leading.led_by }) };
    void this.keeper.writes.add(endLeftOpen);
    const started = this.started(timeline, leading?.starts_at_ms);
    this.keeper.begin(SessionRun.make(record, started, this.read(), this.keeper.writes));
    return true;
  }

  private started({ segments }: Timeline, wall_ms: number | undefined): Fact {
    if (wall_ms === undefined) return { kind: "started", at_s: 0, count_in_s: countIn(segments[0], this.chosen.now.start_count_s) };
    return { kind: "started", at_s: 0, count_in_s: Math.max(0, (wall_ms - this.read().wall_ms) / 1000), by_clock: true };
  }

  /**
   * Goes on with the session left open on this device: after a reload, a crash, a kill. False when there is none, or
   * none that is sound.
   * Else the phase is as its facts have it, or `asking`, or `elsewhere`; its sound is `lost` until a tap calls
   * `wakeSound`.
   */
  restore(): Promise<boolean> {
    this.restoring ??= this.restoreLeftOpen().finally(() => (this.restoring = undefined));
    return this.restoring;
  }

  private async restoreLeftOpen(): Promise<boolean> {
    if (this.keeper.run) return true;
    const open = await openSession();
    if (!open || !isSound(open)) return false;
    if (await this.lock.take()) return this.resume();
    this.isElsewhere();
    return true;
  }

  /** Takes the session over from the tab that has it. False when it has been ended meanwhile. */
  async takeOver(): Promise<boolean> {
    await this.lock.takeOver();
    this.keeper.owner = true;
    return this.resume();
  }

  hold(): void {
    if (this.slipped("hold")) return;
    this.keeper.command(({ place, at_s }) => (place.phase === "held" ? null : { kind: "held", at_s }));
  }

  /** After a hold: counts in, then goes on from the catch of the stroke one was in. */
  goOn(): void {
    if (this.slipped("hold")) return;
    this.keeper.command(({ place, at_s, segment }) =>
      place.phase === "held" ? { kind: "went-on", at_s, count_in_s: this.countAfterHold(segment) } : null,
    );
  }

  /** To the start of this segment, or of the one before when this has only just begun. */
  back(): void {
    if (this.slipped("back")) return;
    this.keeper.command(({ at_s }) => ({ kind: "stepped-back", at_s }));
  }

  /** One more minute of this block, rest or gap, if it can have one; true when it has. */
  extend(): boolean {
    if (this.slipped("extend")) return true;
    const before = this.keeper.run?.timeline;
    this.keeper.command(({ at_s }) => ({ kind: "extended", at_s }));
    return this.keeper.run?.timeline !== before;
  }

  /** To the next segment; out of a gap with a count-in. */
  skip(): void {
    if (this.slipped("skip")) return;
    this.keeper.command((moment) => ({ kind: "skipped", at_s: moment.at_s, count_in_s: this.countAfter(moment) }));
  }

  /**
   * A metre or open block is over, and was so some seconds ago; or the gap is: the piece starts with a count-in.
   */
  done(seconds_ago = 0): void {
    if (this.slipped("done")) return;
    this.keeper.command((moment) => ({ kind: "tapped", at_s: moment.at_s, ago_s: seconds_ago, count_in_s: this.countAfter(moment) }));
  }

  /** In a gap, or before a start that was set: starts what follows when the wall clock shows this moment, in ms since 1970; null takes that back. */
  startAtClock(wall_ms: number | null): void {
    this.keeper.command(({ at_s }) => {
      const start_s = wall_ms === null ? null : at_s + (wall_ms - this.keeper.run!.clock.last.wall_ms) / 1000;
      return { kind: "start-set", at_s, start_s };
    });
  }

  /** Ends the session here; what was rowed stays on the device. */
  end(): void {
    this.keeper.command(({ at_s }) => ({ kind: "ended", at_s }));
  }

  /** How to go on when the phase is `asking`; an answer that its kind does not allow changes nothing. */
  async answerAbsence(answer: AbsenceAnswer): Promise<void> {
    const { run, asked } = this.keeper;
    if (!run || !asked) return;
    if (answer === "discard") return this.discard();
    if (asked.kind === "too-old" && answer !== "end") return;
    if (asked.kind === "unsure" && answer === "clock") return;
    this.keeper.asked = null;
    const { since_s } = asked;
    const segment = run.record.timeline.segments[run.placeAt(since_s).index];
    const how = answer === "clock" ? "by-clock" : "where-stopped";
    const count_in_s = answer === "stopped" ? this.countAfterHold(segment) : 0;
    this.keeper.write({ kind: "returned", at_s: run.now_s, since_s, how, count_in_s });
    if (answer === "end") this.keeper.write({ kind: "ended", at_s: run.now_s });
  }

  /** Ends a session left open, whatever stands in its way, so that another can be started. */
  async endForAnother(): Promise<void> {
    if (this.keeper.asked) await this.answerAbsence("end");
    else this.end();
    await this.keeper.closing;
    this.close();
  }

  /** Takes the session off this device. */
  async discard(): Promise<void> {
    const { run } = this.keeper;
    this.close();
    await run?.discard();
  }

  /** Leaves the session: the phase is `none` again. One that still runs is left open, to be restored. */
  close(): void {
    this.keeper.setAside();
    this.keeper.sound.close();
    this.lock.release();
    this.keeper.changed();
  }

  /** Brings the sound back, in a tap. */
  async wakeSound(): Promise<void> {
    this.keeper.speech.wake();
    await Promise.all([this.keeper.sound.wake(), this.keeper.screen.seen()]);
    this.keeper.changed();
  }

  /** Asks for the screen's staying on again, where it was taken away. */
  stayAwake(): void {
    void this.keeper.screen.seen();
  }

  /** Whether the session is heard, from now on and the next time. */
  async setSound(on: boolean): Promise<void> {
    this.applySound(on, this.keeper.sound.volume);
    await Promise.all([on ? this.wakeSound() : undefined, changeSettings({ sound: on })]);
  }

  /** The sound as it is chosen on this device now. */
  async followSettings(): Promise<void> {
    const { sound, volume } = await readSettings();
    this.applySound(sound, volume);
  }

  /** How loud the session is, from 0 to 1. */
  get volume(): number {
    return this.keeper.sound.volume;
  }

  /** How loud the session is to be, from 0 to 1, from now on and the next time. */
  async setVolume(volume: number): Promise<void> {
    this.applySound(this.keeper.sound.state !== "off", volume);
    await changeSettings({ volume });
  }

  private slipped(what: Pressed): boolean {
    return this.slips.isOne(what, this.read());
  }

  private resume(): Promise<boolean> {
    return openSession().then((stored) => {
      if (!stored || !isSound(stored)) return this.close(), false;
      const { run, found, since_s } = SessionRun.resume(stored, this.read(), this.keeper.writes);
      this.keeper.begin(run, found, since_s);
      return true;
    });
  }

  private newRecord(plan: PlanRecord, timeline: Timeline): SessionRecord {
    const made_at_ms = this.read().wall_ms;
    return { id: newId(), format: FORMATS.session, plan_id: plan.id, plan: plan.plan, timeline, app: APP, made_at_ms, state: "open" };
  }

  private countAfterHold(segment: Segment | undefined): number {
    return countIn(segment, this.chosen.now.hold_count_s);
  }

  /** Seconds to count in to what follows: the count-in to a start by the clock that is on, or time to sit down. */
  private countAfter({ place, segment, next }: Moment): number {
    if (place.start_s !== null && place.count_in_s !== null) return place.count_in_s;
    return segment.kind === "gap" ? countIn(next, this.chosen.now.start_count_s) : 0;
  }

  private applySound(on: boolean, volume: number): void {
    this.keeper.sound.set(on, volume);
    this.keeper.changed();
  }

  /** What is not stored yet is given up: the other tab has gone on from what is. */
  private lostToAnotherTab(): void {
    this.keeper.sound.close();
    this.keeper.writes.clear();
    this.isElsewhere(true);
  }

  private isElsewhere(lost = false): false {
    this.keeper.setAside(lost);
    this.keeper.owner = false;
    this.keeper.changed();
    return false;
  }
}

/** Whether a session runs, or was left open, anywhere on this device: then the app must not be changed under it. */
export async function sessionIsOpen(): Promise<boolean> {
  return (await openSession()) !== undefined || sessionRunsSomewhere();
}

/** The build of the app: the hashed name of its code. */
const APP = new URL(import.meta.url).pathname.split("/").pop() ?? "";

/** Seconds to count in, where the handle is needed. */
function countIn(segment: Segment | undefined, count_in_s: number): number {
  return segment && isRowed(segment) ? count_in_s : 0;
}

async function endLeftOpen(): Promise<void> {
  for (let left = await openSession(); left; left = await openSession()) {
    await (isSound(left) ? closeSession(left.record) : putAside(left.id));
  }
}

function readClocks(): Reading {
  return { wall_ms: Date.now(), mono_ms: performance.now() };
}

/** The player of this tab. */
export const player = new Player();
