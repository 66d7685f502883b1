/** Brings the log what is kept of the sessions that were rowed here. Property `session`: the id of the one to open, or "". */
import { LitElement, html, type PropertyValues } from "lit";
import { database } from "../data/database.js";
import { addressOfPlan, forgetSession, logged, type LoggedSession } from "../data/log.js";
import type { Remarks } from "../data/remarks.js";
import "./log-screen.js";
import { goTo, tellScreen } from "./routes.js";

const NO_STORE = "This browser keeps nothing for this page, so the log is gone when it is closed.";
const NO_ANSWER = "This device’s storage does not hand out the log. Nothing in it has changed; open this page again.";
const NOT_TAKEN = "This device could not take it off: its storage does not answer. Try again.";

export class LogHome extends LitElement {
  static override properties = { session: {}, sessions: { state: true }, unsound: { state: true }, plan: { state: true }, notice: { state: true }, trouble: { state: true } };
  declare session: string;
  declare sessions: readonly LoggedSession[] | undefined;
  declare unsound: number;
  declare plan: string | undefined;
  declare notice: string;
  declare trouble: string;

  constructor() {
    super();
    this.session = "";
    this.unsound = 0;
    this.notice = "";
    this.trouble = "";
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "Log · Slipway";
    void this.gather();
  }

  override firstUpdated(): void {
    tellScreen(this);
  }

  override updated(changed: PropertyValues<this>): void {
    if (changed.has("session") || changed.has("sessions")) void this.lookForPlan();
  }

  override render() {
    return html`<log-screen .sessions=${this.sessions} .unsound=${this.unsound} .opened=${this.session} .plan=${this.plan} .notice=${this.notice} .trouble=${this.trouble}
      @remarked=${this.take} @forget=${this.forget}></log-screen>`;
  }

  private async gather(): Promise<void> {
    try {
      ({ sessions: this.sessions, unsound: this.unsound } = await logged());
      if (database.where() === "memory") this.notice = NO_STORE;
    } catch {
      this.notice = NO_ANSWER;
    }
    // An opened one has a heading of its own.
    await this.updateComplete;
    tellScreen(this);
  }

  private async lookForPlan(): Promise<void> {
    const { session } = this;
    const opened = this.sessions?.find(({ id }) => id === session);
    this.plan = undefined;
    this.trouble = "";
    const plan = opened && (await addressOfPlan(opened.figures.plan_id));
    if (session === this.session) this.plan = plan;
  }

  private take({ detail: { id, remarks } }: CustomEvent<{ id: string; remarks: Remarks }>): void {
    this.sessions = this.sessions?.map((session) => (session.id === id ? { id, figures: session.figures, ...remarks } : session));
  }

  private async forget({ detail: id }: CustomEvent<string>): Promise<void> {
    try {
      await forgetSession(id);
    } catch {
      this.trouble = NOT_TAKEN;
      return;
    }
    this.sessions = this.sessions?.filter((session) => session.id !== id);
    goTo(this, "/log");
  }
}
customElements.define("log-home", LogHome);
