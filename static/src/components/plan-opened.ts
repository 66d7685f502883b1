/** Opens the plan at an address, keeps it on the device and shows it, scaled to a result where there is one. */
import { LitElement, html, type PropertyValues } from "lit";
import { NoAnswer } from "../data/api.js";
import { addResult, readAthlete, resultsOf, sentOf, twoKOf, type AthleteRecord } from "../data/athlete.js";
import { appraisalFor, appraised } from "../data/compiling.js";
import { mended, takenBack } from "../data/mending.js";
import { addressOf, forgetPlan, keep, openBuiltIn, openMine, type PlanRecord } from "../data/plans.js";
import { openSession } from "../data/sessions.js";
import { changeSettings } from "../data/settings.js";
import { scaled } from "../plan/scale.js";
import type { Mend, Result } from "../plan/wire.js";
import { player } from "../state/player.js";
import type { OpenSessionQuestion } from "./open-session-question.js";
import "./open-session-question.js";
import "./plan-screen.js";
import { knownWords } from "./rower-words.js";
import { goTo, queryOf, rowAddress, tellScreen } from "./routes.js";
import { watchSaved, type Saved } from "./saving.js";

const NO_SIGNAL = "Changing a plan needs signal, and there is none. It is as it was.";

export class PlanOpened extends LitElement {
  static override properties = {
    source: { attribute: false },
    name: { attribute: false },
    record: { state: true },
    rower: { state: true },
    busy: { state: true },
    mendTrouble: { state: true },
    saved: { state: true },
    trouble: { state: true },
  };
  declare source: "built-in" | "mine";
  declare name: string;
  declare record: PlanRecord | undefined;
  declare rower: AthleteRecord | undefined;
  declare busy: boolean;
  declare mendTrouble: string;
  declare saved: Saved;
  declare trouble: string;
  /** The address of the session that is open on this device. */
  private runsAt = "/row";

  constructor() {
    super();
    this.busy = false;
    this.mendTrouble = "";
    this.saved = "saving";
    this.trouble = "";
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "A plan · Slipway";
  }

  /** Another address may be another plan in the same place. */
  override updated(changed: PropertyValues<this>): void {
    if (changed.has("name") || changed.has("source")) void this.gather();
  }

  override render() {
    const { record, rower } = this;
    const timeline = record && rower && scaled(record.timeline, twoKOf(rower));
    const said = rower && appraisalFor(record?.appraisal, rower);
    return html`<plan-screen .timeline=${timeline} .findings=${said?.findings ?? timeline?.findings ?? []} .appraised=${Boolean(said)} .readiness=${said?.readiness} .energy=${said?.energy}
      .athlete=${rower && resultsOf(rower).length ? sentOf(rower) : undefined} .reasons=${record?.reasons ?? []} .known=${rower ? knownWords(rower) : ""} .saved=${this.saved} .trouble=${this.trouble}
      .query=${queryOf(this.source, this.name)} .own=${record?.source === "mine"} .editable=${Boolean(record?.text)} .mendedBy=${record?.undo?.label ?? ""} .busy=${this.busy}
      .mendTrouble=${this.mendTrouble} @edit=${this.edit} @forget=${this.forget} @row=${this.row} @result=${this.keepResult}
      @mend=${this.mend} @undo=${this.undo}></plan-screen>
      <open-session-question @back=${() => goTo(this, this.runsAt)} @instead=${this.rowInstead}></open-session-question>`;
  }

  private async gather(): Promise<void> {
    this.record = undefined;
    this.rower = await readAthlete();
    try {
      this.record = await (this.source === "mine" ? openMine(this.name) : openBuiltIn(this.name));
      document.title = `${this.record.plan.title} · Slipway`;
    } catch (error) {
      this.trouble = troubleWords(error);
    }
    tellScreen(this);
    if (!this.record) return;
    void this.appraise();
    await watchSaved(this.record.id, (saved) => (this.saved = saved), () => !this.isConnected);
  }

  /** One session at a time: an open one of another plan is asked about, one of this plan is gone on with. */
  private async row(): Promise<void> {
    const open = await openSession();
    if (!open) return goTo(this, rowAddress(this.source, this.name));
    const { plan_id, led_by } = open.record;
    if (plan_id === this.record?.id && !led_by) return goTo(this, "/row");
    this.runsAt = `/${led_by ?? "row"}`;
    await this.renderRoot.querySelector<OpenSessionQuestion>("open-session-question")!.ask(open.record.plan.title);
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

  private async keepResult({ detail }: CustomEvent<Result>): Promise<void> {
    this.rower = await addResult(detail);
    await this.appraise();
  }

  /** Asks what there is to say about this plan for this athlete; with no signal, what was said before stands. */
  private async appraise(): Promise<void> {
    const { record, rower } = this;
    if (!record || !rower) return;
    const appraisal = await appraised(record.plan, rower).catch(() => undefined);
    if (!appraisal || this.record !== record || this.rower !== rower || !this.isConnected) return;
    this.record = await keep({ ...record, appraisal });
  }

  private async mend({ detail }: CustomEvent<Mend>): Promise<void> {
    await this.change(async (record, rower) => addressOf(await mended(record, detail, rower)));
  }

  private async undo(): Promise<void> {
    await this.change(takenBack);
  }

  /** A change of the plan: it is shown at its address, which may be another one. */
  private async change(make: (record: PlanRecord, rower: AthleteRecord) => Promise<string>): Promise<void> {
    this.busy = true;
    this.mendTrouble = "";
    try {
      const address = await make(this.record!, this.rower!);
      if (address === addressOf(this.record!)) this.record = await openMine(this.name);
      else goTo(this, address);
    } catch (error) {
      this.mendTrouble = error instanceof NoAnswer ? NO_SIGNAL : troubleWords(error);
    } finally {
      this.busy = false;
    }
  }
}
customElements.define("plan-opened", PlanOpened);

export function troubleWords(error: unknown): string {
  if (error instanceof NoAnswer) return "There is no signal, and this plan was never opened on this device.";
  return error instanceof Error ? error.message : String(error);
}
