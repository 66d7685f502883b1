/** The stop signs, one tap away while rowing. Opening them leaves the clock alone, and says so.
 *
 * Property `held` says whether the session is held. Events: `hold`, `end`. Methods: `open()`, `close()`.
 */
import { LitElement, css, html, nothing } from "lit";
import { dialogs } from "./dialog-look.js";
import { buttons, type } from "./look.js";
import { clockWords } from "./row-words.js";
import { GET_HELP, stopSigns } from "./stop-signs-list.js";

export class StopSigns extends LitElement {
  static override properties = { held: { type: Boolean } };
  declare held: boolean;

  constructor() {
    super();
    this.held = false;
  }

  static override styles = [type, buttons, dialogs, css`
    dialog { padding-bottom: 0; }
    h2:focus { outline: none; }
    .signs { display: grid; gap: 6px; padding-left: 22px; list-style: disc; font-size: 1.125rem; line-height: 1.3; }
    .choices { position: sticky; bottom: 0; grid-template-columns: 1fr 1fr; padding: 10px 0 18px; background: var(--water); }
    .choices button { padding: 8px; }
    .choices .go { grid-column: 1 / -1; }
    .choices .go + button:last-child { grid-column: 1 / -1; }
    @media (max-height: 300px) { .choices { position: static; } }
    @media (orientation: landscape) and (max-height: 540px) and (min-width: 560px) {
      dialog { width: min(800px, 100vw - 24px); gap: 10px; padding-top: 14px; }
      .signs { columns: 2; column-gap: 40px; display: block; font-size: 1.0625rem; }
      .choices { grid-template-columns: 1fr 1fr 1.2fr; padding: 6px 0 12px; }
      .choices .go, .choices .go + button:last-child { grid-column: auto; }
    }
    .signs li::marker { color: var(--catch); }
  `];

  override render() {
    return html`<dialog aria-labelledby="title" @keydown=${keepKeys}>
      <h2 id="title" tabindex="-1" autofocus>Stop rowing if you feel</h2>
      ${stopSigns()}
      <p><b>${GET_HELP}</b></p>
      <p class="small">${clockWords(this.held)}</p>
      <div class="choices">
        ${this.held ? nothing : html`<button type="button" class="go" @click=${this.hold}>Hold the session</button>`}
        <button type="button" class=${this.held ? "go" : ""} @click=${this.end}>End the session</button>
        <button type="button" @click=${this.close}>I am fine, go back</button>
      </div>
    </dialog>`;
  }

  open(): void {
    const dialog = this.dialog;
    if (!dialog.open) dialog.showModal();
  }

  close(): void {
    this.dialog.close();
  }

  private get dialog(): HTMLDialogElement {
    return this.renderRoot.querySelector("dialog")!;
  }

  private hold(): void {
    this.dispatchEvent(new CustomEvent("hold"));
    this.close();
  }

  private end(): void {
    this.close();
    this.dispatchEvent(new CustomEvent("end"));
  }
}
customElements.define("stop-signs", StopSigns);

/** Space presses the button in focus here; it must not reach the rowing keys. */
function keepKeys(event: KeyboardEvent): void {
  event.stopPropagation();
}
