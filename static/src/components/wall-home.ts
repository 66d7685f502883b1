/** A wall from its set-up to its end: hands the session that leads the room to the wall, and what is pressed there to the player. */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import { wallThatLeads } from "../data/afar.js";
import type { PlanRecord, Source } from "../data/plans.js";
import { changeWall, readWall, type Sight, type WallSettings } from "../data/wall.js";
import { wholeSecondsGone, wholeSecondsLeft } from "../plan/format.js";
import { forRoom, targetsOf, type Lane } from "../plan/lanes.js";
import type { Target, Timeline } from "../plan/wire.js";
import { player } from "../state/player.js";
import type { Snapshot } from "../state/snapshot.js";
import { timeOfDay } from "../state/time-of-day.js";
import { byClock } from "../timeline/by-clock.js";
import { changeFullScreen } from "./full-screen.js";
import { Leading } from "./leading.js";
import { moves, secondsToNextPaint } from "./next-paint.js";
import "./other-tab.js";
import { goTo, tellScreen } from "./routes.js";
import "./wall-end.js";
import "./wall-screen.js";
import type { WallScreen } from "./wall-screen.js";
import "./wall-setup.js";
import type { WallSetup } from "./wall-setup.js";
import type { WallMoment } from "./wall-words.js";

const REFUSED = "This device could not keep that: its storage is full or closed to this page. It holds until the page is closed.";
const ROWING = new Set(["wall-screen", "wall-end"]);

export class WallHome extends LitElement {
  static override properties = {
    source: { attribute: false }, name: { attribute: false }, afar: { type: Boolean }, note: {}, wall: { state: true }, targets: { state: true },
  };
  declare source: Source | undefined;
  declare name: string | undefined;
  /** Led from afar: the address stays that of the wall. */
  declare afar: boolean;
  /** What stands before the time of day while a session runs, or "". */
  declare note: string;
  declare wall: WallSettings | undefined;
  declare targets: readonly (readonly (Target | undefined)[])[];
  private lost = 0;
  /** Settled once it is known what is open here. */
  private gathered: Promise<void> = Promise.resolve();
  private shown = "";
  private readonly leading = new Leading(this, {
    led_by: "wall", timelineOf: (record) => this.timelineOf(record), screen: () => this.screen, paint: () => this.paint(),
    address: () => (this.afar ? undefined : "/wall"),
  });

  constructor() {
    super();
    this.afar = false;
    this.note = "";
    this.targets = [];
  }

