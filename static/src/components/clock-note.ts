/** Whether this device's clock agrees with the server's: for wherever a start by the clock is chosen.
 *
 * Measures by itself, and again when there is a signal again. Says nothing where there is no server.
 */
import { LitElement, css, html } from "lit";
import { clockDifference } from "../data/server-clock.js";
import { alone } from "../plan/alone.js";
import { clockWords } from "./clock-words.js";
import { type } from "./look.js";

export class ClockNote extends LitElement {
  static override properties = { words: { state: true } };
  declare words: string;
  private readonly again = () => void this.measure();

  constructor() {
    super();
    this.words = alone ? "" : clockWords("measuring");
  }

  static override styles = [type, css`:host { display: block; font-size: 16px; line-height: 1.25; color: var(--ink-2); }`];

  override connectedCallback(): void {
    super.connectedCallback();
    if (alone) return;
    addEventListener("online", this.again);
    this.again();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener("online", this.again);
  }

  override render() {
    return html`${this.words}`;
  }

  private async measure(): Promise<void> {
    this.words = clockWords((await clockDifference()) ?? "unknown");
  }
}
customElements.define("clock-note", ClockNote);
