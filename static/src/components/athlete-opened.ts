/** The athlete page, fetched when it is first opened; says so where it cannot be had. */
import { LitElement, html } from "lit";
import { page, type } from "./look.js";
import { tellScreen } from "./routes.js";

export class AthleteOpened extends LitElement {
  static override properties = { state: { state: true } };
  declare state: "coming" | "here" | "lacking";

  constructor() {
    super();
    this.state = "coming";
  }

  static override styles = [type, page];

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "Your results · Slipway";
    void this.fetch();
  }

  override render() {
    if (this.state === "here") return html`<athlete-home></athlete-home>`;
    return html`<main><a href="/">What are you rowing today?</a><h1 tabindex="-1">Your results</h1>
      <p role="status">${this.state === "coming" ? "Opening …" : "This page needs signal the first time, and there is none."}</p></main>`;
  }

  private async fetch(): Promise<void> {
    try {
      await import("./athlete-home.js");
      this.state = "here";
    } catch {
      this.state = "lacking";
    }
    await this.updateComplete;
    tellScreen(this);
  }
}
customElements.define("athlete-opened", AthleteOpened);
