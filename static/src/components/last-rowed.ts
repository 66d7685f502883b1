/** When a plan was rowed last on this device, and how that went. Property `plan` (its id); not there where it never was. */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import { logged, type LoggedSession } from "../data/log.js";
import { type } from "./look.js";
import { sessionWords, whenWords } from "./rowed-words.js";

export class LastRowed extends LitElement {
  static override properties = { plan: {}, last: { state: true }, times: { state: true } };
  declare plan: string;
  declare last: LoggedSession | undefined;
  declare times: number;

  constructor() {
    super();
    this.plan = "";
    this.times = 0;
    this.hidden = true;
  }

  static override styles = [type, css`
    :host { display: grid; gap: 4px; padding: 12px 14px; background: var(--hull); border-left: 6px solid var(--edge); border-radius: 6px var(--r) var(--r) 6px; overflow-wrap: anywhere; }
    .note { white-space: pre-line; display: -webkit-box; -webkit-box-orient: vertical; -webkit-line-clamp: 6; overflow: hidden; }
  `];

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has("plan")) void this.look(this.plan);
  }

  override render() {
    const { last, times } = this;
    if (!last) return nothing;
    return html`<p><b>Last rowed ${whenWords(last.figures)}</b>${times > 1 ? `, ${times} times in all` : ""}. <a href="/log#${last.id}">In the log</a></p>
      <p class="small">${sessionWords(last)}</p>
      ${last.note ? html`<p class="note" dir="auto">${last.note}</p>` : nothing}`;
  }

  private async look(plan: string): Promise<void> {
    const { sessions } = await logged().catch(() => ({ sessions: [] }));
    if (plan !== this.plan) return;
    const rowed = sessions.filter(({ figures }) => figures.plan_id === plan);
    [this.last, this.times, this.hidden] = [rowed[0], rowed.length, !rowed.length];
  }
}
customElements.define("last-rowed", LastRowed);
