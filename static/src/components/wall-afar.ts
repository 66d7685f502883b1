/** A wall led from afar: asks the server what it is to show, shows it, and says when it last heard.
 *
 * Property: `wall` (its name on the server). What it heard last stands here again after a power cut, with no network.
 */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import { keepHeard, lookAt, readHeard, samePlan, type Heard } from "../data/afar.js";
import { keepReceived } from "../data/links.js";
import type { PlanRecord } from "../data/plans.js";
import { hereAt, narrowed } from "../state/server-time.js";
import { player } from "../state/player.js";
import type { Wall } from "../plan/wire.js";
import { page, type } from "./look.js";
import { tellScreen } from "./routes.js";
import { shortId } from "./wall-card-words.js";
import "./wall-home.js";
import type { WallHome } from "./wall-home.js";
import { heardWords, troubleAfar, type TroubleAfar } from "./wall-words.js";

const POLL_MS = 3000;
/** Without an answer for so long the network counts as gone. */
const GONE_MS = 10_000;
/** What was heard is written down so often, even where nothing is new. */
const WRITE_MS = 60_000;
/** A start that is heard of later than this is not caught up with. */
const LATE_MS = 20_000;
const SECOND_MS = 1000;

export class WallAfar extends LitElement {
  static override properties = { wall: {}, heard: { state: true }, record: { state: true }, trouble: { state: true }, now_ms: { state: true } };
  declare wall: string;
  declare heard: Heard | undefined;
  /** The plan that is shown, as it is kept here. */
  declare record: PlanRecord | undefined;
  declare trouble: TroubleAfar | undefined;
  declare now_ms: number;
  /** Of the last answer that was carried out; what was not is asked for again. */
  private etag = "";
  /** What the wall was told before, and did or does. */
  private told: Wall | undefined;
  private written_ms = 0;
  private ahead: { low: number; high: number } | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.wall = "";
    this.now_ms = Date.now();
  }

  static override styles = [type, page, css`
    .idle { align-content: center; gap: 3vmin; width: auto; min-height: 100dvh; padding: 4vmin 5vw; font-size: clamp(20px, 4.6vmin, 60px); line-height: 1.25; }
    .idle h1 { font-size: 2.4em; }
    .idle p { max-width: 30em; }
    .idle .heard { font-size: 0.75em; color: var(--ink-2); }
    .afar { display: flex; flex-wrap: wrap; gap: 4px 18px; padding: 10px var(--side); background: var(--hull); border-bottom: 1px solid var(--line); }
  `];

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "Wall · Slipway";
    this.addEventListener("screen-changed", this.look);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.timer);
  }

  override updated(changed: PropertyValues<this>): void {
    if (changed.has("wall")) void this.begin();
    if (changed.get("record") && !this.record) tellScreen(this, "rowing");
  }

  override render() {
    const idle = player.snapshot().phase === "none";
    const { record, trouble } = this;
    const { brief, long } = heardWords(this.heard && { at_ms: this.heard.at_ms, gone: this.isGone() }, trouble);
    if (!record) return this.empty(long);
    return html`${idle ? html`<p class="afar small"><span>Wall <b>${shortId(this.wall)}</b>, led from afar.</span><span>${long}</span>${this.nextWords()}</p>` : nothing}
      ${idle && trouble ? html`<p class="afar" role="alert">${trouble.words}</p>` : nothing}
      <wall-home afar .source=${record.source} .name=${record.name} .note=${brief}></wall-home>`;
  }

  private empty(heard: string) {
    const { trouble } = this;
    const ready = this.heard !== undefined;
    return html`<main class="idle"><p>Wall <b>${shortId(this.wall)}</b></p>
      <h1 tabindex="-1">${trouble ? "This wall cannot follow" : ready ? "This wall is ready" : "Opening the wall …"}</h1>
      ${trouble ? html`<p role="alert">${trouble.words}</p>` : ready ? html`<p>It shows nothing yet. Put a plan on it from a phone that has its key: there, under Walls, it stands with <b>${shortId(this.wall)}</b> beside its name.</p>` : nothing}
      <p class="heard" role="status">${heard}</p></main>`;
  }

  private nextWords() {
    const next = (this.heard?.shown.plans ?? []).slice(1).map((plan) => plan.title);
    return next.length ? html`<span>Then: <bdi>${next.join(", ")}</bdi></span>` : nothing;
  }

  private isGone(): boolean {
    return this.now_ms - (this.heard?.at_ms ?? 0) > GONE_MS;
  }

  /** What was heard before first, then whatever the server says, again and again. */
  private async begin(): Promise<void> {
    clearTimeout(this.timer);
    const heard = await readHeard(this.wall);
    if (heard) {
      this.heard = heard;
      await this.follows(heard.shown);
      this.told = heard.shown;
    }
    if (!this.record) tellScreen(this, "rowing");
    await this.ask();
  }

  private async ask(): Promise<void> {
    const { wall } = this;
    try {
      const { shown, etag, ahead } = await lookAt(wall, this.etag);
      this.ahead = narrowed(this.ahead, ahead);
      this.heard = { id: wall, shown: shown ?? this.heard!.shown, at_ms: Date.now(), done_s: this.heard?.done_s ?? null };
      if (!shown || (await this.follows(shown))) {
        [this.etag, this.told, this.trouble] = [etag, this.heard.shown, undefined];
        if (shown || this.heard.at_ms - this.written_ms > WRITE_MS) await this.write();
      }
    } catch (error) {
      this.trouble = troubleAfar(error);
      // A tablet that is opened again says when it last heard.
      if (this.heard && this.heard.at_ms > this.written_ms) await this.write().catch(() => undefined);
    }
    this.now_ms = Date.now();
    if (this.isConnected && wall === this.wall) this.timer = setTimeout(() => void this.ask(), POLL_MS);
  }

  private async write(): Promise<void> {
    this.written_ms = Date.now();
    await keepHeard(this.heard!);
  }

  /** Whether what is asked for could be done; where it could not, it is said. */
  private async follows(shown: Wall): Promise<boolean> {
    try {
      await this.follow(shown);
      return true;
    } catch (error) {
      this.trouble = troubleAfar(error, shown.plans[0]?.title);
      return false;
    }
  }

  /** Shows what is asked for, and starts it; what was carried out before is not done twice. */
  private async follow(shown: Wall): Promise<void> {
    const { told: before } = this;
    const [plan] = shown.plans;
    const starts = shown.starts_at_s !== null && shown.starts_at_s !== this.heard!.done_s;
    // The same plan once more is another start to come, as is one that is put there while it runs.
    const ends = before !== undefined && (!samePlan(plan, before.plans[0]) || (before.starts_at_s !== null && shown.starts_at_s === null));
    const record = plan && (await keepReceived(plan));
    if (record) this.record = record;
    await this.updateComplete;
    if (starts || ends) {
      const start_ms = starts ? hereAt(shown.starts_at_s! * SECOND_MS, this.ahead) : null;
      const late = start_ms !== null && Date.now() - start_ms > LATE_MS;
      await this.renderRoot.querySelector<WallHome>("wall-home")?.lead(record, late ? null : start_ms);
      this.heard = { ...this.heard!, done_s: shown.starts_at_s };
    }
    this.record = record;
  }

  private readonly look = () => this.requestUpdate();
}
customElements.define("wall-afar", WallAfar);
