/**
 * Keeps the session that runs in this tab: looks at the clocks, writes facts, wakes the sound, notices absences,
 * and makes the picture for the screens. The commands that people give are in steering.ts.
 */
import { Ticker } from "../audio/ticker.js";
import { database } from "../data/database.js";
import { WriteQueue } from "../data/write-queue.js";
import { ourScript } from "../offline/worker-bridge.js";
import type { Segment } from "../plan/types.js";
import { wanted } from "../timeline/cue-choice.js";
import { cuesBetween, type Cue } from "../timeline/cue-window.js";
import type { Fact } from "../timeline/facts.js";
import { spokenBetween, type Spoken } from "../timeline/spoken.js";
import type { Place } from "../timeline/place.js";
import { judge } from "./absence.js";
import type { Chosen } from "./chosen.js";
import { differs, present, presentNothing, type Around } from "./present.js";
import { monoAt, type Found, type Reading } from "./session-clock.js";
import type { SessionRun } from "./session-run.js";
import { SessionSpeech } from "./session-speech.js";
import { SessionTouch } from "./session-touch.js";
import { SessionSound } from "./session-sound.js";
import type { Absence, Notice, Snapshot } from "./snapshot.js";
import { ScreenLock } from "./wake-lock.js";

/** The address of the built ticker-worker.ts; the build puts it in. */
declare const TICKER_WORKER_URL: string;

const TICK_MS = 250;
const TICK_WHEN_HIDDEN_MS = 1000;
/** Time to see and hear that a start is coming, and to take the handle. */
const SHORTEST_COUNT_S = 3;

/** What a command sees: the place, the moment, the segment and the one after it. */
export interface Moment {
  place: Place;
  at_s: number;
  segment: Segment;
  next: Segment | undefined;
}

export class Keeper {
  run: SessionRun | undefined;
  /** The question that stands since an absence, which began at `since_s`. */
  asked: (Absence & { since_s: number }) | null = null;
  /** Whether this tab, and no other, has the session. */
  owner = true;
  /** What this tab has to store; it goes on being tried when the session is left. */
  readonly writes = new WriteQueue(() => this.changed());
  readonly screen = new ScreenLock(() => this.changed());
  readonly sound = new SessionSound({
    cues: (from_s, to_s) => wanted(this.cues(from_s, to_s), this.chosen.now),
    now_s: () => this.run?.now_s ?? 0,
    monoAt: (session_s) => (this.run ? monoAt(this.run.clock, session_s) : 0),
  });
  readonly speech = new SessionSpeech({
    spoken: (from_s, to_s) => this.spoken(from_s, to_s),
    wish: () => (this.chosen.now.voice && this.sound.state !== "off" ? { uri: this.chosen.now.voice_uri, volume: this.sound.volume } : undefined),
  });
  private readonly touch = new SessionTouch({ cues: (from_s, to_s) => (this.chosen.now.shakes ? this.cues(from_s, to_s) : []) });
  /** Settled when the session that ended last is marked so in storage, or that is tried again and again. */
  closing: Promise<void> = Promise.resolve();
  private notice: Notice | null = null;
  private last: Snapshot;
  private told = 0;
  private readonly listeners = new Set<(snapshot: Snapshot) => void>();
  private readonly ticker = new Ticker(() => this.tick(), () => new Worker(ourScript(TICKER_WORKER_URL)));

  constructor(
    private readonly read: () => Reading,
    private readonly chosen: Chosen,
  ) {
    this.last = { ...presentNothing(this.around()), version: 0 };
    chosen.subscribe(() => {
      this.wantScreen();
      this.replan();
    });
    database.subscribe(() => this.changed());
    globalThis.document?.addEventListener("visibilitychange", () => this.seenOrHidden());
    globalThis.document?.addEventListener("freeze", () => this.sound.hush());
    globalThis.document?.addEventListener("resume", () => this.seenOrHidden());
    globalThis.addEventListener?.("pageshow", () => this.seenOrHidden());
    globalThis.addEventListener?.("pagehide", () => this.beat(true));
  }

