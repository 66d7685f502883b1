/** Asks once before a session ends, and leaves the clock alone. Properties: `held`; `led` (it leads a room). Event: `end`. Method: `open()`. */
import { LitElement, html } from "lit";
import { dialogs } from "./dialog-look.js";
import { buttons, type } from "./look.js";
import { clockWords } from "./row-words.js";

export class EndQuestion extends LitElement {
  static override properties = { held: { type: Boolean }, led: { type: Boolean } };
  declare held: boolean;
  declare led: boolean;

  constructor() {
    super();
    this.held = false;
    this.led = false;
  }

  static override styles = [type, buttons, dialogs];

  override render() {
    return html`<dialog aria-labelledby="title" @keydown=${(event: KeyboardEvent) => event.stopPropagation()}>
      <h2 id="title">End this session?</h2>
      <p>${clockWords(this.held)}</p>
      <div class="choices">
        <button type="button" class="go" autofocus @click=${this.close}>${this.held || this.led ? "Do not end it" : "Keep rowing"}</button>
        <button type="button" @click=${this.end}>${this.led ? "End it for everybody" : "End it here"}</button>
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
