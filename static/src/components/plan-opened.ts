/** Opens the plan at an address, keeps it on the device and shows it, scaled to a result where there is one. */
import { LitElement, html } from "lit";
import { NoAnswer } from "../data/api.js";
import { forgetPlan, openBuiltIn, openMine, type PlanRecord } from "../data/plans.js";
import { openSession } from "../data/sessions.js";
import { changeSettings, readSettings } from "../data/settings.js";
import { scaled } from "../plan/scale.js";
import { player } from "../state/player.js";
import type { OpenSessionQuestion } from "./open-session-question.js";
import "./open-session-question.js";
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
      .own=${this.record?.source === "mine"} @edit=${this.edit} @forget=${this.forget} @row=${this.row} @result=${this.keepResult}></plan-screen>
      <open-session-question @back=${() => goTo(this, "/row")} @instead=${this.rowInstead}></open-session-question>`;
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

  /** One session at a time: an open one of another plan is asked about, one of this plan is gone on with. */
  private async row(): Promise<void> {
    const open = await openSession();
    if (!open) goTo(this, rowAddress(this.source, this.name));
    else if (open.record.plan_id === this.record?.id) goTo(this, "/row");
    else await this.renderRoot.querySelector<OpenSessionQuestion>("open-session-question")!.ask(open.record.plan.title);
  }

  private async rowInstead(): Promise<void> {
    await player.restore();
    if (player.snapshot().phase === "elsewhere") return goTo(this, "/row");
    await player.endForAnother();
    goTo(this, rowAddress(this.source, this.name));
  }

  private async edit(): Promise<void> {
    await changeSettings({ draft: this.record?.text ?? "" });
    goTo(this, "/");
  }

  private async forget(): Promise<void> {
    await forgetPlan(this.record!.id);
    goTo(this, "/");
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
