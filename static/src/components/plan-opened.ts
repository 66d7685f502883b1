/** Opens the plan at an address, keeps it on the device and shows it, scaled to a result where there is one. */
import { LitElement, html, type PropertyValues } from "lit";
import { NoAnswer, Refused } from "../data/api.js";
import { addResult, changeAthlete, readAthlete, resultsOf, sentOf, twoKOf, type AthleteRecord } from "../data/athlete.js";
import { appraisalFor, appraised } from "../data/compiling.js";
import { dropDraft } from "../data/drafts.js";
import { madeForOthers, makeAgain } from "../data/making.js";
import { mended, takenBack } from "../data/mending.js";
import { addressOf, forgetPlan, keep, openBuiltIn, openMine, openPlan, remake, type PlanRecord, type Source } from "../data/plans.js";
import { isSound, openSession } from "../data/sessions.js";
import { Unsound } from "../data/sound-session.js";
import { changeSettings, readSettings } from "../data/settings.js";
import { alone } from "../plan/alone.js";
import type { Level, Room } from "../plan/types.js";
import { scaled } from "../plan/scale.js";
import type { Mend, Result } from "../plan/wire.js";
import { player } from "../state/player.js";
import type { OpenSessionQuestion } from "./open-session-question.js";
import "./open-session-question.js";
import "./plan-screen.js";
import { knownWords } from "./rower-words.js";
import { goTo, queryOf, rowAddress, tellScreen, writeAddress } from "./routes.js";
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
    unsound: { state: true },
    unasked: { state: true },
    room: { state: true },
  };
  declare source: Source;
  declare name: string;
  declare record: PlanRecord | undefined;
  declare rower: AthleteRecord | undefined;
  declare busy: boolean;
  declare mendTrouble: string;
  declare saved: Saved;
  declare trouble: string;
  /** What is stored of it cannot be used. */
  declare unsound: boolean;
  /** Whether nobody could be asked what there is to say about the plan. */
  declare unasked: boolean;
  declare room: Room | undefined;
  /** The address of the session that is open on this device. */
  private runsAt = "/row";
  private askings = 0;

  constructor() {
    super();
    this.busy = false;
    this.mendTrouble = "";
    this.unasked = false;
    this.saved = "saving";
    this.trouble = "";
    this.unsound = false;
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
    if (this.unsound) return this.broken();
    const timeline = record && rower && scaled(record.timeline, twoKOf(rower), rower.athlete.level);
    const said = rower && appraisalFor(record?.appraisal, rower);
    return html`<plan-screen .timeline=${timeline} .findings=${said?.findings ?? timeline?.findings ?? []} .appraised=${Boolean(said)} .unasked=${this.unasked && !said} .readiness=${said?.readiness} .energy=${said?.energy}
      .athlete=${rower && resultsOf(rower).length ? sentOf(rower) : undefined} .reasons=${record?.reasons ?? []} .known=${rower ? knownWords(rower) : ""} .saved=${this.saved} .trouble=${this.trouble}
      .query=${queryOf(this.source, this.name)} .plan_id=${`${this.source}:${this.name}`} .own=${record !== undefined && record.source !== "built-in"} .sent=${record?.source === "sent"} .tags=${record?.tags ?? []} .mendedBy=${record?.undo?.label ?? ""} .outdated=${Boolean(record && rower && madeForOthers(record, rower))} .busy=${this.busy}
      .mendTrouble=${this.mendTrouble} @edit=${this.edit} @tags=${this.tag} @forget=${this.forget} @row=${this.row} @result=${this.keepResult}
      @mend=${this.mend} @undo=${this.undo} @again=${this.again} .level=${rower && (rower.athlete.level ?? "club")} .room=${this.room} @terms=${this.changeTerms}></plan-screen>
      <open-session-question @back=${() => goTo(this, this.runsAt)} @instead=${this.rowInstead}></open-session-question>`;
  }

  private broken() {
    return html`<unsound-plan .trouble=${this.trouble} .own=${this.source === "mine"} .busy=${this.busy} .vain=${this.mendTrouble}
      @again=${this.fetchAgain} @forget=${this.forget}><p>This plan cannot be opened. ${this.trouble}</p></unsound-plan>`;
  }

  private async gather(): Promise<void> {
    this.record = undefined;
    this.rower = await readAthlete();
    this.room = (await readSettings()).room;
    try {
      this.record = await openPlan(this.source, this.name);
      this.unsound = false;
      document.title = `${this.record.plan.title} · Slipway`;
    } catch (error) {
      if (error instanceof Unsound) await import("./later.js").catch(() => undefined);
      this.unsound = error instanceof Unsound;
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
    if (!isSound(open)) return goTo(this, "/row");
    const { plan_id, led_by, plan } = open.record;
    if (plan_id === this.record?.id && !led_by) return goTo(this, "/row");
    this.runsAt = `/${led_by ?? "row"}`;
    await this.renderRoot.querySelector<OpenSessionQuestion>("open-session-question")!.ask(plan.title);
  }

  private async rowInstead(): Promise<void> {
    await player.restore();
    if (player.snapshot().phase === "elsewhere") return goTo(this, "/row");
    await player.endForAnother();
    goTo(this, rowAddress(this.source, this.name));
  }

  private edit(): void {
    goTo(this, writeAddress(this.source, this.name));
  }

  private async forget(): Promise<void> {
    const id = `${this.source}:${this.name}`;
    await Promise.all([forgetPlan(id), dropDraft(id)]);
    goTo(this, "/");
  }

  private async tag({ detail }: CustomEvent<string[]>): Promise<void> {
    await this.keep({ tags: detail });
  }

  /** In place of what cannot be used: fetched, or compiled anew. */
  private async fetchAgain(): Promise<void> {
    this.busy = true;
    this.mendTrouble = "";
    try {
      if (this.source === "mine") await remake(this.name, await readAthlete());
      else await openBuiltIn(this.name);
      void this.gather();
    } catch (error) {
      this.mendTrouble = error instanceof Refused ? error.message : "It cannot be had now: there is no signal. Try again when there is.";
    } finally {
      this.busy = false;
    }
  }

  /** In a one-file page it takes the place of somebody else's, or of one that was mistyped: there are no results to look through. */
  private async keepResult({ detail }: CustomEvent<Result>): Promise<void> {
    this.rower = await (alone ? changeAthlete({ results: [detail], level: undefined }) : addResult(detail));
    await this.appraise();
  }

  /** Asks what there is to say about this plan for this athlete; with no signal, what was said before stands.
   * Of questions that were asked at the same time the newest is the one whose answer is shown. */
  private async appraise(): Promise<void> {
    const { record, rower } = this;
    if (!record || !rower) return;
    const asking = ++this.askings;
    const appraisal = await appraised(record.plan, rower).catch(() => undefined);
    if (asking !== this.askings || this.record?.plan !== record.plan || !this.isConnected) return;
    this.unasked = !appraisal;
    if (appraisal) await this.keep({ appraisal });
  }

  /** What is said of the plan, or what it is called by: shown at once, so that the next change rests on it. */
  private async keep(changes: Partial<Pick<PlanRecord, "appraisal" | "tags">>): Promise<void> {
    if (!this.record) return;
    this.record = { ...this.record, ...changes };
    await keep(this.record);
  }

  private async mend({ detail }: CustomEvent<Mend>): Promise<void> {
    await this.change(async (record, rower) => addressOf(await mended(record, detail, rower)));
  }

  private async undo(): Promise<void> {
    await this.change(takenBack);
  }

  /** Another level or another room: kept for what comes, and the advice asked for anew. */
  private async changeTerms({ detail: { level, room } }: CustomEvent<{ level?: Level; room?: Room }>): Promise<void> {
    if (level) this.rower = await changeAthlete({ level });
    if (room) this.room = (await changeSettings({ room })).room;
    await this.appraise();
  }

  private async again(): Promise<void> {
    await this.change(async (record, rower) => addressOf(record.made ? await makeAgain({ ...record, made: record.made }, rower) : record));
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
