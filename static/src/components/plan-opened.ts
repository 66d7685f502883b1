/** Opens the plan at an address, keeps it on the device and shows it, scaled to a result where there is one. */
import { LitElement, html } from "lit";
import { NoAnswer } from "../data/api.js";
import { openBuiltIn, openMine, type PlanRecord } from "../data/plans.js";
import { changeSettings, readSettings } from "../data/settings.js";
import { scaled } from "../plan/scale.js";
import "./plan-screen.js";
import { goTo, rowAddress, tellScreen } from "./routes.js";
import { watchSaved, type Saved } from "./saving.js";

export class PlanOpened extends LitElement {
  static override properties = {
    source: { attribute: false },
    name: { attribute: false },
    record: { state: true },
    result: { state: true },
    saved: { state: true },
    trouble: { state: true },
  };
  declare source: "built-in" | "mine";
  declare name: string;
  declare record: PlanRecord | undefined;
  declare result: number | null;
  declare saved: Saved;
  declare trouble: string;

  constructor() {
    super();
    this.result = null;
    this.saved = "saving";
    this.trouble = "";
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "A plan · Slipway";
  }

  override firstUpdated(): void {
    void this.gather();
  }

  override render() {
    const timeline = this.record && scaled(this.record.timeline, this.result);
    return html`<plan-screen .timeline=${timeline} .result=${this.result} .saved=${this.saved} .trouble=${this.trouble}
      @row=${() => goTo(this, rowAddress(this.source, this.name))} @result=${this.keepResult}></plan-screen>`;
  }

  private async gather(): Promise<void> {
    this.result = (await readSettings()).result_s;
    try {
      this.record = await (this.source === "mine" ? openMine(this.name) : openBuiltIn(this.name));
      document.title = `${this.record.plan.title} · Slipway`;
    } catch (error) {
      this.trouble = troubleWords(error);
    }
    tellScreen(this);
    if (!this.record) return;
    await watchSaved(this.record.id, (saved) => (this.saved = saved), () => !this.isConnected);
  }

  private keepResult(event: CustomEvent<number | null>): void {
    this.result = event.detail;
    void changeSettings({ result_s: event.detail });
  }
}
customElements.define("plan-opened", PlanOpened);

export function troubleWords(error: unknown): string {
  if (error instanceof NoAnswer) return "There is no signal, and this plan was never opened on this phone.";
  return error instanceof Error ? error.message : String(error);
}
