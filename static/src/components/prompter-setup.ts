/** Before a prompter runs a session of its own. Properties: `record`, `saved`, `starting`, `trouble`. Event `start` (detail: ms since 1970, or null for now). */
import { LitElement, css, html, nothing } from "lit";
import type { PlanRecord } from "../data/plans.js";
import { buttons, page, type } from "./look.js";
import "./plan-profile.js";
import "./saved-mark.js";
import "./start-choice.js";
import { stopSigns } from "./stop-signs-list.js";

export class PrompterSetup extends LitElement {
  static override properties = { record: { attribute: false }, saved: {}, starting: { type: Boolean }, trouble: {} };
  declare record: PlanRecord | undefined;
  declare saved: string;
  declare starting: boolean;
  declare trouble: string;

  constructor() {
    super();
    this.saved = "saving";
    this.starting = false;
    this.trouble = "";
  }

  static override styles = [type, buttons, page, css`
    .back { justify-self: start; display: inline-grid; align-items: center; min-height: 44px; font-weight: 700; }
    header { display: grid; gap: 12px; }
    .signs { display: grid; gap: 4px; padding-left: 22px; list-style: disc; }
    summary { min-height: 44px; align-content: center; cursor: pointer; font-weight: 700; text-decoration: underline; text-underline-offset: 4px; }
    plan-profile { height: 90px; }
    @media (max-height: 620px) { .bar { position: static; } }
  `];

  override render() {
    const { record } = this;
    return html`<main>
      <a class="back" href="/">All plans</a>
      ${record ? html`<header><p class="small">Coach’s prompter</p><h1 tabindex="-1" dir="auto">${record.plan.title}</h1>
        <plan-profile .timeline=${record.timeline}></plan-profile></header>` : html`<h1 tabindex="-1">Coach’s prompter</h1>`}
      ${this.trouble ? html`<p role="alert">${this.trouble}</p>` : nothing}
      ${record ? this.about() : html`<p>Open a plan and press <b>Coach’s prompter</b> there; or start a session in another tab of this
        browser, and come back: the prompter follows it.</p><a class="button go" href="/">See the plans</a>`}
    </main>`;
  }

  private about() {
    return html`<p>Every call and every change of block comes up as a line, with a countdown. It goes by the clock and waits for nobody.
        A session that runs in another tab of this browser is followed instead.</p>
      <details><summary>Tell the room when to stop</summary>${stopSigns()}</details>
      <div class="bar">
        <start-choice .busy=${this.starting} @start=${({ detail }: CustomEvent<number | null>) => this.dispatchEvent(new CustomEvent("start", { detail }))}></start-choice>
        <saved-mark state=${this.saved}></saved-mark></div>`;
  }
}
customElements.define("prompter-setup", PrompterSetup);
