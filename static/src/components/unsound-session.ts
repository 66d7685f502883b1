/** Shown for a session that was left open and cannot be gone on with.
 *
 * Properties: `planTitle` (or ""), `trouble` (what is wrong, a sentence), `plan` (the address of its plan, or "").
 * Event: `aside`, to take it out of the way.
 */
import { LitElement, html, nothing } from "lit";
import { buttons, page, type } from "./look.js";

export class UnsoundSession extends LitElement {
  static override properties = { planTitle: {}, trouble: {}, plan: {} };
  declare planTitle: string;
  declare trouble: string;
  declare plan: string;

  constructor() {
    super();
    this.planTitle = "";
    this.trouble = "";
    this.plan = "";
  }

  static override styles = [type, buttons, page];

  override render() {
    return html`<main>
      <div>${this.planTitle ? html`<p class="small" dir="auto"><bdi>${this.planTitle}</bdi></p>` : nothing}
        <h1 tabindex="-1">This session cannot be gone on with</h1></div>
      <p>A session was left open on this device. ${this.trouble}</p>
      <p>Put it aside to row another: what there is of it stays on this device. Everything else is as it was.</p>
      <button type="button" class="go" @click=${() => this.dispatchEvent(new CustomEvent("aside"))}>Put it aside</button>
      ${this.plan ? html`<a class="button" href=${this.plan}>Open its plan</a>` : nothing}
      <a class="button quiet" href="/">See the plans</a>
    </main>`;
  }
}
customElements.define("unsound-session", UnsoundSession);
