/** After a session that led a room. Properties: `planTitle`, `whole` (it went to its end). Event `leave`. */
import { LitElement, css, html } from "lit";
import { buttons, type } from "./look.js";

export class WallEnd extends LitElement {
  static override properties = { planTitle: {}, whole: { type: Boolean } };
  declare planTitle: string;
  declare whole: boolean;

  constructor() {
    super();
    this.planTitle = "";
    this.whole = false;
  }

  static override styles = [type, buttons, css`
    main { display: grid; align-content: center; gap: 3vmin; min-height: 100dvh; padding: 4vmin 5vw; font-size: clamp(20px, 4.6vmin, 60px); line-height: 1.25; }
    h1 { font-size: 2.4em; }
    p { max-width: 30em; }
    nav { display: flex; flex-wrap: wrap; gap: 12px; }
  `];

  override render() {
    return html`<main>
      <p dir="auto"><bdi>${this.planTitle}</bdi></p>
      <h1 tabindex="-1">${this.whole ? "Rowed to the end" : "Ended here"}</h1>
      <p>Row or walk very lightly until you can talk in whole sentences again. Loosen the straps before you stand, and stand up slowly. Drink, put on something dry.</p>
      <nav aria-label="On"><button type="button" class="go" @click=${() => this.dispatchEvent(new CustomEvent("leave"))}>Set up again</button>
        <a class="button" href="/">All plans</a></nav>
    </main>`;
  }
}
customElements.define("wall-end", WallEnd);
