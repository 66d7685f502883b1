/** Before a session: the cautions the first time, then the set-up card. Event: `begin` (detail: plan and timeline). */
import { LitElement, html, nothing } from "lit";
import { readAthlete, twoKOf } from "../data/athlete.js";
import { addressOf, openPlan, type PlanRecord, type Source } from "../data/plans.js";
import { changeSettings, readSettings, type Settings } from "../data/settings.js";
import { forASecond } from "../data/silence.js";
import { scaled } from "../plan/scale.js";
import type { Timeline } from "../plan/wire.js";
import "./caution-page.js";
import { buttons, page, type } from "./look.js";
import { troubleWords } from "./plan-opened.js";
import { goTo, tellScreen } from "./routes.js";
import "./set-up-card.js";

export interface Beginning {
  record: PlanRecord;
  timeline: Timeline;
}

export class SessionBefore extends LitElement {
  static override properties = {
    source: { attribute: false },
    name: { attribute: false },
    starting: { type: Boolean },
    silent: { type: Boolean },
    waiting: { type: Boolean },
    beginning: { state: true },
    settings: { state: true },
    trouble: { state: true },
  };
  declare source: Source | undefined;
  declare name: string | undefined;
  declare starting: boolean;
  /** Storage does not answer, so nobody knows whether a session was left open. */
  declare silent: boolean;
  /** Nor does it say what the plan is, for some seconds already. */
  declare waiting: boolean;
  declare beginning: Beginning | undefined;
  declare settings: Settings | undefined;
  declare trouble: string;
  private gathered = false;

  constructor() {
    super();
    this.starting = false;
    this.silent = false;
    this.waiting = false;
    this.trouble = "";
  }

  static override styles = [type, buttons, page];

  override updated(): void {
    if (this.silent || this.gathered) return;
    this.gathered = true;
    void this.gather();
  }

  override render() {
    if (this.silent) return this.words("Looking for an open session", "Storage does not answer just now, and is asked again and again. A session left open on this device is not lost: wait here, and it goes on.");
    if (!this.name) return this.words("Nothing is being rowed here", "Choose a plan first. What was rowed before stands in the log.", true);
    if (this.trouble) return this.words("This plan cannot be opened", this.trouble);
    if (!this.beginning || !this.settings) return this.waiting ? this.words("Opening the plan …", "Storage does not answer just now, and is asked again and again.") : nothing;
    if (!this.settings.cautions_read) return html`<caution-page @accepted=${this.accept} @leave=${this.leave}></caution-page>`;
    return html`<set-up-card .timeline=${this.beginning.timeline} .starting=${this.starting}
      @start=${this.begin} @leave=${this.leave}></set-up-card>`;
  }

  private words(title: string, sentence: string, rowed = false) {
    return html`<main><h1 tabindex="-1">${title}</h1><p>${sentence}</p><a class="button go" href="/">See the plans</a>
      ${rowed ? html`<a class="button" href="/log">Log</a>` : nothing}</main>`;
  }

  private async gather(): Promise<void> {
    if (!this.name) return;
    try {
      this.settings = await readSettings();
      const rower = await readAthlete();
      const record = await openPlan(this.source ?? "built-in", this.name);
      this.beginning = { record, timeline: scaled(record.timeline, twoKOf(rower), rower.athlete.level) };
      document.title = `${record.plan.title} · Slipway`;
    } catch (error) {
      this.trouble = troubleWords(error);
    }
    tellScreen(this);
  }

  /** Whoever has read them goes on when that is stored, and soon after where storage does not answer. */
  private async accept(): Promise<void> {
    await forASecond(changeSettings({ cautions_read: true }));
    this.settings = { ...this.settings!, cautions_read: true };
    await this.updateComplete;
    scrollTo(0, 0);
    tellScreen(this);
  }

  private leave(): void {
    goTo(this, addressOf(this.beginning!.record));
  }

  private begin(): void {
    this.dispatchEvent(new CustomEvent<Beginning>("begin", { detail: this.beginning! }));
  }
}
customElements.define("session-before", SessionBefore);
