/** Shown for a plan whose stored copy cannot be used.
 *
 * Properties: `trouble` (what is wrong, a sentence), `own` (made on this device), `busy`, `vain` (why getting it again
 * did not work, or ""). Events: `again`, `forget`.
 */
import { LitElement, css, html, nothing } from "lit";
import { buttons, page, type } from "./look.js";

export class UnsoundPlan extends LitElement {
  static override properties = { trouble: {}, own: { type: Boolean }, busy: { type: Boolean }, vain: {} };
  declare trouble: string;
  declare own: boolean;
  declare busy: boolean;
  declare vain: string;

  constructor() {
    super();
    this.trouble = "";
    this.own = false;
    this.busy = false;
    this.vain = "";
  }

  static override styles = [type, buttons, page, css`
    .choices { display: grid; gap: 10px; }
    .back { justify-self: start; display: inline-grid; align-items: center; min-height: 44px; font-weight: 700; }
  `];

  override render() {
    return html`<main>
      <a class="back" href="/">All plans</a>
      <h1 tabindex="-1">This plan cannot be opened</h1>
      <p>${this.trouble}</p>
      <p>${this.own ? "It can be made anew from its text, where that is left. This needs signal." : "It can be fetched again. This needs signal."}
        Everything else on this device is as it was.</p>
      <div class="choices">
        <button type="button" class="go" ?disabled=${this.busy} @click=${() => this.tell("again")}>${this.own ? "Make it anew" : "Fetch it again"}</button>
        <button type="button" ?disabled=${this.busy} @click=${() => this.tell("forget")}>Take it off this device</button>
      </div>
      <p role="alert">${this.busy ? nothing : this.vain}</p>
    </main>`;
  }

  private tell(name: "again" | "forget"): void {
    this.dispatchEvent(new CustomEvent(name));
  }
}
customElements.define("unsound-plan", UnsoundPlan);
