/** One plan before it is rowed: picture, totals, blocks, findings, a result for splits, and the button to row it.
 *
 * Properties: `timeline`, `result` (2000 m in seconds, or null), `saved` (see saved-mark), `own` (written on this
 * device), `trouble` (a sentence where the plan cannot be shown). Events: `row`, `result` (detail: seconds or null),
 * and of one's own plan `edit` and `forget`.
 */
import { LitElement, css, html, nothing } from "lit";
import type { Finding, Timeline } from "../plan/wire.js";
import { clock, splitClock } from "../plan/format.js";
import "./block-list.js";
import { buttons, page, type } from "./look.js";
import "./plan-profile.js";
import "./result-field.js";
import "./saved-mark.js";

export class PlanScreen extends LitElement {
  static override properties = {
    timeline: { attribute: false },
    result: { attribute: false },
    saved: {},
    own: { type: Boolean },
    asking: { state: true },
    trouble: {},
  };
  declare timeline: Timeline | undefined;
  declare result: number | null;
  declare saved: string;
  declare own: boolean;
  declare asking: boolean;
  declare trouble: string;

  constructor() {
    super();
    this.result = null;
    this.saved = "saving";
    this.own = false;
    this.asking = false;
    this.trouble = "";
  }

  static override styles = [type, buttons, page, css`
    .back { justify-self: start; display: inline-grid; align-items: center; min-height: 44px; font-weight: 700; }
    header { display: grid; gap: 6px; }
    header h1 { overflow-wrap: anywhere; }
    plan-profile { height: 120px; }
    .sums { display: grid; grid-template-columns: repeat(auto-fit, minmax(140px, 1fr)); gap: 8px; }
    .sums div { display: flex; flex-direction: column-reverse; justify-content: flex-end; gap: 2px; padding: 12px 12px; background: var(--hull); border-radius: var(--r); }
    .sums dd { font-family: var(--digits); font-weight: 700; font-size: 1.625rem; letter-spacing: -0.04em; }
    .left-sums { display: grid; gap: 8px; }
    .finds { display: grid; gap: 10px; }
    .find { padding: 12px 14px; background: var(--hull); border-left: 6px solid var(--edge); border-radius: 6px var(--r) var(--r) 6px; }
    .warning, .advice { border-left-color: var(--catch); }
    .go { width: 100%; font-size: 1.375rem; }
    @media (min-width: 1000px) {
      main { width: min(100%, 1120px); grid-template-columns: minmax(0, 1fr) minmax(0, 1.1fr); gap: 28px 48px; align-items: start; }
      .back, header, plan-profile, .bar { grid-column: 1 / -1; }
      plan-profile { height: 170px; }
      .left { display: grid; gap: 22px; position: sticky; top: 22px; }
      .bar { justify-items: end; }
      .go { width: 420px; }
    }
    .left, .blocks { display: grid; gap: 22px; }
    .keeping { display: flex; flex-wrap: wrap; gap: 10px; }
  `];

  override render() {
    return html`<main>
      <a class="back" href="/">All plans</a>
      ${this.timeline ? this.plan(this.timeline) : this.without()}
    </main>`;
  }

  private without() {
    return html`<h1 tabindex="-1">${this.trouble ? "This plan cannot be opened" : "Opening the plan …"}</h1>
      ${this.trouble ? html`<p role="alert">${this.trouble}</p>` : nothing}`;
  }

  private plan(timeline: Timeline) {
    const { plan } = timeline;
    return html`
      <header><h1 tabindex="-1" dir="auto">${plan.title}</h1>
        ${plan.summary ? html`<p dir="auto">${plan.summary}</p>` : nothing}</header>
      <plan-profile labels .timeline=${timeline}></plan-profile>
      <div class="left">
        ${this.sums(timeline)}
        ${this.findings(timeline.findings)}
        <result-field .seconds=${this.result} @result=${this.pass}></result-field>
      </div>
      <div class="blocks"><block-list .timeline=${timeline}></block-list>${this.own ? this.keeping() : nothing}</div>
      <div class="bar"><saved-mark state=${this.saved}></saved-mark><button type="button" class="go" @click=${() => this.dispatchEvent(new CustomEvent("row"))}>Row it</button></div>`;
  }

  /** What can be done with one's own plan; taking it off the phone is asked once more. */
  private keeping() {
    const tell = (name: "edit" | "forget") => () => this.dispatchEvent(new CustomEvent(name));
    return html`<div class="keeping"><button type="button" @click=${tell("edit")}>Change the text</button>
      ${this.asking ? html`<button type="button" @click=${tell("forget")}>Yes, take it off this phone</button>
          <button type="button" @click=${() => (this.asking = false)}>Keep it</button>`
        : html`<button type="button" @click=${() => (this.asking = true)}>Take it off this phone</button>`}</div>`;
  }

  private sums(timeline: Timeline) {
    const { totals } = timeline;
    const about = totals.estimated ? ", about" : "";
    const guessed = timeline.segments.some((segment) => segment.ends === "tap" || segment.basis === "assumed");
    return html`<div class="left-sums"><dl class="sums">
      <div><dt class="small">in all${about}</dt><dd>${clock(totals.seconds_s)}</dd></div>
      ${totals.strokes ? html`<div><dt class="small">strokes${about}</dt><dd>${totals.strokes}</dd></div>` : nothing}
      ${totals.metres === undefined ? nothing : html`<div><dt class="small">km, about</dt><dd>${(totals.metres / 1000).toFixed(1)}</dd></div>`}
      ${totals.split_s === undefined ? nothing : html`<div><dt class="small">/500 m on average, about</dt><dd>${splitClock(totals.split_s)}</dd></div>`}
    </dl>${guessed ? html`<p class="small">Some blocks end when you say so: their time is a guess.</p>` : nothing}</div>`;
  }

  private findings(findings: readonly Finding[]) {
    if (!findings.length) return nothing;
    return html`<ul class="finds" aria-label="What to know about this plan">${findings.map((finding) => html`
      <li class="find ${finding.severity}" dir="auto"><p>${finding.sentence}</p>
        ${finding.reason ? html`<p class="small">${finding.reason}</p>` : nothing}</li>`)}</ul>`;
  }

  private pass(event: CustomEvent<number | null>): void {
    this.dispatchEvent(new CustomEvent("result", { detail: event.detail }));
  }
}
customElements.define("plan-screen", PlanScreen);
