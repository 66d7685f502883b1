/** The first screen: a running session first, then what is rowed today; below, plans to open.
 *
 * Properties: `builtIn`, `kept` (plan cards), `newcomer` (for whom a first row stands near the top), `ready` (kept plans are proved to run with no signal), `running`
 * (title of an open session, or ""), `stranded` (it cannot be gone on with), `unsound` (kept plans that cannot be used), `notice` (one line about
 * the connection, or ""), `trouble` (why the library is not there, or ""), `updateReady`. What follows from the kind of piece is imported.
 * Events: `resume`, `update`.
 */
import { LitElement, css, html, nothing, type TemplateResult } from "lit";
import type { UnsoundPlan } from "../data/plans.js";
import { KINDS, type Kind } from "../plan/kinds.js";
import { choices, tiles } from "./choice-look.js";
import { buttons, page, type } from "./look.js";
import "./plan-library.js";
import type { PlanCard } from "./plan-library.js";

/** How many kept plans are shown before one asks for all. */
const LATEST = 5;

export class FirstScreen extends LitElement {
  static override properties = {
    builtIn: { attribute: false },
    kept: { attribute: false },
    ready: { type: Boolean },
    newcomer: { type: Boolean },
    running: {},
    stranded: { type: Boolean },
    unsound: { attribute: false },
    notice: {},
    trouble: {},
    updateReady: { type: Boolean },
    kind: { state: true },
    lacking: { state: true },
    wholeKept: { state: true },
  };
  declare builtIn: readonly PlanCard[] | undefined;
  declare kept: readonly PlanCard[];
  declare ready: boolean;
  declare newcomer: boolean;
  declare running: string;
  declare stranded: boolean;
  declare unsound: readonly UnsoundPlan[];
  declare notice: TemplateResult | string;
  declare trouble: string;
  declare updateReady: boolean;
  declare kind: Kind | undefined;
  /** The part that makes sessions is not on this device, and could not be fetched. */
  declare lacking: boolean;
  /** Every kept plan is shown, not the latest alone. */
  declare wholeKept: boolean;

  constructor() {
    super();
    this.kept = [];
    this.ready = false;
    this.newcomer = false;
    this.running = "";
    this.stranded = false;
    this.unsound = [];
    this.notice = "";
    this.trouble = "";
    this.updateReady = false;
    this.lacking = false;
    this.wholeKept = false;
  }

  override firstUpdated(): void {
    this.fetchMaking();
  }

  static override styles = [type, buttons, page, choices, css`
    main { gap: 30px; }
    fieldset { min-width: 0; }
    .today { display: grid; gap: 20px; }
    .kinds .tiles { grid-template-columns: 1fr 1fr; }
    .kinds .tiles span { min-height: 64px; font-size: 1.1875rem; }
    nav { display: flex; flex-wrap: wrap; gap: 10px; }
    nav a { flex: 1 1 auto; }
    /* last and in a row of its own: it comes when what is kept has been read, and must push nothing from under a finger */
    nav .first { flex-basis: 100%; }
    @media (min-width: 560px) { .kinds .tiles { grid-template-columns: repeat(3, 1fr); } }
    section { display: grid; gap: 12px; }
    plan-finder { display: grid; gap: 30px; }
    /* as high as the search, which comes later and must push nothing from under a finger */
    plan-finder:not(:defined)::before { content: ""; height: 176px; }
    .running { padding: 16px; background: var(--hull); border: 2px solid var(--catch); border-radius: var(--r); }
    .running b { font-size: 1.25rem; overflow-wrap: anywhere; }
    .notice { padding: 12px 14px; border-left: 6px solid var(--edge); background: var(--hull); border-radius: 6px var(--r) var(--r) 6px; }
    @media (min-width: 900px) { main { width: min(100%, 1000px); } }
  `];

