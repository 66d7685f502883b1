/** Asks once before a session ends, and leaves the clock alone. Property: `held`. Event: `end`. Method: `open()`. */
import { LitElement, html } from "lit";
import { dialogs } from "./dialog-look.js";
import { buttons, type } from "./look.js";
import { clockWords } from "./row-words.js";

export class EndQuestion extends LitElement {
  static override properties = { held: { type: Boolean } };
  declare held: boolean;

  constructor() {
    super();
    this.held = false;
  }

  static override styles = [type, buttons, dialogs];

  override render() {
    return html`<dialog aria-labelledby="title" @keydown=${(event: KeyboardEvent) => event.stopPropagation()}>
      <h2 id="title">End this session?</h2>
      <p>${clockWords(this.held)}</p>
      <div class="choices">
        <button type="button" class="go" autofocus @click=${this.close}>${this.held ? "Do not end it" : "Keep rowing"}</button>
        <button type="button" @click=${this.end}>End it and keep what I rowed</button>
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
customElements.define("end-question", EndQuestion);