  subscribe(listener: (snapshot: Snapshot) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  snapshot(): Snapshot {
    this.look();
    const picture = this.run ? present(this.run, this.shown_s(), this.around()) : presentNothing(this.around());
    const version = this.last.version + (differs(picture, this.last) ? 1 : 0);
    return (this.last = { ...picture, version });
  }

  /** Tells the listeners if anything but the time has changed since they were told. */
  changed(): void {
    const snapshot = this.snapshot();
    if (snapshot.version === this.told) return;
    this.told = snapshot.version;
    this.listeners.forEach((tell) => tell(snapshot));
  }

  /** Lets a session run in this tab; what was found out about its clock may raise a question. */
  begin(run: SessionRun, found: Found = { kind: "nothing" }, since_s = run.now_s): void {
    this.run = run;
    this.owner = true;
    this.asked = null;
    this.judge(found, since_s);
    if (run.over) return this.changed();
    this.beat(true);
    this.ticker.start(globalThis.document?.hidden ? TICK_WHEN_HIDDEN_MS : TICK_MS);
    this.wantScreen();
    this.replan();
    this.changed();
  }

  /** Stops running it here, without a word in its facts; nor a sign of life, where another tab has it already. */
  setAside(lost = false): void {
    if (!lost) this.beat(true);
    this.run = undefined;
    this.asked = null;
    this.rest();
  }

  /** Writes what a command comes to, unless a question stands or there is nothing to command. */
  command(fact: (moment: Moment) => Fact | null): void {
    const { run } = this;
    if (!run || this.asked) return;
    // A command is a tap, and a tap may bring lost sound back.
    if (this.sound.state === "lost") void this.sound.wake().then(() => this.changed());
    this.look();
    const [at_s, { segments }] = [run.now_s, run.timeline];
    const place = run.placeAt(at_s);
    if (place.phase === "finished" || place.phase === "ready") return;
    const written = fact({ place, at_s, segment: segments[place.index]!, next: segments[place.index + 1] });
    if (written) this.write(written);
  }

  write(fact: Fact): void {
    const { run } = this;
    if (!run) return;
    run.write(fact);
    this.beat(true);
    this.endIfOver();
    this.replan();
    this.changed();
  }

  /** A look at the clocks: what was away is noticed, and a session that came to its end is closed. */
  private look(): void {
    const { run } = this;
    if (!run) return;
    const [since_s, before] = [run.now_s, run.clock];
    const found = run.look(this.read());
    const settled = found.kind === "moved" && run.settles(found.seconds);
    if (found.kind === "moved" && !settled) this.keepTheMinute(run, found.seconds);
    this.sound.shifted(monoAt(run.clock, 0) - monoAt(before, 0));
    this.judge(settled ? { kind: "slept", seconds: found.seconds } : found, since_s);
    // A page that comes after this one has only the wall clock to go by.
    if (found.kind !== "nothing") this.beat(true);
    this.endIfOver();
  }

  /** A start set by the clock stays at its minute when the clock is moved, unless too little is left then for a count-in. */
  private keepTheMinute(run: SessionRun, moved_s: number): void {
    const { now_s } = run;
    const { start_s } = run.placeAt(now_s);
    if (start_s === null || run.over) return;
    const counted_s = Math.min(start_s - now_s, this.chosen.now.start_count_s);
    const left_s = start_s - moved_s - now_s;
    this.write({ kind: "start-set", at_s: now_s, start_s: now_s + (left_s < SHORTEST_COUNT_S ? counted_s : left_s) });
  }

  private judge(found: Found, since_s: number): void {
    const { run } = this;
    if (!run || this.asked || run.over) return;
    const { ask, tell, end } = judge(run, found, since_s, run.now_s);
    if (ask) {
      this.asked = { ...ask, since_s };
      this.replan();
    }
    if (tell) this.notice = { ...tell, number: (this.notice?.number ?? 0) + 1 };
    if (end) this.write({ kind: "ended", at_s: run.now_s });
  }

  /** Saves a sign of life. Not while a question stands: who comes back to another page has to be asked again. */
  private beat(now = false): void {
    if (!this.asked) this.run?.beat(now);
  }

  private endIfOver(): void {
    const { run } = this;
    if (!run || this.asked || run.over) return;
    const state = run.stateAt(run.now_s);
    if (state.mode !== "finished") return;
    run.over = true;
    if (state.whole) run.write({ kind: "ended", at_s: state.ended_s });
    this.closing = run.close();
    this.rest();
    // Found by a frame's look, it would be told to nobody: no tick comes any more.
    queueMicrotask(() => this.changed());
  }

  /** The screen stays on while a session runs, if that is chosen; in front of a room always. */
  private wantScreen(): void {
    const runs = this.run !== undefined && !this.run.over;
    void this.screen.want(runs && this.awake());
    this.changed();
  }

  private awake(): boolean {
    return this.chosen.now.keep_awake || this.run?.record.led_by !== undefined;
  }

  /** What was set out to be heard, said or felt no longer holds. */
  private replan(): void {
    const { run } = this;
    if (!run) return;
    [this.sound, this.speech, this.touch].forEach((each) => each.replan(run.now_s));
  }

  /** Nothing runs any more: no ticks, and the screen may go dark. The sound may ring out. */
  private rest(): void {
    this.speech.silence();
    this.ticker.stop();
    void this.screen.want(false);
  }

  private tick(): void {
    this.look();
    this.beat();
    if (this.run && !this.run.over) this.tellAll(this.run.now_s);
    this.changed();
  }

  private tellAll(now_s: number): void {
    this.sound.tick();
    this.speech.tick(now_s);
    this.touch.tick(now_s, (2 * TICK_MS) / 1000);
  }

  private seenOrHidden(): void {
    if (!this.run || this.run.over) return;
    this.look();
    this.beat(true);
    const { hidden } = document;
    this.ticker.start(hidden ? TICK_WHEN_HIDDEN_MS : TICK_MS);
    if (!hidden) void Promise.all([database.reopen(), this.screen.seen()]);
    this.sound.tick();
    this.changed();
  }

  private cues(from_s: number, to_s: number): Cue[] {
    const { run } = this;
    return run && !this.asked ? cuesBetween(run.record.timeline, run.stateAt(from_s), from_s, to_s) : [];
  }

  private spoken(from_s: number, to_s: number): Spoken[] {
    const { run } = this;
    return run && !this.asked ? spokenBetween(run.record.timeline, run.stateAt(from_s), from_s, to_s) : [];
  }

  /** The moment that is shown: while a question stands, the one at which nobody looked any more. */
  private shown_s(): number {
    return this.asked?.since_s ?? this.run!.now_s;
  }

  private around(): Around {
    return {
      sound: this.sound.state,
      screen: this.awake() ? this.screen.state : "not-wanted",
      owner: this.owner,
      kept: this.writes.trouble ?? (database.isSilent() ? "refused" : database.where()),
      absence: this.asked,
      notice: this.notice,
    };
  }
}
