/** A session from the set-up card to its end: shows the screen that the player's snapshot asks for.
 *
 * Drawn anew when the snapshot's version grows; in between, a frame hands over only what time has changed.
 */
import { LitElement, css, html, nothing } from "lit";
import { keepResult } from "../data/athlete.js";
import { database } from "../data/database.js";
import { addressOfId } from "../data/plans.js";
import { isSound, openSession, putAside, type UnsoundSession } from "../data/sessions.js";
import { faultWords } from "../data/sound-session.js";
import type { Preferences } from "../data/preferences.js";
import type { Source } from "../data/plans.js";
import { canSave, savedProof } from "../offline/worker-bridge.js";
import { wholeSecondsGone, wholeSecondsLeft } from "../plan/format.js";
import type { Result } from "../plan/wire.js";
import { chosen } from "../state/chosen.js";
import { player } from "../state/player.js";
import type { Kept, Snapshot } from "../state/snapshot.js";
import { whatWords } from "./segment-words.js";
import { timeOfDay } from "../state/time-of-day.js";
import "./absence-question.js";
import "./end-screen.js";
import type { GapScreen } from "./gap-screen.js";
import "./gap-screen.js";
import { Painting, moves, secondsToNextPaint } from "./next-paint.js";
import "./other-tab.js";
import { goTo, replaceAddress, tellScreen } from "./routes.js";
import "./row-screen.js";
import type { RowScreen } from "./row-screen.js";
import { RowingControl } from "./rowing-control.js";
import type { Saved } from "./saving.js";
import { asksDone, extendedWords, lateWords, noticeWords } from "./row-words.js";
import "./unsound-session.js";
import "./session-before.js";
import type { Beginning } from "./session-before.js";

