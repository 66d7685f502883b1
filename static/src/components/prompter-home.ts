/** The coach's prompter: follows the session that runs on this device, in this tab or another, or runs one of its own. */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import type { Source } from "../data/plans.js";
import { keepPrompter, readPrompter, type PrompterSettings } from "../data/prompter.js";
import { countdown, wholeSecondsGone, wholeSecondsLeft } from "../plan/format.js";
import type { Timeline } from "../plan/wire.js";
import { Follower } from "../state/follower.js";
import { player } from "../state/player.js";
import type { Snapshot } from "../state/snapshot.js";
import { timeOfDay } from "../state/time-of-day.js";
import { byClock } from "../timeline/by-clock.js";
import { changeFullScreen } from "./full-screen.js";
import { Leading } from "./leading.js";
import { secondsToNextPaint } from "./next-paint.js";
import { comingLines, linesOf, positionOf, waitedBefore, type Coming, type Line } from "./prompter-lines.js";
import "./prompter-screen.js";
import type { PrompterRow, PrompterScreen } from "./prompter-screen.js";
import "./prompter-setup.js";
import { goTo, tellScreen } from "./routes.js";
import "./wall-end.js";
import { placeWords, wallFace, wholeLeft } from "./wall-words.js";

/** More than fit, whatever the text size. */
const MOST_ROWS = 14;
/** From so many seconds before it comes, a line stands out. */
const NEAR_S = 6;
const ROWING = new Set(["prompter-screen", "wall-end"]);

export class PrompterHome extends LitElement {
  static override properties = { source: { attribute: false }, name: { attribute: false }, look: { state: true }, following: { state: true } };
  declare source: Source | undefined;
  declare name: string | undefined;
  declare look: PrompterSettings | undefined;
  /** Another tab runs the session that is shown. */
  declare following: boolean;
  private shown = "";
  private drawn = "";
  private lines: { timeline: Timeline | undefined; all: Line[] } = { timeline: undefined, all: [] };
  private readonly follower = new Follower(() => this.requestUpdate());
  private readonly leading = new Leading(this, {
    led_by: "prompter", timelineOf: ({ timeline }) => byClock(timeline), screen: () => (this.following ? null : this.screen), paint: () => this.paint(), address: () => "/prompter",
  });

  constructor() {
    super();
    this.following = false;
  }

