/** What is wanted seldom while rowing, one tap away. Property: `held`. Event: `end`. Method: `open()`. */
import { LitElement, html } from "lit";
import { dialogs } from "./dialog-look.js";
import { buttons, type } from "./look.js";
import { clockWords } from "./row-words.js";

export class MoreChoices extends LitElement {
  static override properties = { held: { type: Boolean } };
  declare held: boolean;

  constructor() {
    super();
    this.held = false;
  }

  static override styles = [type, buttons, dialogs];

  override render() {
    return html`<dialog aria-labelledby="title" @keydown=${(event: KeyboardEvent) => event.stopPropagation()}>
      <h2 id="title">More</h2>
      <p>${clockWords(this.held)}</p>
      <div class="choices">
        <button type="button" class="go" autofocus @click=${this.close}>Back to rowing</button>
        <a class="button" href="/settings">Settings</a>
        <button type="button" @click=${this.end}>End the session</button>
      </div>
    </dialog>`;
  }

  open(): void {
    const dialog = this.renderRoot.querySelector("dialog")!;
    if (!dialog.open) dialog.showModal();
  }

  private close(): void {
    this.renderRoot.querySelector("dialog")!.close();
  }

  private end(): void {
    this.close();
    this.dispatchEvent(new CustomEvent("end"));
  }
}
customElements.define("more-choices", MoreChoices);
