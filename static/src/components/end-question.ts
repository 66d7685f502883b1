/** Asks once before a session ends. The clock runs on meanwhile. Event: `end`. Method: `open()`. */
import { LitElement, html } from "lit";
import { dialogs } from "./dialog-look.js";
import { buttons, type } from "./look.js";

export class EndQuestion extends LitElement {
  static override styles = [type, buttons, dialogs];

  override render() {
    return html`<dialog aria-labelledby="title" @keydown=${(event: KeyboardEvent) => event.stopPropagation()}>
      <h2 id="title">End this session?</h2>
      <p>The clock is running on until you decide.</p>
      <div class="choices">
        <button type="button" class="go" autofocus @click=${this.close}>Keep rowing</button>
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
