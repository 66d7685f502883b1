/** A session from the set-up card to its end: shows the screen that the player's snapshot asks for.
 *
 * Drawn anew when the snapshot's version grows; in between, a frame hands over only what time has changed.
 */
import { LitElement, css, html, nothing } from "lit";
import { keepResult } from "../data/athlete.js";
import type { Preferences } from "../data/preferences.js";
import { canSave, savedProof } from "../offline/worker-bridge.js";
import { wholeSecondsLeft } from "../plan/format.js";
import type { Result } from "../plan/wire.js";
import { chosen } from "../state/chosen.js";
import { player } from "../state/player.js";
import type { Snapshot } from "../state/snapshot.js";
import { whatWords } from "./segment-words.js";
import { timeOfDay } from "../state/time-of-day.js";
import "./absence-question.js";
import "./end-screen.js";
import type { GapScreen } from "./gap-screen.js";
import "./gap-screen.js";
import "./other-tab.js";
import { goTo, tellScreen } from "./routes.js";
import "./row-screen.js";
import type { RowScreen } from "./row-screen.js";
import type { Saved } from "./saving.js";
import { lateWords, noticeWords } from "./row-words.js";
import "./session-before.js";
import type { Beginning } from "./session-before.js";

/** How long a notice stays where the call is. */
const NOTICE_MS = 8000;
const LOOK_AGAIN_MS = 5000;
const ROWING = new Set(["row-screen", "gap-screen"]);

export class SessionFlow extends LitElement {
  static override properties = {
    source: { attribute: false },
    name: { attribute: false },
    version: { state: true },
    restoring: { state: true },
    starting: { state: true },
    proved: { state: true },
    remark: { state: true },
    keeping: { state: true },
    chosen: { state: true },
  };
  declare source: "built-in" | "mine" | undefined;
  declare name: string | undefined;
  declare version: number;
  declare restoring: boolean;
  declare starting: boolean;
  declare proved: boolean;
  declare remark: string;
  declare keeping: "" | "kept" | "refused";
  declare chosen: Preferences;
  private stop = (): void => {};
  private frame = 0;
  private told = 0;
  private screen = "";
  private silence: ReturnType<typeof setTimeout> | undefined;
  private readonly onKey = (event: KeyboardEvent) => this.key(event);

  constructor() {
    super();
    this.version = 0;
    this.restoring = true;
    this.starting = false;
    this.proved = false;
    this.remark = "";
    this.keeping = "";
    this.chosen = chosen.now;
  }

  static override styles = css`:host { display: block; }`;

  override connectedCallback(): void {
    super.connectedCallback();
    this.told = player.snapshot().notice?.number ?? 0;
    const stops = [player.subscribe((snapshot) => this.follow(snapshot)), chosen.subscribe(() => (this.chosen = chosen.now))];
    this.stop = () => stops.forEach((stop) => stop());
    addEventListener("keydown", this.onKey);
    this.frame = requestAnimationFrame(this.paint);
    void this.restore();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stop();
    removeEventListener("keydown", this.onKey);
    cancelAnimationFrame(this.frame);
  }

  override render() {
    const snapshot = player.snapshot();
    const { phase } = snapshot;
    if (phase === "elsewhere") return html`<other-tab @take-over=${() => void player.takeOver()}></other-tab>`;
    if (phase === "finished") return this.end(snapshot);
    if (phase === "none" || !snapshot.timeline) return this.restoring ? nothing : this.preparing();
    const gap = snapshot.segment?.kind === "gap" && phase !== "count-in";
    return html`${gap ? this.gap(snapshot) : this.row(snapshot)}
      ${phase === "asking" ? this.question(snapshot) : nothing}`;
  }

  /** A new kind of screen starts at its heading; a new segment does not. */
  override updated(): void {
    this.paintOnce();
    const screen = this.renderRoot.firstElementChild?.localName ?? "";
    if (screen !== this.screen && screen) tellScreen(this, ROWING.has(screen) ? "rowing" : "reading");
    this.screen = screen;
  }

  /** The session first; only then the long look into the cache. */
  private async restore(): Promise<void> {
    await player.restore().catch(() => false);
    const { led_by } = player.snapshot();
    if (led_by) return goTo(this, `/${led_by}`);
    this.restoring = false;
    await this.updateComplete;
    await this.prove();
  }

  private preparing() {
    return html`<session-before .source=${this.source} .name=${this.name} .starting=${this.starting}
      @begin=${(event: CustomEvent<Beginning>) => void this.begin(event.detail)}></session-before>`;
  }

  private row({ timeline, phase, sound, screen }: Snapshot) {
    return html`<row-screen .timeline=${timeline} .held=${phase === "held"} .sound=${sound} .saved=${this.saved()}
      .sleeps=${screen === "off" || screen === "impossible"} .chosen=${this.chosen} .remark=${this.remark} @back=${() => player.back()} @hold=${this.holdOrGoOn}
      @skip=${() => player.skip()} @end=${() => player.end()} @sound=${this.changeSound} @wake=${() => void player.wakeSound()}
      @done=${(event: CustomEvent<number>) => this.done(event.detail)}></row-screen>`;
  }

