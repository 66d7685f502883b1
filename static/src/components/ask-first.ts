/**
 * A button whose press is asked about once more, in its own place: the harmless answer stands exactly where the finger was,
 * and a second press of that finger is none.
 *
 * Properties: `words` (on the button), `yes` (the answer that does it), `keep` (the harmless one), `busy`. Event: `sure`.
 */
import { LitElement, css, html } from "lit";
import { buttons, type } from "./look.js";
import { NoSlips } from "./no-slips.js";

export class AskFirst extends LitElement {
  static override properties = { words: {}, yes: {}, keep: {}, busy: { type: Boolean }, asking: { state: true } };
  declare words: string;
  declare yes: string;
  declare keep: string;
  declare busy: boolean;
  declare asking: boolean;

  constructor() {
    super();
    this.words = this.yes = "";
    this.keep = "Keep it";
    this.busy = false;
    this.asking = false;
    this.addEventListener("click", new NoSlips(), { capture: true });
  }

  static override styles = [type, buttons, css`
    :host { display: block; max-width: 26rem; }
    div { display: grid; gap: 10px; }
  `];

  /** The first button stays the same element, so that whoever goes by the keyboard stays on it. */
  override render() {
    return html`<div role="group" aria-label=${this.words}>
      <button type="button" ?disabled=${this.busy} @click=${() => (this.asking = !this.asking)}>${this.asking ? this.keep : this.words}</button>
      ${this.asking ? html`<button type="button" ?disabled=${this.busy} @click=${this.mean}>${this.yes}</button>` : ""}</div>`;
  }

  private mean(): void {
    this.asking = false;
    this.dispatchEvent(new CustomEvent("sure"));
  }
}
customElements.define("ask-first", AskFirst);
