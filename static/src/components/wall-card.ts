/** One wall on the phone that has its key: what it shows, and the buttons that change it.
 *
 * Properties: `wall`; `plan` (to be put on it, or undefined). Events: `walls` (detail: all walls, after one was changed), `choose` (a plan).
 */
import { LitElement, css, html, nothing } from "lit";
import { keyed } from "lit/directives/keyed.js";
import { lookAtLed, samePlan, show, type Told } from "../data/afar.js";
import { NoAnswer } from "../data/api.js";
import { forgetWall, isWrongKey, keyLink, newKey, readWalls, renameWall, tabletAddress, type KeyedWall } from "../data/keyed-walls.js";
import { compiledForAnybody } from "../plan/compile.js";
import type { Plan, Timeline, Wall } from "../plan/wire.js";
import { narrowed } from "../state/server-time.js";
import "./ask-first.js";
import { hereOnlyLook, hereOnlyWords, isHereOnly } from "./here-only.js";
import { buttons, fields, type } from "./look.js";
import "./qr-code.js";
import { byClock } from "../timeline/by-clock.js";
import "./share-link.js";
import { doneWords, failedWords, shortId, startWords, tabletWords } from "./wall-card-words.js";

const COUNT_IN_S = 10;
const LOOK_MS = 5000;
/** A key that is refused may become right by a link, and the server counts those that are not. */
const REFUSED_MS = 60_000;
const NO_SIGNAL = "The server does not answer: what stands here may be out of date. The wall goes on with what it shows.";
const UNSURE = "The server did not answer: it is not known whether that reached the wall. It is asked again every few seconds; look before you press again.";
const UNSURE_KEY = "The server did not answer: it is not known whether the key was replaced. Both are kept here, and the one that works is used.";
const NOTHING_SAID = () => "";