  static override styles = css`:host { display: block; }`;

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "Prompter · Slipway";
    void this.gather();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.follower.stop();
  }

  override render() {
    if (!this.look) return nothing;
    const snapshot = this.snapshot();
    if (snapshot.phase === "finished") return html`<wall-end .planTitle=${snapshot.timeline?.plan.title ?? ""} .whole=${snapshot.whole} @leave=${this.leave}></wall-end>`;
    return snapshot.timeline && snapshot.phase !== "elsewhere" ? this.running(snapshot, this.look) : this.settingUp();
  }

  override updated(changed: PropertyValues<this>): void {
    if ((changed.has("name") || changed.has("source")) && this.look) void this.gather();
    this.paint();
    const screen = `${this.renderRoot.firstElementChild?.localName ?? ""} ${this.leading.record?.id ?? ""}`;
    if (screen !== this.shown) tellScreen(this, ROWING.has(screen.split(" ")[0]!) ? "rowing" : "reading");
    this.shown = screen;
  }

  private snapshot(): Snapshot {
    return this.following ? this.follower.snapshot() : player.snapshot();
  }

  private running({ timeline, sound, phase, starts_at_ms }: Snapshot, { size, mirrored }: PrompterSettings) {
    const { leading } = this;
    return html`<prompter-screen .planTitle=${timeline!.plan.title} .held=${phase === "held"} .waiting=${phase === "count-in" && starts_at_ms !== null} .sound=${sound}
      .watching=${this.following} .note=${this.note()} .remark=${leading.remark} .size=${size} .mirrored=${mirrored}
      @start=${() => player.startSoon()} @hold=${leading.holdOrGoOn} @back=${() => player.back()} @skip=${() => player.skip()} @sound=${() => leading.changeSound()}
      @wake=${() => leading.wake()} @full=${changeFullScreen} @end=${() => player.end()} @look=${({ detail }: CustomEvent<PrompterSettings>) => this.choose(detail)}></prompter-screen>`;
  }

  private settingUp() {
    const { record, saved, starting, trouble } = this.leading;
    return html`<prompter-setup .record=${record} .saved=${saved} .starting=${starting} .trouble=${trouble}
      @start=${({ detail }: CustomEvent<number | null>) => void this.leading.start(detail)}></prompter-setup>${this.leading.question()}`;
  }

  private note(): string {
    if (!this.following) return "";
    return this.follower.quiet ? "The tab that runs it is closed or asleep" : "Follows another tab";
  }

  /** The session that runs here, or in another tab, or that led this room before the page was opened again; else the plan asked for. */
  private async gather(): Promise<void> {
    const { leading, follower } = this;
    await leading.lookForOpen();
    const asked = this.name ? { source: this.source!, name: this.name } : undefined;
    const here = player.snapshot();
    this.following = false;
    if (here.phase === "asking") return goTo(this, "/row");
    if (here.phase === "none" && leading.isOpen(asked)) await this.goOn();
    this.look = await readPrompter();
    if (!this.following) follower.stop();
    if (asked && !this.snapshot().timeline) await leading.show(asked, import.meta.url);
  }

  /** What nobody runs any more and led a room goes on here; everything else is only followed. */
  private async goOn(): Promise<void> {
    this.following = await this.follower.begin();
    await this.follower.readAgain();
    if (!this.following || !this.leading.open?.led_by || !this.follower.quiet) return;
    if ((await player.restore()) && player.snapshot().phase !== "elsewhere") this.following = false;
  }

  private choose(look: PrompterSettings): void {
    this.look = look;
    void keepPrompter(look).catch(() => this.leading.take({ remark: "This device could not keep that." }));
  }

  /** A text is handed over only if it is another one. */
  private paint(): number {
    const snapshot = this.snapshot();
    this.show(snapshot);
    return secondsToNextPaint(snapshot);
  }

  private show(snapshot: Snapshot): void {
    const { screen } = this;
    if (!screen) return;
    const { timeline, segment, index, elapsed_s } = snapshot;
    if (!timeline || !segment) return;
    screen.clock = timeOfDay(Date.now());
    screen.place = placeWords(timeline, segment);
    screen.whole = wholeLeft(timeline, segment, elapsed_s);
    const rows = comingLines(this.linesOf(timeline), positionOf(segment, snapshot), waitedBefore(timeline, index), MOST_ROWS).map(rowOf);
    const face = wallFace(segment, {
      ...snapshot, elapsed_s: wholeSecondsGone(elapsed_s), left_s: snapshot.left_s === null ? null : wholeSecondsLeft(snapshot.left_s),
      starts_at: snapshot.starts_at_ms === null ? "" : timeOfDay(snapshot.starts_at_ms),
    });
    const drawn = JSON.stringify([face, rows]);
    if (drawn === this.drawn && screen.face) return;
    this.drawn = drawn;
    screen.face = face;
    screen.rows = rows;
  }

  private linesOf(timeline: Timeline): Line[] {
    if (this.lines.timeline !== timeline) this.lines = { timeline, all: linesOf(timeline) };
    return this.lines.all;
  }

  private readonly leave = (): void => {
    if (!this.following) this.leading.leave();
    this.following = false;
    void this.gather();
  };

  private get screen(): PrompterScreen | null {
    return this.renderRoot.querySelector<PrompterScreen>("prompter-screen");
  }
}
customElements.define("prompter-home", PrompterHome);

function rowOf({ kind, text, focus, in_s }: Coming): PrompterRow {
  const count = in_s === null ? "" : in_s <= 0 ? "now" : countdown(in_s);
  return { kind, text, focus, count, near: in_s !== null && in_s <= NEAR_S };
}