  static override styles = css`:host { display: block; }`;

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "Wall · Slipway";
    this.gathered = this.gather();
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
    const screen = `${this.renderRoot.firstElementChild?.localName ?? ""} ${this.leading.record?.id ?? ""}`;
    if (screen !== this.shown) tellScreen(this, ROWING.has(screen.split(" ")[0]!) ? "rowing" : "reading");
    this.shown = screen;
  }

  private running({ timeline, sound }: Snapshot, { lanes, sight }: WallSettings) {
    const { leading } = this;
    return html`<wall-screen .timeline=${timeline} .sound=${sound} .remark=${leading.remark} .lanes=${lanes} .targets=${this.targets} .sight=${sight}
      @start=${() => player.startSoon()} @hold=${leading.holdOrGoOn} @back=${() => player.back()} @skip=${() => player.skip()}
      @sound=${() => leading.changeSound()} @wake=${() => leading.wake()} @full=${changeFullScreen} @end=${() => player.end()}
      @lanes=${({ detail }: CustomEvent<Lane[]>) => this.changeLanes(detail)}></wall-screen>`;
  }

  private settingUp(wall: WallSettings) {
    const { record, saved, starting, trouble } = this.leading;
    return html`<wall-setup .record=${record} .wall=${wall} .lost=${this.lost} .saved=${saved} .starting=${starting} .trouble=${trouble}
        @lanes=${({ detail }: CustomEvent<Lane[]>) => this.keep({ lanes: detail })} @sight=${({ detail }: CustomEvent<Sight>) => this.keep({ sight: detail })}
        @start=${({ detail }: CustomEvent<number | null>) => void this.start(detail)}></wall-setup>${this.leading.question()}`;
  }

  /** A session that leads this room goes on by itself; one that somebody rows is left alone. */
  private async gather(): Promise<void> {
    const { leading } = this;
    await leading.lookForOpen();
    const { wall, lost } = await readWall();
    const asked = this.name ? { source: this.source!, name: this.name } : undefined;
    const led_from = asked || this.afar || !leading.open?.led_by ? undefined : await wallThatLeads(leading.open.plan);
    if (!this.isConnected) return;
    if (led_from) return goTo(this, `/wall/${led_from}`);
    if (leading.open?.led_by && leading.isOpen(asked)) await player.restore();
    const { timeline, led_by } = player.snapshot();
    if (timeline && led_by) this.targets = targetsOf(timeline, wall.lanes);
    this.lost = lost;
    this.wall = wall;
    const plan = asked ?? wall.plan;
    if (!led_by && plan) void leading.show(plan, import.meta.url);
  }

  /** From afar: this plan, started at that moment (ms since 1970), or waiting. What led the room until now is ended; what somebody rows is not. */
  async lead(record: PlanRecord | undefined, starts_at_ms: number | null): Promise<void> {
    await this.gathered;
    await this.leading.lead(record, starts_at_ms);
  }

  private keep(changes: Partial<WallSettings>): void {
    this.wall = { ...this.wall!, ...changes };
    void changeWall(changes).catch(() => this.leading.take({ trouble: REFUSED }));
  }

  /** While it runs: what is asked of each follows, the blocks stay as long as they are. */
  private changeLanes(lanes: readonly Lane[]): void {
    this.targets = targetsOf(player.snapshot().timeline!, lanes);
    this.keep({ lanes });
  }

  private async start(at_ms: number | null): Promise<void> {
    if (this.renderRoot.querySelector<WallSetup>("wall-setup")!.check()) await this.leading.start(at_ms);
  }

  private timelineOf({ source, name, timeline }: PlanRecord): Timeline {
    const { lanes } = this.wall!;
    const run = byClock(forRoom(timeline, lanes));
    this.targets = targetsOf(run, lanes);
    this.keep({ plan: { source, name } });
    return run;
  }

  /** A text is handed over only if it is another one. The answer says in how many seconds to look again. */
  private paint(): number {
    const { screen } = this;
    const snapshot = player.snapshot();
    if (!screen) return secondsToNextPaint(snapshot);
    const moment = momentOf(snapshot);
    screen.index = snapshot.index;
    if (!same(moment, screen.moment)) screen.moment = moment;
    screen.note = this.note;
    screen.clock = timeOfDay(Date.now());
    screen.beat(snapshot.beat, moves(snapshot));
    return secondsToNextPaint(snapshot);
  }

  private readonly leave = (): void => {
    this.leading.leave();
    void this.gather();
  };

  /** None where this was taken off the page before it could be drawn there. */
  private get screen(): WallScreen | null {
    return !this.isConnected ? null : this.renderRoot.querySelector<WallScreen>("wall-screen");
  }
}
customElements.define("wall-home", WallHome);

function momentOf({ phase, elapsed_s, left_s, strokes_left, count_in, starts_at_ms, call }: Snapshot): WallMoment {
  return {
    phase, strokes_left, count_in, call,
    elapsed_s: wholeSecondsGone(elapsed_s),
    left_s: left_s === null ? null : wholeSecondsLeft(left_s),
    starts_at: starts_at_ms === null ? "" : timeOfDay(starts_at_ms),
  };
}

function same(a: WallMoment, b: WallMoment | undefined): boolean {
  return b !== undefined && (Object.keys(a) as (keyof WallMoment)[]).every((name) => a[name] === b[name]);
}