export class WallCard extends LitElement {
  static override properties = {
    wall: { attribute: false }, plan: { attribute: false }, shown: { state: true }, trouble: { state: true }, busy: { state: true }, said: { state: true },
    telling: { state: true },
  };
  declare wall: KeyedWall;
  declare plan: Plan | undefined;
  declare shown: Wall | undefined;
  declare trouble: string;
  declare busy: boolean;
  /** What was done last, in the light of what the wall is known to show now. */
  declare said: (now: Partial<Wall>) => string;
  /** The addresses and keys are on the screen: they are not for every eye. By itself where no tablet has opened its address yet. */
  declare telling: boolean | undefined;
  /** What is on the wall, by the clock; made once for each version. */
  private line: { version: number; timeline: Timeline } | undefined;
  /** What is not known since something was sent and not answered, until the server answers. */
  private unsure = "";
  private ahead: Told["ahead"] | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.trouble = "";
    this.busy = false;
    this.said = NOTHING_SAID;
  }

  static override styles = [type, buttons, fields, hereOnlyLook, css`
    section { display: grid; gap: 12px; padding: 16px; background: var(--hull); border: 1px solid var(--line); border-radius: var(--r); }
    .ways { display: grid; grid-template-columns: repeat(auto-fit, minmax(150px, 1fr)); gap: 8px; }
    button { background: var(--water); }
    ask-first { --hull: var(--water); }
    .go { background: var(--catch); }
    .telling { display: grid; gap: 10px; }
    .here-only { background: var(--water); }
    summary { min-height: 44px; align-content: center; cursor: pointer; font-weight: 700; text-decoration: underline; text-underline-offset: 4px; }
    qr-code { max-width: 260px; }
    input { background: var(--water); font-family: var(--font); letter-spacing: 0; }
    p[role="status"]:empty { display: none; }
  `];

  override connectedCallback(): void {
    super.connectedCallback();
    void this.look();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.timer);
  }

  override render() {
    const { shown, wall } = this;
    const plans = shown?.plans ?? [];
    const started = shown?.starts_at_s != null;
    return html`<section aria-labelledby="name"><h2 id="name"><bdi>${wall.name}</bdi> <span class="small">${shortId(wall.id)}</span></h2>
      <p>${this.showing()}</p>
      ${plans.length > 1 ? html`<p class="small">Then: <bdi>${plans.slice(1).map(({ title }) => title).join(", ")}</bdi></p>` : nothing}
      ${shown && !this.trouble ? html`<p>${tabletWords(shown)}</p>` : nothing}
      ${this.plan || !shown ? nothing : html`<button type="button" class=${plans.length ? "" : "go"} @click=${() => this.dispatchEvent(new CustomEvent("choose"))}>Choose a plan</button>`}
      ${this.plan ? html`<div class="ways">${!started && samePlan(plans[0], this.plan) ? nothing
          : this.way(started ? "Show it instead" : "Show it now", () => this.change([this.plan!], {}, "It is on the wall."), plans.length ? "" : "go", started)}
        ${plans.length ? this.way("Line it up", () => this.change([...plans, this.plan!], this.start(), "It is lined up.")) : nothing}</div>` : nothing}
      ${plans.length ? html`<div class="ways">
        ${this.way(`Start ${started ? "again " : ""}in ${COUNT_IN_S} s`, () => this.change(plans, { start_in_seconds: COUNT_IN_S }, "It starts."), started ? "" : "go", started)}
        ${plans.length > 1 ? this.way("Next one", () => this.change(plans.slice(1), {}, "The next one is on the wall."), "", started) : nothing}
        ${this.way("Clear", () => this.change([], {}, "The wall is clear."), "", started)}</div>` : nothing}
      <p role="status">${this.said(shown ?? {})}</p>
      ${this.trouble ? html`<p role="alert">${this.trouble}</p>` : nothing}
      <button type="button" aria-expanded=${Boolean(this.telling)} @click=${() => (this.telling = !this.telling)}>${this.telling ? "Hide its address and its key" : "Its address and its key"}</button>
      ${this.telling ? this.addresses() : nothing}
    </section>`;
  }

  private showing() {
    const { shown } = this;
    if (!shown) return this.trouble ? "What it shows is not known." : "Asking what it shows …";
    const [plan] = shown.plans;
    if (!plan) return "It shows nothing.";
    return html`It shows <b dir="auto">${plan.title}</b>, ${startWords(shown.starts_at_s, Date.now() / 1000, this.timelineOf(shown), this.ahead)}.`;
  }

  private timelineOf({ version, plans, starts_at_s }: Wall): Timeline | undefined {
    if (starts_at_s === null) return undefined;
    if (this.line?.version !== version) this.line = { version, timeline: byClock(compiledForAnybody(plans[0]!)) };
    return this.line.timeline;
  }

  /** A button for one thing that can be done; it `asks` first where what a room rows by would be over, or a key worth nothing. */
  private way(words: string, act: () => Promise<void>, look = "", asks = false) {
    if (!asks) return html`<button type="button" class=${look} ?disabled=${this.busy} @click=${act}>${words}</button>`;
    return keyed(words, html`<ask-first .words=${words} yes="Yes, ${words.charAt(0).toLowerCase()}${words.slice(1)}" keep="Leave it as it is" ?busy=${this.busy} @sure=${act}></ask-first>`);
  }

  private addresses() {
    const { wall } = this;
    return html`<div class="telling">
      ${isHereOnly(location.href) ? hereOnlyWords("these links and codes open") : nothing}
      <h3>For the tablet</h3><p class="small">Open this address in its browser, or scan the code with it. It then waits for a plan.</p>
      <share-link label="Address for the tablet" .address=${tabletAddress(wall)} .title=${wall.name}></share-link>
      <qr-code .text=${tabletAddress(wall)} label="Code of the address for the tablet"></qr-code>
      <label for="called">What you call it</label><input id="called" maxlength="40" .value=${wall.name} @change=${this.rename} />
      <details><summary>For another phone: its key</summary><div class="telling">
        <p class="small">Whoever has this link leads the wall. Give it to staff only.</p>
        ${wall.next_key === undefined ? nothing : html`<p class="small">The key was to be replaced, and the server did not answer. Press Replace the key again before you give out this link.</p>`}
        <share-link label="Key link" .address=${keyLink(wall)} .title=${wall.name}></share-link>
        <qr-code .text=${keyLink(wall)} label="Code of the key link"></qr-code>
        <div class="ways">${this.way("Replace the key", () => this.renew(), "", true)}</div></div></details>
      <div class="ways">${this.way("Take it off this device", this.forget, "", true)}</div></div>`;
  }

  /** A start that was given stays as it is when something is lined up. */
  private start(): { starts_at_s?: number } {
    const at = this.shown?.starts_at_s;
    return at === null || at === undefined ? {} : { starts_at_s: at };
  }

  private async look(): Promise<void> {
    clearTimeout(this.timer);
    const refused = await this.attempt(async () => {
      this.hear(await lookAtLed(this.wall));
      this.unsure = "";
    });
    if (this.isConnected) this.timer = setTimeout(() => void this.look(), refused ? REFUSED_MS : LOOK_MS);
  }

  private hear({ shown, ahead }: Told): Wall {
    this.ahead = narrowed(this.ahead, ahead);
    this.telling ??= shown.asked_s_ago === null;
    return (this.shown = shown);
  }

  private async change(plans: readonly Plan[], start: { start_in_seconds?: number; starts_at_s?: number }, said: string): Promise<void> {
    if (this.busy) return;
    await this.send(async () => {
      const then = this.hear(await show(this.wall, plans, start, this.shown?.version));
      this.said = (now) => doneWords(said, then, now);
    });
    // What somebody else has changed meanwhile is shown, and can then be changed.
    const { trouble } = this;
    await this.look();
    this.trouble ||= trouble;
  }

  private async renew(): Promise<void> {
    await this.send(async () => {
      await newKey(this.wall);
      this.said = () => "The key is another one now: the links given out before lead nowhere.";
    }, UNSURE_KEY);
  }

  /** Does what changes something on the server, one thing at a time. */
  private async send(act: () => Promise<void>, unsure = UNSURE): Promise<void> {
    if (this.busy) return;
    [this.busy, this.said] = [true, NOTHING_SAID];
    await this.attempt(async () => {
      try {
        await act();
        this.unsure = "";
      } catch (error) {
        this.unsure = error instanceof NoAnswer ? unsure : "";
        throw error;
      }
    });
    const walls = await readWalls();
    if (walls.some(({ id }) => id === this.wall.id)) this.tell(walls);
    this.busy = false;
  }

  /** Says what went wrong; the answer is whether the key was refused. */
  private async attempt(act: () => Promise<void>): Promise<boolean> {
    try {
      await act();
      this.trouble = "";
      return false;
    } catch (error) {
      this.trouble = error instanceof NoAnswer ? this.unsure || NO_SIGNAL : failedWords(error);
      return isWrongKey(error);
    }
  }

  private async rename({ target }: Event): Promise<void> {
    this.tell(await renameWall(this.wall.id, (target as HTMLInputElement).value.trim() || this.wall.name));
  }

  private readonly forget = async (): Promise<void> => this.tell(await forgetWall(this.wall.id));

  private tell(walls: readonly KeyedWall[]): void {
    this.dispatchEvent(new CustomEvent("walls", { detail: walls }));
  }
}
customElements.define("wall-card", WallCard);
