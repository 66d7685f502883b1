/** Asked when a plan is to be rowed while another session is open. Attribute: `instead`, the words for that. Events: `back`, `instead`. Method: `ask(title)`. */
import { LitElement, html } from "lit";
import { dialogs } from "./dialog-look.js";
import { buttons, type } from "./look.js";

export class OpenSessionQuestion extends LitElement {
  static override properties = { planTitle: { state: true }, instead: {} };
  declare planTitle: string;
  declare instead: string;

  constructor() {
    super();
    this.planTitle = "";
    this.instead = "End it, and row this one";
  }

  static override styles = [type, buttons, dialogs];

  override render() {
    return html`<dialog aria-labelledby="title">
      <h2 id="title">You are in the middle of <bdi>${this.planTitle}</bdi></h2>
      <div class="choices">
        <button type="button" class="go" autofocus @click=${() => this.answer("back")}>Go back to it</button>
        <button type="button" @click=${() => this.answer("instead")}>${this.instead}</button>
        <button type="button" @click=${this.close}>Neither</button>
      </div>
    </dialog>`;
  }

  async ask(title: string): Promise<void> {
    this.planTitle = title;
    await this.updateComplete;
    this.renderRoot.querySelector("dialog")!.showModal();
  }

  private close(): void {
    this.renderRoot.querySelector("dialog")!.close();
  }

  private answer(name: "back" | "instead"): void {
    this.close();
    this.dispatchEvent(new CustomEvent(name));
  }
}
customElements.define("open-session-question", OpenSessionQuestion);