  private gap({ timeline, index, phase, sound, starts_at_ms }: Snapshot) {
    return html`<gap-screen .hand=${this.chosen.hand} .timeline=${timeline} .index=${index} .held=${phase === "held"} .saved=${this.saved()}
      .startsAt=${starts_at_ms === null ? "" : timeOfDay(starts_at_ms)} @start=${() => player.done()}
      @back=${() => player.back()} @hold=${this.holdOrGoOn} @end=${() => player.end()}
      .sound=${sound} @sound=${this.changeSound} @by-clock=${(event: CustomEvent<number>) => player.startAtClock(event.detail)}
      @no-clock=${() => player.startAtClock(null)}></gap-screen>`;
  }

  private question({ absence, segment }: Snapshot) {
    return html`<absence-question .away_s=${absence?.away_s ?? 0} .where=${segment ? whatWords(segment) : ""} .kind=${absence?.kind ?? "choose"}
      @answer=${(event: CustomEvent<"clock" | "stopped" | "end" | "discard">) => void player.answerAbsence(event.detail)}></absence-question>`;
  }

  private end({ timeline, done, pieces, whole }: Snapshot) {
    return html`<end-screen .planTitle=${timeline?.plan.title ?? ""} .done=${done} .planned=${timeline?.totals} .pieces=${pieces} .whole=${whole}
      .keeping=${this.keeping} @result=${(event: CustomEvent<Result>) => void this.keepResult(event.detail)} @leave=${this.leave}></end-screen>`;
  }

  private follow(snapshot: Snapshot): void {
    this.version = snapshot.version;
    const { notice } = snapshot;
    if (!notice || notice.number === this.told) return;
    this.told = notice.number;
    this.say(noticeWords(notice));
  }

  private say(remark: string): void {
    clearTimeout(this.silence);
    this.remark = remark;
    this.silence = setTimeout(() => (this.remark = ""), NOTICE_MS);
  }

  /** A tap that ended the metre block before, which had gone on by its estimate, is told: on screen little changes. */
  private done(seconds_ago: number): void {
    const before = player.snapshot();
    player.done(seconds_ago);
    const after = player.snapshot();
    if (after.index === before.index && after.elapsed_s < before.elapsed_s) this.say(lateWords(after.timeline!, after.index));
  }

  /** Every frame: the rail moves; a text is handed over and drawn only if it is another one. */
  private readonly paint = (): void => {
    this.paintOnce();
    this.frame = requestAnimationFrame(this.paint);
  };

  private paintOnce(): void {
    const screen = this.renderRoot.querySelector<RowScreen | GapScreen>("row-screen, gap-screen");
    if (!screen) return;
    const snapshot = player.snapshot();
    if (screen.localName === "gap-screen") (screen as GapScreen).left_s = wholeSecondsLeft(snapshot.left_s ?? 0);
    else paintRow(screen as RowScreen, snapshot);
  }

  private async keepResult(result: Result): Promise<void> {
    this.keeping = (await keepResult(result).catch(() => false)) ? "kept" : "refused";
  }

  private async begin({ record, timeline }: Beginning): Promise<void> {
    this.starting = true;
    this.keeping = "";
    try {
      await player.start(record, timeline);
    } finally {
      this.starting = false;
    }
    history.replaceState(null, "", "/row");
  }

  private async prove(): Promise<void> {
    while (this.isConnected && canSave() && !this.proved) {
      this.proved = (await savedProof()).state === "proved";
      if (!this.proved) await new Promise((done) => setTimeout(done, LOOK_AGAIN_MS));
    }
  }

  private saved(): Saved | "memory" {
    if (player.snapshot().kept === "memory") return "memory";
    if (!canSave()) return "insecure";
    return this.proved ? "saved" : "not-saved";
  }

  private readonly holdOrGoOn = (): void => {
    if (player.snapshot().phase === "held") player.goOn();
    else player.hold();
  };

  private skip(): void {
    this.renderRoot.querySelector<RowScreen>("row-screen")?.skip();
  }

  private readonly changeSound = (): void => void player.setSound(player.snapshot().sound === "off");

  private readonly leave = (): void => {
    player.close();
    goTo(this, "/");
  };

  /** Space holds and goes on, the arrows go back and skip; not while a button, a field or a question has the keys. */
  private key(event: KeyboardEvent): void {
    const rowing = ["count-in", "running", "waiting", "held"].includes(player.snapshot().phase);
    const busy = event.composedPath().some((node) => node instanceof HTMLElement && node.matches("button, input, a, summary, dialog"));
    if (!rowing || busy || event.repeat || event.ctrlKey || event.metaKey || event.altKey) return;
    const action = { " ": this.holdOrGoOn, ArrowLeft: () => player.back(), ArrowRight: () => this.skip() }[event.key];
    if (!action) return;
    event.preventDefault();
    action();
  }
}
customElements.define("session-flow", SessionFlow);

function paintRow(screen: RowScreen, snapshot: Snapshot): void {
  screen.index = snapshot.index;
  screen.elapsed_s = Math.floor(snapshot.elapsed_s);
  screen.left_s = snapshot.left_s === null ? null : wholeSecondsLeft(snapshot.left_s);
  screen.stroke = snapshot.stroke;
  screen.strokes_left = snapshot.strokes_left;
  screen.call = snapshot.call;
  screen.countIn = snapshot.count_in;
  screen.beat(snapshot.beat?.share ?? null, snapshot.beat?.drive ?? 0);
}
