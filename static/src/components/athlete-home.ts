/** Brings the athlete page what is kept about the person, and what follows from it. */
import { LitElement, html } from "lit";
import { NoAnswer } from "../data/api.js";
import { addResult, changeAthlete, forgetAthlete, readAthlete, removeResult, sentOf, workOut, type AthleteRecord } from "../data/athlete.js";
import type { Athlete, Result } from "../plan/wire.js";
import "./athlete-screen.js";
import { tellScreen } from "./routes.js";

const NO_SIGNAL = "What follows from your results is worked out where there is signal. They are kept here until then.";

export class AthleteHome extends LitElement {
  static override properties = { record: { state: true }, trouble: { state: true } };
  declare record: AthleteRecord | undefined;
  declare trouble: string;

  constructor() {
    super();
    this.trouble = "";
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "Your results · Slipway";
    void this.show(readAthlete());
  }

  override firstUpdated(): void {
    tellScreen(this);
  }

  override render() {
    return html`<athlete-screen .athlete=${this.record?.athlete} .answer=${this.record?.answer ?? null} .trouble=${this.trouble}
      @result=${({ detail }: CustomEvent<Result>) => this.show(addResult(detail))}
      @remove=${({ detail }: CustomEvent<Result>) => this.show(removeResult(detail))}
      @facts=${({ detail }: CustomEvent<Partial<Athlete>>) => this.show(changeAthlete(detail))}
      @forget=${() => this.show(forgetAthlete())}></athlete-screen>`;
  }

  /** What was changed is shown at once, what follows from it as soon as it has been worked out. */
  private async show(changed: Promise<AthleteRecord>): Promise<void> {
    const record = await changed;
    this.record = record;
    this.trouble = "";
    if (record.answer || !sentOf(record)) return;
    try {
      const answered = await workOut(record);
      if (this.record === record) this.record = answered;
    } catch (error) {
      this.trouble = error instanceof NoAnswer ? NO_SIGNAL : error instanceof Error ? error.message : String(error);
    }
  }
}
customElements.define("athlete-home", AthleteHome);
