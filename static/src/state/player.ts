/**
 * The one object the screens watch: it starts, restores and leaves a session; while one runs, it is steered (steering.ts).
 *
 * `start`, `wakeSound` and `setSound` are to be called in a tap, since browsers give sound and screen only then.
 */
import { newId } from "../data/ids.js";
import type { PlanRecord } from "../data/plans.js";
import { closeSession, isSound, openSession, putAside, type LedBy, type SessionRecord } from "../data/sessions.js";
import { FORMATS } from "../data/sound-session.js";
import { changeSettings, readSettings } from "../data/settings.js";
import { forASecond } from "../data/silence.js";
import type { Timeline } from "../plan/types.js";
import type { Fact } from "../timeline/facts.js";
import { chosen as chosenHere, type Chosen } from "./chosen.js";
import type { Reading } from "./session-clock.js";
import { makeSessionLock, sessionRunsSomewhere, type SessionLock } from "./session-lock.js";
import { SessionRun } from "./session-run.js";
import type { Snapshot } from "./snapshot.js";
import { countIn, Steering } from "./steering.js";

/** How to go on after an absence; `discard` also takes the session off the device. */
export type AbsenceAnswer = "clock" | "stopped" | "end" | "discard";

/** A session that leads a room: from which screen, and when it is to start if not at once, in ms since 1970. */
export interface Leading {
  led_by: LedBy;
  starts_at_ms?: number;
}

export class Player extends Steering {
  private readonly lock: SessionLock;
  private restoring: Promise<boolean> | undefined;

  /** Tests hand in clocks and a lock of their own. */
  constructor(
    read: () => Reading = readClocks,
    makeLock: (lost: () => void) => SessionLock = makeSessionLock,
    chosen: Chosen = chosenHere,
  ) {
    super(read, chosen);
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
    const woken = Promise.all([this.keeper.sound.wake(), this.keeper.screen.want(awake), forASecond(this.chosen.ready)]);
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
    await forASecond(this.keeper.closing);
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