/** How long a notice stays where the call is. */
const NOTICE_MS = 8000;
const LOOK_AGAIN_MS = 5000;
const ASK_AGAIN_MS = 1000;
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
    unsound: { state: true },
    silent: { state: true },
    keeping: { state: true },
    chosen: { state: true },
  };
  declare source: Source | undefined;
  declare name: string | undefined;
  declare version: number;
  declare restoring: boolean;
  declare starting: boolean;
  declare proved: boolean;
  declare remark: string;
  /** The session left open, where it cannot be gone on with. */
  declare unsound: UnsoundSession | undefined;
  /** Storage does not answer. */
  declare silent: boolean;
  declare keeping: "" | "kept" | "refused";
  declare chosen: Preferences;
  private stop = (): void => {};
  private readonly painting = new Painting(() => this.paint());
  private told = 0;
  private saidAt = 0;
  private screen = "";
  private silence: ReturnType<typeof setTimeout> | undefined;
  private readonly control = new RowingControl(this, {
    hold: () => this.holdOrGoOn(), back: () => player.back(), skip: () => this.skip(), next: () => this.next(),
    minute: () => this.extend(), check: () => this.renderRoot.querySelector<RowScreen>("row-screen")?.checkStrokes(), end: () => this.rowingScreen()?.askToEnd(),
  });

  constructor() {
    super();
    this.version = 0;
    this.restoring = true;
    this.starting = false;
    this.proved = false;
    this.remark = "";
    this.silent = false;
    this.keeping = "";
    this.chosen = chosen.now;
  }

  static override styles = css`:host { display: block; }`;

  override connectedCallback(): void {
    super.connectedCallback();
    this.told = player.snapshot().notice?.number ?? 0;
    const stops = [player.subscribe((snapshot) => this.follow(snapshot)), chosen.subscribe(() => (this.chosen = chosen.now)), database.subscribe(() => this.requestUpdate())];
    this.stop = () => stops.forEach((stop) => stop());
    this.painting.start();
    void this.restore();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stop();
    this.painting.stop();
  }

  override render() {
    const snapshot = player.snapshot();
    const { phase } = snapshot;
    if (phase === "elsewhere") return html`<other-tab @take-over=${() => void player.takeOver()}></other-tab>`;
    if (phase === "finished") return this.end(snapshot);
    if (phase === "none" || !snapshot.timeline) return this.restoring && !this.silent && !database.isSilent() ? nothing : this.unsound ? this.stranded(this.unsound) : this.preparing();
    const gap = snapshot.segment?.kind === "gap" && phase !== "count-in";
    return html`${gap ? this.gap(snapshot) : this.row(snapshot)}
      ${phase === "asking" ? this.question(snapshot) : nothing}`;
  }

  /** A new kind of screen starts at its heading; a new segment does not. */
  override updated(): void {
    this.paint();
    const screen = this.renderRoot.firstElementChild?.localName ?? "";
    if (screen !== this.screen && screen) tellScreen(this, ROWING.has(screen) ? "rowing" : "reading");
    this.screen = screen;
  }

  /** The session first; only then the long look into the cache, and what nobody needs in order to row: the check of strokes, and what is said of a session. */
  private async restore(): Promise<void> {
    while (this.isConnected && !(await this.foundOut())) await new Promise((done) => setTimeout(done, ASK_AGAIN_MS));
    this.silent = false;
    const { led_by } = player.snapshot();
    if (led_by) return goTo(this, `/${led_by}`);
    this.restoring = false;
    await this.updateComplete;
    import("./later.js").catch(() => undefined);
    await this.prove();
  }

  /** Whether storage has said what there is to go on with; while it does not answer, nobody may think there is nothing. */
  private async foundOut(): Promise<boolean> {
    try {
      const open = (await player.restore()) ? undefined : await openSession();
      this.unsound = open && !isSound(open) ? open : undefined;
      return true;
    } catch {
      this.silent = true;
      return false;
    }
  }

  private stranded({ id, title, plan_id, fault }: UnsoundSession) {
    const aside = async () => {
      await putAside(id);
      this.unsound = undefined;
    };
    return html`<unsound-session .planTitle=${title} .trouble=${faultWords(fault)} .plan=${addressOfId(plan_id)} @aside=${aside}></unsound-session>`;
  }

  private preparing() {
    return html`<session-before .source=${this.source} .name=${this.name} .starting=${this.starting} .silent=${this.restoring} .waiting=${database.isSilent()}
      @begin=${(event: CustomEvent<Beginning>) => void this.begin(event.detail)}></session-before>`;
  }

  private row({ timeline, held, sound, screen, can_extend }: Snapshot) {
    return html`<row-screen .timeline=${timeline} .held=${held} .extendable=${can_extend} .sound=${sound} .saved=${this.saved()}
      .sleeps=${screen === "off" || screen === "impossible"} .chosen=${this.chosen} .remark=${this.remark} @back=${() => player.back()} @hold=${this.holdOrGoOn}
      @skip=${() => player.skip()} @extend=${this.extend} @end=${() => player.end()} @sound=${this.changeSound} @wake=${() => void player.wakeSound()}
      @done=${(event: CustomEvent<number>) => this.done(event.detail)}></row-screen>`;
  }

  private gap({ timeline, index, held, sound, starts_at_ms, can_extend }: Snapshot) {
    return html`<gap-screen .hand=${this.chosen.hand} .buttons=${this.chosen.buttons} .timeline=${timeline} .index=${index} .held=${held} .saved=${this.saved()}
      .startsAt=${starts_at_ms === null ? "" : timeOfDay(starts_at_ms)} @start=${() => player.done()}
      .extendable=${can_extend} .remark=${this.remark} @extend=${this.extend} @back=${() => player.back()} @hold=${this.holdOrGoOn} @end=${() => player.end()}
      .sound=${sound} @sound=${this.changeSound} @by-clock=${(event: CustomEvent<number>) => player.startAtClock(event.detail)}
      @no-clock=${() => player.startAtClock(null)} @wake=${() => void player.wakeSound()}></gap-screen>`;
  }

  private question({ absence, segment }: Snapshot) {
    return html`<absence-question .away_s=${absence?.away_s ?? 0} .where=${segment ? whatWords(segment) : ""} .kind=${absence?.kind ?? "choose"}
      @answer=${(event: CustomEvent<"clock" | "stopped" | "end" | "discard">) => void player.answerAbsence(event.detail)}></absence-question>`;
  }

  private end({ session, timeline, done, pieces, whole, kept }: Snapshot) {
    return html`<end-screen .session=${session ?? ""} .planTitle=${timeline?.plan.title ?? ""} .done=${done} .planned=${timeline?.totals} .pieces=${pieces} .whole=${whole}
      .kept=${kept} .keeping=${this.keeping} @result=${(event: CustomEvent<Result>) => void this.keepResult(event.detail)} @leave=${this.leave}></end-screen>`;
  }

  private follow(snapshot: Snapshot): void {
    this.version = snapshot.version;
    if (snapshot.index !== this.saidAt) this.remark = "";
    const { notice } = snapshot;
    if (!notice || notice.number === this.told) return;
    this.told = notice.number;
    this.say(noticeWords(notice));
  }

  /** What is said of one block is no longer said in the next. */
  private say(remark: string): void {
    clearTimeout(this.silence);
    this.remark = remark;
    this.saidAt = player.snapshot().index;
    this.silence = setTimeout(() => (this.remark = ""), NOTICE_MS);
  }

  /** A tap that ended the metre block before, which had gone on by its estimate, is told: on screen little changes. */
  private done(seconds_ago: number): void {
    const before = player.snapshot();
    player.done(seconds_ago);
    const after = player.snapshot();
    if (after.index === before.index && after.elapsed_s < before.elapsed_s) this.say(lateWords(after.timeline!, after.index));
  }

  /**
   * A text is handed over, and drawn only if it is another one. The answer says in how many seconds to look again. What
   * this look is the first to find may want another screen, so that it is drawn anew first.
   */
  private paint(): number {
    const screen = this.rowingScreen();
    const snapshot = player.snapshot();
    if (snapshot.version !== this.version) this.follow(snapshot);
    else if (screen?.localName === "gap-screen") (screen as GapScreen).left_s = wholeSecondsLeft(snapshot.left_s ?? 0);
    else if (screen) paintRow(screen as RowScreen, snapshot);
    return secondsToNextPaint(snapshot);
  }

  private async keepResult(result: Result): Promise<void> {
    this.keeping = (await keepResult(result).catch(() => false)) ? "kept" : "refused";
  }

  private async begin({ record, timeline }: Beginning): Promise<void> {
    this.control.takeMediaKeys();
    this.starting = true;
    this.keeping = "";
    try {
      await player.start(record, timeline);
    } finally {
      this.starting = false;
    }
    replaceAddress("/row");
  }

  private async prove(): Promise<void> {
    while (this.isConnected && canSave() && !this.proved) {
      this.proved = (await savedProof()).state === "proved";
      if (!this.proved) await new Promise((done) => setTimeout(done, LOOK_AGAIN_MS));
    }
  }

  private saved(): Saved | Exclude<Kept, "disk"> {
    const { kept } = player.snapshot();
    if (kept !== "disk") return kept;
    if (!canSave()) return "insecure";
    return this.proved ? "saved" : "not-saved";
  }

  private readonly holdOrGoOn = (): void => {
    if (player.snapshot().phase === "held") player.goOn();
    else player.hold();
  };

  private rowingScreen(): RowScreen | GapScreen | null {
    return this.renderRoot.querySelector<RowScreen | GapScreen>("row-screen, gap-screen");
  }

  /** Out of a gap into the piece, with its count-in; out of the last block only when asked again. */
  private skip(): void {
    const screen = this.rowingScreen();
    if (screen?.localName === "gap-screen") player.done();
    else (screen as RowScreen | null)?.skip();
  }

  /** The one button of a clicker, or of headphones; pressed twice it must not skip what it has just started. */
  private next(): void {
    const { phase, segment } = player.snapshot();
    if (phase === "count-in") return;
    if (segment && asksDone(segment) && (phase === "running" || phase === "waiting")) this.done(0);
    else this.skip();
  }

  private readonly extend = (): void => {
    if (player.extend()) this.say(extendedWords(player.snapshot().segment!));
  };

  private readonly changeSound = (): void => void player.setSound(player.snapshot().sound === "off");

  private readonly leave = ({ detail: address }: CustomEvent<string>): void => {
    player.close();
    goTo(this, address);
  };
}
customElements.define("session-flow", SessionFlow);

function paintRow(screen: RowScreen, snapshot: Snapshot): void {
  screen.index = snapshot.index;
  screen.elapsed_s = wholeSecondsGone(snapshot.elapsed_s);
  screen.left_s = snapshot.left_s === null ? null : wholeSecondsLeft(snapshot.left_s);
  screen.stroke = snapshot.stroke;
  screen.strokes_left = snapshot.strokes_left;
  screen.call = snapshot.call;
  screen.countIn = snapshot.count_in;
  screen.beat(snapshot.beat, moves(snapshot));
}
