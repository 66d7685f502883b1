/** What is wanted seldom while rowing, one tap away.
 *
 * Properties: `held`; `checks` (there are strokes to be checked). Events: `check`, `end`. Method: `open()`.
 */
import { LitElement, css, html, nothing } from "lit";
import { dialogs } from "./dialog-look.js";
import { buttons, type } from "./look.js";
import { clockWords } from "./row-words.js";

/** What its button shows: three dots. */
export const MORE = html`<svg viewBox="0 0 24 24" width="22" height="22" fill="currentColor" aria-hidden="true">
  <circle cx="4" cy="12" r="2.4" /><circle cx="12" cy="12" r="2.4" /><circle cx="20" cy="12" r="2.4" /></svg>`;

export class MoreChoices extends LitElement {
  static override properties = { held: { type: Boolean }, checks: { type: Boolean } };
  declare held: boolean;
  declare checks: boolean;

  constructor() {
    super();
    this.held = false;
    this.checks = false;
  }

  static override styles = [type, buttons, dialogs, css`
    @media (orientation: landscape) and (max-height: 540px) {
      dialog { width: min(640px, 100vw - 24px); padding: 16px 20px; gap: 10px; }
      .choices { grid-template-columns: 1fr 1fr; }
    }
  `];

  override render() {
    return html`<dialog aria-labelledby="title" @keydown=${(event: KeyboardEvent) => event.stopPropagation()}>
      <h2 id="title">More</h2>
      <p>${clockWords(this.held)}</p>
      <div class="choices">
        <button type="button" class="go" autofocus @click=${this.close}>Back to rowing</button>
        ${this.checks ? html`<button type="button" @click=${() => this.leave("check")}>Stroke check</button>` : nothing}
        <a class="button" href="/settings">Settings</a>
        <button type="button" @click=${() => this.leave("end")}>End the session</button>
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

  private leave(to: "check" | "end"): void {
    this.close();
    this.dispatchEvent(new CustomEvent(to));
  }
}
customElements.define("more-choices", MoreChoices);
