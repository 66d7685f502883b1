/** One link: its address to be selected, a button to copy it, and one to send it where the system has a way.
 *
 * Properties: `label`, `address` ("" until it is known), `title` (of the plan).
 */
import { LitElement, css, html, nothing } from "lit";
import { buttons, fields, type } from "./look.js";

/** The one that was copied last: what was copied before is no longer in the clipboard. */
let copied: ShareLink | undefined;

export class ShareLink extends LitElement {
  static override properties = { label: {}, address: {}, title: {}, said: { state: true } };
  declare label: string;
  declare address: string;
  declare title: string;
  declare said: string;

  constructor() {
    super();
    this.label = "";
    this.address = "";
    this.title = "";
    this.said = "";
  }

  static override styles = [type, buttons, fields, css`
    p:empty { display: none; }
    .ways { display: flex; flex-wrap: wrap; gap: 8px; align-items: center; }
    input { flex: 1 1 150px; width: 0; min-height: 48px; padding-inline: 12px; font: 400 1rem/1.3 var(--font); letter-spacing: 0; text-overflow: ellipsis; }
    button { min-height: 48px; padding: 6px 16px; font-size: 1.125rem; }
  `];

  override render() {
    if (!this.address) return html`<p role="status">Making it …</p>`;
    return html`<div class="ways"><input readonly aria-label=${this.label} .value=${this.address} @focus=${this.select} />
        <button type="button" @click=${this.copy}>Copy</button>
        ${"share" in navigator ? html`<button type="button" @click=${this.send}>Send …</button>` : nothing}</div>
      <p role="status" class="small">${this.said}</p>`;
  }

  /** Without a clipboard, as on plain http, the address is selected, so that the person can copy it. */
  private async copy(): Promise<void> {
    try {
      await navigator.clipboard.writeText(this.address);
      if (copied) copied.said = "";
      copied = this;
      this.said = "Copied.";
    } catch {
      this.select();
      this.said = "It is selected: copy it now.";
    }
  }

  private async send(): Promise<void> {
    await navigator.share({ title: this.title, url: this.address }).catch((error: Error) => {
      if (error.name !== "AbortError") this.said = "The system did not take it: copy it instead.";
    });
  }

  private select(): void {
    this.renderRoot.querySelector("input")?.select();
  }
}
customElements.define("share-link", ShareLink);
