/** Says that storage does not answer, above whatever waits for it, and lets one go on without. Screens of a session that runs say it themselves. */
import { LitElement, css, html, nothing } from "lit";
import { database } from "../data/database.js";
import { player } from "../state/player.js";
import { buttons, type } from "./look.js";

const ASKED = "Storage on this device does not answer. It is asked again and again, and nothing that is kept there is lost.";
const WITHOUT = "Storage on this device does not answer yet, or has no room. What you do now is kept while this page is open, and added to what is stored when it answers. Until then only that is seen here.";

export class StorageSilence extends LitElement {
  private stop = (): void => {};

  static override styles = [type, buttons, css`
    @media (min-height: 540px) { :host { position: sticky; top: 0; z-index: 1; } }
    aside { display: grid; gap: 10px; padding: 12px var(--side); background: var(--hull); border-bottom: 2px solid var(--edge); color: var(--ink); }
    button { justify-self: start; }
    @media (min-width: 480px) { aside { grid-template-columns: 1fr auto; align-items: center; } }
  `];

  override connectedCallback(): void {
    super.connectedCallback();
    const stops = [database.subscribe(() => this.requestUpdate()), player.subscribe(() => this.requestUpdate())];
    this.stop = () => stops.forEach((stop) => stop());
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stop();
  }

  override render() {
    const says = database.isSilent() && ["none", "elsewhere", "finished"].includes(player.snapshot().phase);
    if (!says) return nothing;
    const waits = database.where() === "disk";
    return html`<aside aria-label="Storage"><p role="status">${waits ? ASKED : WITHOUT}</p>
      ${waits ? html`<button type="button" @click=${() => database.goOnWithout()}>Go on without it</button>` : nothing}</aside>`;
  }
}
customElements.define("storage-silence", StorageSilence);
