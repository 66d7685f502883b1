/** A wall from its set-up to its end: hands the session that leads the room to the wall, and what is pressed there to the player. */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import { openPlan, type PlanRecord, type Source } from "../data/plans.js";
import { isSound, openSession, type SessionRecord } from "../data/sessions.js";
import { faultWords } from "../data/sound-session.js";
import { changeWall, readWall, type Sight, type WallSettings } from "../data/wall.js";
import { wholeSecondsLeft } from "../plan/format.js";
import { forRoom, targetsOf, type Lane } from "../plan/lanes.js";
import type { Target } from "../plan/wire.js";
import { player } from "../state/player.js";
import type { Snapshot } from "../state/snapshot.js";
import { timeOfDay } from "../state/time-of-day.js";
import { byClock } from "../timeline/by-clock.js";
import { changeFullScreen, enterFullScreen } from "./full-screen.js";
import "./open-session-question.js";
import type { OpenSessionQuestion } from "./open-session-question.js";
import { Painting, moves, secondsToNextPaint } from "./next-paint.js";
import "./other-tab.js";
import { troubleWords } from "./plan-opened.js";
import { goTo, replaceAddress, tellScreen } from "./routes.js";
import { extendedWords, noticeWords } from "./row-words.js";
import { RowingControl } from "./rowing-control.js";
import { keptLater, watchSaved, type Saved } from "./saving.js";
import "./wall-end.js";
import "./wall-screen.js";
import type { WallScreen } from "./wall-screen.js";
import "./wall-setup.js";
import type { WallSetup } from "./wall-setup.js";
import type { WallMoment } from "./wall-words.js";

const NOTICE_MS = 8000;
const MINUTE_MS = 60_000;
const ASK_AGAIN_MS = 1000;
/** From a tap on Start now to the first catch of a start that had been set by the clock. */
const SOON_MS = 10_000;

export class WallHome extends LitElement {
  static override properties = {
    source: { attribute: false }, name: { attribute: false }, version: { state: true }, wall: { state: true }, lost: { state: true }, record: { state: true },
    afar: { type: Boolean }, note: {}, saved: { state: true }, starting: { state: true }, trouble: { state: true }, remark: { state: true }, targets: { state: true },
  };
  declare source: Source | undefined;
  declare name: string | undefined;
  /** Led from afar: the address stays that of the wall. */
  declare afar: boolean;
  /** What stands before the time of day while a session runs, or "". */
  declare note: string;
  declare version: number;
  declare wall: WallSettings | undefined;
  declare lost: number;
  declare record: PlanRecord | undefined;
  declare saved: Saved;
  declare starting: boolean;
  declare trouble: string;
  declare remark: string;
  declare targets: readonly (readonly (Target | undefined)[])[];
  /** The session that is open on this device, if any. */
  private open: SessionRecord | undefined;
  private stop = (): void => {};
  private readonly painting = new Painting(() => this.paint());
  private told = 0;
  private shown = "";
  private start_at_ms: number | undefined;
  private silence: ReturnType<typeof setTimeout> | undefined;
  private readonly control = new RowingControl(this, {
    hold: () => this.holdOrGoOn(), back: () => player.back(), skip: () => this.screen?.skip(), next: () => this.screen?.skip(),
    minute: () => this.extend(), check: () => undefined, end: () => this.screen?.askEnd(),
  });
  private readonly stayAwake = () => player.stayAwake();

  constructor() {
    super();
    this.afar = false;
    this.note = "";
    this.version = 0;
    this.lost = 0;
    this.saved = "saving";
    this.starting = false;
    this.trouble = "";
    this.remark = "";
    this.targets = [];
  }

