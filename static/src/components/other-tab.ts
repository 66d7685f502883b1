/** Shown where another tab holds the session. Event: `take-over`. */
import { LitElement, html } from "lit";
import { buttons, page, type } from "./look.js";

export class OtherTab extends LitElement {
  static override styles = [type, buttons, page];

  override render() {
    return html`<main>
      <h1 tabindex="-1">This session is running in another tab</h1>
      <p>Only one tab can run it, so that its clock and its sound are one. Taking it over goes on at the same stroke
        here and stops it there.</p>
      <button type="button" class="go" @click=${() => this.dispatchEvent(new CustomEvent("take-over"))}>Take it over here</button>
      <a class="button quiet" href="/">Leave it there, see the plans</a>
    </main>`;
  }
}
customElements.define("other-tab", OtherTab);