  override render() {
    return html`<main>
      <h1 tabindex="-1" id="question">What are you rowing today?</h1>
      ${this.running ? this.open() : nothing}
      ${this.today()}
      <nav aria-label="More"><a class="button" href="/athlete">Your results</a>
        <a class="button" href="/log">Log</a>
        <a class="button" href="/write">Write your own</a>
        ${this.newcomer ? html`<a class="button first" href="/plan/first-row">Never rowed? A first row</a>` : nothing}</nav>
      ${this.notice ? html`<p class="notice">${this.notice}</p>` : nothing}
      ${this.updateReady ? html`<p class="notice">A newer Slipway is ready. <button type="button" @click=${() => this.tell("update")}>Change to it now</button></p>` : nothing}
      ${this.unsound.length ? this.damaged() : nothing}
      <plan-finder .plans=${this.all()}>${this.kept.length ? html`<section aria-labelledby="kept"><h2 id="kept" tabindex="-1">${this.ready ? "Ready with no signal" : "Opened on this device before"}</h2>
        <plan-library .plans=${this.wholeKept ? this.kept : this.kept.slice(0, LATEST)}></plan-library>
        ${this.kept.length > LATEST && !this.wholeKept ? html`<button type="button" @click=${() => (this.wholeKept = true)}>Show all ${this.kept.length}</button>` : nothing}
      </section>` : nothing}
      <section aria-labelledby="library"><h2 id="library" tabindex="-1">Plans</h2>
        ${this.builtIn ? html`<plan-library grouped .plans=${this.builtIn}></plan-library>` : html`<p class="small" role="status">Fetching the plans …</p>`}
        ${this.trouble ? html`<p role="status">${this.trouble}</p>` : nothing}
      </section></plan-finder>
      <plan-file-entry></plan-file-entry>
      <nav aria-label="Besides"><a class="button" href="/technique">Positions, drills and calls</a>
        <a class="button" href="/walls">Walls in the room</a>
        <a class="button" href="/prompter">Coach’s prompter</a>
        <a class="button" href="/settings">Settings</a></nav>
    </main>`;
  }

  /** Every plan once: one of the library that was opened before is saved as well. */
  private all(): PlanCard[] {
    const kept = new Map(this.kept.map((card) => [card.href, card]));
    const library = this.builtIn ?? [];
    const own = this.kept.filter(({ href }) => !library.some((card) => card.href === href));
    return [...own, ...library.map((card) => ({ ...card, saved: kept.get(card.href)?.saved ?? false }))];
  }

  private today() {
    const options = KINDS.map(({ kind, name }) => ({ value: kind, name }));
    return html`<section class="today" aria-labelledby="question">
      <fieldset class="kinds" aria-labelledby="question">${tiles("kind", options, this.kind, (kind) => this.choose(kind))}</fieldset>
      ${!this.kind ? nothing : this.lacking ? html`<p role="alert">Making a session needs signal, and there is none. ${this.toKept()}</p>`
        : html`<session-making .kind=${this.kind}>${this.toKept()}</session-making>`}
    </section>`;
  }

  private choose(kind: Kind): void {
    this.kind = kind;
    if (this.lacking) this.fetchMaking();
  }

  private fetchMaking(): void {
    import("./later.js").then(() => (this.lacking = false), () => (this.lacking = true));
  }

  private toKept() {
    const place = this.kept.length ? "kept" : "library";
    const go = (event: Event) => {
      event.preventDefault();
      const heading = this.renderRoot.querySelector<HTMLElement>(`#${place}`)!;
      heading.scrollIntoView();
      heading.focus({ preventScroll: true });
    };
    return html`<a href="#${place}" @click=${go}>The plans below run without.</a>`;
  }

  private open() {
    const { stranded } = this;
    return html`<section class="running" aria-label="A session is open">
      <p>${stranded ? "A session was left open that cannot be gone on with:" : "You are in the middle of"} <b><bdi>${this.running}</bdi></b>.</p>
      <button type="button" class="go" @click=${() => this.tell("resume")}>${stranded ? "See what is wrong" : "Go back to it"}</button>
    </section>`;
  }

  /** What is damaged is told, and leads to where it can be had again. */
  private damaged() {
    return html`<p class="notice">What is stored of ${this.unsound.length === 1 ? "a plan" : `${this.unsound.length} plans`} on this device cannot be used:
      ${this.unsound.map(({ address, title }, index) => html`${index ? ", " : ""}<a href=${address}><bdi>${title}</bdi></a>`)}. The rest is as it was.</p>`;
  }

  private tell(name: "resume" | "update"): void {
    this.dispatchEvent(new CustomEvent(name));
  }
}
customElements.define("first-screen", FirstScreen);