  static override styles = css`:host { display: block; }`;

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "Wall · Slipway";
    this.told = player.snapshot().notice?.number ?? 0;
    const leave = player.subscribe((snapshot) => this.follow(snapshot));
    const awake = setInterval(this.stayAwake, MINUTE_MS);
    document.addEventListener("fullscreenchange", this.stayAwake);
    this.stop = () => {
      leave();
      clearInterval(awake);
      clearTimeout(this.silence);
      document.removeEventListener("fullscreenchange", this.stayAwake);
    };
    this.painting.start();
    void this.gather();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stop();
    this.painting.stop();
  }

  override render() {
    const snapshot = player.snapshot();
    if (!this.wall) return nothing;
    if (snapshot.phase === "elsewhere") return html`<other-tab @take-over=${() => void player.takeOver()}></other-tab>`;
    if (snapshot.led_by && snapshot.phase === "finished") return html`<wall-end .planTitle=${snapshot.timeline!.plan.title} .whole=${snapshot.whole} @leave=${this.leave}></wall-end>`;
    return snapshot.led_by ? this.running(snapshot, this.wall) : this.settingUp(this.wall);
  }

  /** A new kind of screen starts at its heading; a new segment does not. */
  override updated(changed: PropertyValues<this>): void {
    if ((changed.has("name") || changed.has("source")) && this.wall) void this.gather();
    this.paint();
    const screen = this.renderRoot.firstElementChild?.localName ?? "";
    if (screen !== this.shown && screen) tellScreen(this, screen === "wall-screen" || screen === "wall-end" ? "rowing" : "reading");
    this.shown = screen;
  }

  private running({ timeline, sound }: Snapshot, { lanes, sight }: WallSettings) {
    return html`<wall-screen .timeline=${timeline} .sound=${sound} .remark=${this.remark} .lanes=${lanes} .targets=${this.targets} .sight=${sight}
      @start=${() => player.startAtClock(Date.now() + SOON_MS)} @hold=${this.holdOrGoOn} @back=${() => player.back()} @skip=${() => player.skip()}
      @sound=${() => void player.setSound(player.snapshot().sound === "off")} @wake=${this.wake} @full=${changeFullScreen} @end=${() => player.end()}></wall-screen>`;
  }

  private settingUp(wall: WallSettings) {
    return html`<wall-setup .record=${this.record} .wall=${wall} .lost=${this.lost} .saved=${this.saved} .starting=${this.starting} .trouble=${this.trouble}
        @lanes=${({ detail }: CustomEvent<Lane[]>) => this.keep({ lanes: detail })} @sight=${({ detail }: CustomEvent<Sight>) => this.keep({ sight: detail })}
        @start=${({ detail }: CustomEvent<number | undefined>) => void this.start(detail)}></wall-setup>
      <open-session-question instead="End it, and show this one" @back=${() => goTo(this, this.open?.led_by ? "/wall" : "/row")} @instead=${() => void this.startInstead()}></open-session-question>`;
  }

  /** A session that leads this room goes on by itself; one that somebody rows is left alone. */
  private async gather(): Promise<void> {
    const kept = await this.kept();
    if (!kept) return;
    const { wall, lost, stored } = kept;
    this.open = stored && isSound(stored) ? stored.record : undefined;
    if (stored && !isSound(stored)) this.trouble = `A session that was left open here cannot be gone on with. ${faultWords(stored.fault)}`;
    const asked = this.name ? { source: this.source!, name: this.name } : wall.plan;
    const goesOn = this.open?.led_by && (!this.name || this.open.plan_id === `${this.source}:${this.name}`);
    if (goesOn) await player.restore();
    const { timeline, led_by } = player.snapshot();
    if (timeline && led_by) this.targets = targetsOf(timeline, wall.lanes);
    this.lost = lost;
    this.wall = wall;
    if (!led_by && asked) await this.show(asked);
  }

  /** What storage holds; while it does not answer, nobody may think that there is nothing. */
  private async kept() {
    while (this.isConnected) {
      try {
        const [{ wall, lost }, stored] = await Promise.all([readWall(), openSession()]);
        return { wall, lost, stored };
      } catch {
        await new Promise((done) => setTimeout(done, ASK_AGAIN_MS));
      }
    }
    return undefined;
  }

  private async show({ source, name }: NonNullable<WallSettings["plan"]>): Promise<void> {
    try {
      this.record = await openPlan(source, name);
      document.title = `${this.record.plan.title} on a wall · Slipway`;
    } catch (error) {
      this.trouble = troubleWords(error);
    }
    tellScreen(this);
    if (this.record) await watchSaved(this.record.id, (saved) => (this.saved = saved), () => !this.isConnected, () => keptLater(import.meta.url));
  }

  /** From afar: this plan, started at that moment (ms since 1970), or waiting. What led the room until now is ended; what somebody rows is not. */
  async lead(record: PlanRecord | undefined, starts_at_ms?: number): Promise<void> {
    const stored = await openSession().catch(() => undefined);
    const left = stored && isSound(stored) ? stored.record : undefined;
    if (left && !left.led_by) return void (this.trouble = "A session that somebody rows is open on this device: end it first.");
    if (left) await player.restore();
    if (player.snapshot().phase === "elsewhere") return;
    if (player.snapshot().phase !== "none") await player.endForAnother();
    [this.open, this.record, this.start_at_ms, this.trouble] = [undefined, record, starts_at_ms, ""];
    if (record && starts_at_ms !== undefined) await this.begin();
  }

  private keep(changes: Partial<WallSettings>): void {
    this.wall = { ...this.wall!, ...changes };
    void changeWall(changes).catch(() => (this.trouble = "This device could not keep that: its storage is full or closed to this page. It holds until the page is closed."));
  }

  /** In the tap: the whole screen, the sound and the screen's staying on are given only then. */
  private async start(at_ms: number | undefined): Promise<void> {
    if (!this.renderRoot.querySelector<WallSetup>("wall-setup")!.check()) return;
    this.start_at_ms = at_ms;
    if (this.open) return this.renderRoot.querySelector<OpenSessionQuestion>("open-session-question")!.ask(this.open.plan.title);
    enterFullScreen();
    this.control.takeMediaKeys();
    await this.begin();
  }

  private async startInstead(): Promise<void> {
    enterFullScreen();
    await player.restore();
    if (player.snapshot().phase === "elsewhere") return;
    await player.endForAnother();
    await this.begin();
  }

  private async begin(): Promise<void> {
    const { record, start_at_ms } = this;
    const { lanes } = this.wall!;
    const timeline = byClock(forRoom(record!.timeline, lanes));
    this.starting = true;
    this.targets = targetsOf(timeline, lanes);
    try {
      await player.start(record!, timeline, { led_by: "wall", ...(start_at_ms === undefined ? {} : { starts_at_ms: start_at_ms }) });
    } finally {
      this.starting = false;
    }
    this.keep({ plan: { source: record!.source, name: record!.name } });
    if (!this.afar) replaceAddress("/wall");
  }

  private follow(snapshot: Snapshot): void {
    this.version = snapshot.version;
    const { notice } = snapshot;
    if (!notice || notice.number === this.told || !snapshot.led_by) return;
    this.told = notice.number;
    this.say(noticeWords(notice));
  }

  private say(remark: string): void {
    clearTimeout(this.silence);
    this.remark = remark;
    this.silence = setTimeout(() => (this.remark = ""), NOTICE_MS);
  }

  /** A text is handed over, and drawn only if it is another one. The answer says in how many seconds to look again. */
  private paint(): number {
    const { screen } = this;
    const snapshot = player.snapshot();
    if (!screen) return secondsToNextPaint(snapshot);
    const moment = momentOf(snapshot);
    screen.index = snapshot.index;
    if (!same(moment, screen.moment)) screen.moment = moment;
    screen.clock = [this.note, timeOfDay(Date.now())].filter(Boolean).join(" · ");
    screen.beat(snapshot.beat, moves(snapshot));
    return secondsToNextPaint(snapshot);
  }

  private readonly wake = (): void => {
    if (player.snapshot().sound === "lost") void player.wakeSound();
  };

  private readonly holdOrGoOn = (): void => {
    if (player.snapshot().phase === "held") player.goOn();
    else player.hold();
  };

  private readonly extend = (): void => {
    if (player.extend()) this.say(extendedWords(player.snapshot().segment!));
  };

  private readonly leave = (): void => {
    player.close();
    this.open = undefined;
    void this.gather();
  };

  private get screen(): WallScreen | null {
    return this.renderRoot.querySelector<WallScreen>("wall-screen");
  }
}
customElements.define("wall-home", WallHome);

function momentOf({ phase, elapsed_s, left_s, strokes_left, count_in, starts_at_ms, call }: Snapshot): WallMoment {
  return {
    phase, strokes_left, count_in, call,
    elapsed_s: Math.floor(elapsed_s),
    left_s: left_s === null ? null : wholeSecondsLeft(left_s),
    starts_at: starts_at_ms === null ? "" : timeOfDay(starts_at_ms),
  };
}

function same(a: WallMoment, b: WallMoment | undefined): boolean {
  return b !== undefined && (Object.keys(a) as (keyof WallMoment)[]).every((name) => a[name] === b[name]);
}
