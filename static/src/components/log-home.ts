/** Brings the log what is kept of the sessions that were rowed here. Property `session`: the id of the one to open, or "". */
import { LitElement, html, type PropertyValues } from "lit";
import { database } from "../data/database.js";
import { addressOfPlan, forgetSession, logged, type Logged, type LoggedSession } from "../data/log.js";
import type { Remarks } from "../data/remarks.js";
import "./log-screen.js";
import { goTo, tellScreen } from "./routes.js";

const NO_STORE = "This browser keeps nothing for this page, so the log is gone when it is closed.";
const WITHOUT = "Storage on this device does not answer yet: what you rowed before stands here again as soon as it does.";
const NO_ANSWER = "This device’s storage does not hand out the log. Nothing in it has changed; open this page again.";
const NOT_TAKEN = "This device could not take it off: its storage does not answer. Try again.";

export class LogHome extends LitElement {
  static override properties = { session: {}, sessions: { state: true }, unsound: { state: true }, reading: { state: true }, plan: { state: true }, notice: { state: true }, trouble: { state: true } };
  declare session: string;
  declare sessions: readonly LoggedSession[] | undefined;
  declare unsound: number;
  declare reading: boolean;
  declare plan: string | undefined;
  declare notice: string;
  declare trouble: string;
  /** What was said here, and taken off, since reading began. */
  private readonly said = new Map<string, Remarks>();
  private readonly gone = new Set<string>();
  private told = false;
  private stop = (): void => {};

  constructor() {
    super();
    this.session = "";
    this.unsound = 0;
    this.reading = false;
    this.notice = "";
    this.trouble = "";
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "Log · Slipway";
    void this.gather();
    let was = database.where();
    this.stop = database.subscribe(() => {
      if (was === "memory" && database.where() === "disk") void this.gather();
      was = database.where();
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stop();
  }

  override firstUpdated(): void {
    tellScreen(this);
  }

  override updated(changed: PropertyValues<this>): void {
    if (changed.has("session") || (changed.has("sessions") && this.plan === undefined)) void this.lookForPlan();
  }

  override render() {
    return html`<log-screen .sessions=${this.sessions} .unsound=${this.unsound} .reading=${this.reading} .opened=${this.session} .plan=${this.plan} .notice=${this.notice} .trouble=${this.trouble}
      @remarked=${this.take} @forget=${this.forget}></log-screen>`;
  }

  private async gather(): Promise<void> {
    this.reading = true;
    try {
      this.show(await logged((so_far) => this.show(so_far), this.session));
      this.notice = database.where() === "disk" ? "" : database.isWithout() ? WITHOUT : NO_STORE;
    } catch {
      this.notice = NO_ANSWER;
    }
    this.reading = false;
    void this.tell();
  }

  /** Once: an opened session has a heading of its own, and what is read later takes no focus away. */
  private async tell(): Promise<void> {
    if (this.told) return;
    this.told = true;
    await this.updateComplete;
    tellScreen(this);
  }

  private show({ sessions, unsound }: Logged): void {
    const here = sessions.filter(({ id }) => !this.gone.has(id));
    this.sessions = here.map((session) => (this.said.has(session.id) ? { id: session.id, figures: session.figures, ...this.said.get(session.id) } : session));
    this.unsound = unsound;
    if (!this.session || here.some(({ id }) => id === this.session)) void this.tell();
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
    this.said.set(id, remarks);
    this.sessions = this.sessions?.map((session) => (session.id === id ? { id, figures: session.figures, ...remarks } : session));
  }

  private async forget({ detail: id }: CustomEvent<string>): Promise<void> {
    try {
      await forgetSession(id);
    } catch {
      this.trouble = NOT_TAKEN;
      return;
    }
    this.gone.add(id);
    this.sessions = this.sessions?.filter((session) => session.id !== id);
    goTo(this, "/log");
  }
}
customElements.define("log-home", LogHome);
