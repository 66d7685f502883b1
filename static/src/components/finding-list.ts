/** What there is to know about a plan: each finding, its reason folded, its mend as a button.
 *
 * Properties: `findings`, `busy` (a mend is under way), `trouble` (why the last one failed, or "").
 * Event `mend` (detail: the mend).
 */
import { LitElement, css, html, nothing } from "lit";
import type { Finding, Mend } from "../plan/wire.js";
import { buttons, type } from "./look.js";

const HEAVIEST_FIRST = ["warning", "advice", "note"];

export class FindingList extends LitElement {
  static override properties = { findings: { attribute: false }, busy: { type: Boolean }, trouble: {} };
  declare findings: readonly Finding[];
  declare busy: boolean;
  declare trouble: string;

  constructor() {
    super();
    this.findings = [];
    this.busy = false;
    this.trouble = "";
  }

  static override styles = [type, buttons, css`
    ul { display: grid; gap: 10px; }
    li { display: grid; gap: 8px; padding: 12px 14px; background: var(--hull); border-left: 6px solid var(--edge); border-radius: 6px var(--r) var(--r) 6px; }
    .warning, .advice { border-left-color: var(--catch); }
    .warning .says { font-weight: 700; }
    summary { width: fit-content; min-height: 44px; align-content: center; cursor: pointer; text-decoration: underline; text-underline-offset: 4px; }
    button { justify-self: start; min-height: 52px; background: var(--water); font-size: 1.125rem; }
    /* clear of the bar at the foot of the page when it is brought into view */
    summary, button { scroll-margin-block: 20px 220px; }
    .trouble { font-weight: 700; }
  `];

  override render() {
    const sorted = [...this.findings].sort((a, b) => HEAVIEST_FIRST.indexOf(a.severity) - HEAVIEST_FIRST.indexOf(b.severity));
    return html`<ul aria-label="What to know about this plan">${sorted.map((finding) => this.finding(finding))}</ul>
      <p role="alert" class="trouble" ?hidden=${!this.trouble}>${this.trouble}</p>`;
  }

  private finding({ severity, sentence, reason, mend }: Finding) {
    return html`<li class=${severity} dir="auto"><p class="says">${sentence}</p>
      ${reason ? html`<details class="small"><summary>Why</summary><p>${reason}</p></details>` : nothing}
      ${mend ? html`<button type="button" ?disabled=${this.busy} @click=${() => this.apply(mend)}>${mend.label}</button>` : nothing}</li>`;
  }

  private apply(mend: Mend): void {
    this.dispatchEvent(new CustomEvent<Mend>("mend", { detail: mend }));
  }
}
customElements.define("finding-list", FindingList);
