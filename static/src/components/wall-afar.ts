/** A wall led from afar: asks the server what it is to show, shows it, and says when it last heard.
 *
 * Property: `wall` (its name on the server). What it heard last stands here again after a power cut, with no network.
 */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import { keepHeard, lookAt, readHeard, samePlan, type Heard } from "../data/afar.js";
import { Refused } from "../data/api.js";
import { keepReceived } from "../data/links.js";
import { hereAt, narrowed } from "../state/server-time.js";
import { player } from "../state/player.js";
import type { Wall } from "../plan/wire.js";
import { page, type } from "./look.js";
import { tellScreen } from "./routes.js";
import "./wall-home.js";
import type { WallHome } from "./wall-home.js";

const POLL_MS = 3000;
/** Without an answer for so long the network counts as gone. */
const GONE_MS = 10_000;
/** What was heard is written down so often, even where nothing is new. */
const WRITE_MS = 60_000;
/** A start that is heard of later than this is not caught up with. */
const LATE_MS = 20_000;
const SECOND_MS = 1000;

export class WallAfar extends LitElement {
  static override properties = { wall: {}, heard: { state: true }, name: { state: true }, trouble: { state: true }, now_ms: { state: true } };
  declare wall: string;
  declare heard: Heard | undefined;
  /** Under which the plan that is shown is kept here; "" for none. */
  declare name: string;
  declare trouble: string;
  declare now_ms: number;
  private etag = "";
  private written_ms = 0;
  private ahead: { low: number; high: number } | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.wall = "";
    this.name = "";
    this.trouble = "";
    this.now_ms = Date.now();
  }

  static override styles = [type, page, css`
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
  }

  override render() {
    const idle = player.snapshot().phase === "none";
    if (!this.name) return this.empty();
    return html`${idle ? html`<p class="afar small"><span>Led from afar.</span><span>${this.heardWords()}</span>${this.nextWords()}</p>` : nothing}
      <wall-home afar .source=${"sent"} .name=${this.name} .note=${this.glance()}></wall-home>`;
  }

  private empty() {
    const ready = this.heard !== undefined;
    return html`<main><h1 tabindex="-1">${ready ? "This wall is ready" : "Opening the wall …"}</h1>
      ${this.trouble ? html`<p role="alert">${this.trouble}</p>` : ready ? html`<p>It shows nothing yet. Put a plan on it from a phone that has its key.</p>` : nothing}
      <p role="status">${this.heardWords()}</p></main>`;
  }

  private nextWords() {
    const next = (this.heard?.shown.plans ?? []).slice(1).map((plan) => plan.title);
    return next.length ? html`<span>Then: <bdi>${next.join(", ")}</bdi></span>` : nothing;
  }

  private heardWords(): string {
    if (!this.heard) return "It has not heard from the server yet.";
    const time = timeWords(this.heard.at_ms);
    return this.isGone() ? `No signal: last heard from the server at ${time}.` : `Heard from the server at ${time}.`;
  }

  /** The same beside the clock of a session, where there is little room. */
  private glance(): string {
    return this.heard ? `${this.isGone() ? "no signal since" : "heard"} ${timeWords(this.heard.at_ms)}` : "";
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
      await this.follow(heard.shown, undefined);
    }
    tellScreen(this);
    await this.ask();
  }

  private async ask(): Promise<void> {
    const { wall } = this;
    try {
      const { shown, etag, ahead } = await lookAt(wall, this.etag);
      [this.etag, this.ahead, this.trouble] = [etag, narrowed(this.ahead, ahead), ""];
      const before = this.heard;
      const now = shown ?? before!.shown;
      this.heard = { id: wall, shown: now, at_ms: Date.now(), done_s: before?.done_s ?? null };
      if (shown) await this.follow(shown, before?.shown);
      if (shown || this.heard.at_ms - this.written_ms > WRITE_MS) await this.write();
    } catch (error) {
      if (error instanceof Refused) this.trouble = error.message;
    }
    this.now_ms = Date.now();
    if (this.isConnected && wall === this.wall) this.timer = setTimeout(() => void this.ask(), POLL_MS);
  }

  private async write(): Promise<void> {
    this.written_ms = Date.now();
    await keepHeard(this.heard!);
  }

  /** Shows what is asked for, and starts it; what was carried out before is not done twice. */
  private async follow(shown: Wall, before: Wall | undefined): Promise<void> {
    const [plan] = shown.plans;
    const starts = shown.starts_at_s !== null && shown.starts_at_s !== this.heard!.done_s;
    const other = !samePlan(plan, before?.plans[0]);
    const record = plan && (await keepReceived(plan));
    this.name = record?.name ?? "";
    await this.updateComplete;
    const home = this.renderRoot.querySelector<WallHome>("wall-home");
    if (!starts && !(before && other)) return;
    const start_ms = starts ? hereAt(shown.starts_at_s! * SECOND_MS, this.ahead) : undefined;
    const late = start_ms !== undefined && Date.now() - start_ms > LATE_MS;
    this.heard = { ...this.heard!, done_s: shown.starts_at_s };
    if (home) await home.lead(record, late ? undefined : start_ms);
    else if (player.snapshot().led_by) await player.endForAnother();
  }

  private readonly look = () => this.requestUpdate();
}
customElements.define("wall-afar", WallAfar);

function timeWords(at_ms: number): string {
  return new Date(at_ms).toLocaleTimeString([], { hour12: false });
}
