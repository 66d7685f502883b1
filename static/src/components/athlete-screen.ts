/** A person's results, a few facts that help, and what follows from both.
 *
 * Properties: `athlete` (undefined while it is being read), `answer` (or null), `trouble`.
 * Events: `result` and `remove` (detail: a result), `facts` (detail: what has changed), `forget`.
 */
import { LitElement, css, html, nothing } from "lit";
import { resultWords } from "../plan/result-words.js";
import type { Athlete, AthleteAnswer, Finding, Result } from "../plan/wire.js";
import "./ask-first.js";
import "./athlete-facts.js";
import "./athlete-tables.js";
import { buttons, page, type } from "./look.js";
import "./result-entry.js";

const OF_RESULT = /^(?:\/athlete)?\/results\/(\d+)/;

export class AthleteScreen extends LitElement {
  static override properties = { athlete: { attribute: false }, answer: { attribute: false }, trouble: {} };
  declare athlete: Athlete | undefined;
  declare answer: AthleteAnswer | null;
  declare trouble: string;

  constructor() {
    super();
    this.answer = null;
    this.trouble = "";
  }

  static override styles = [type, buttons, page, css`
    .back { justify-self: start; display: inline-grid; align-items: center; min-height: 44px; font-weight: 700; }
    section, header { display: grid; gap: 12px; }
    h2 { border-bottom: 2px solid var(--edge); padding-bottom: 6px; }
    li { display: grid; grid-template-columns: 1fr auto; gap: 4px 12px; align-items: center; padding: 8px 0; border-bottom: 1px solid var(--line); }
    li button { min-height: 44px; padding: 4px 14px; font-size: 1.0625rem; }
    li p { grid-column: 1 / -1; }
    .find { padding: 10px 14px; background: var(--hull); border-left: 6px solid var(--edge); border-radius: 6px var(--r) var(--r) 6px; }
    .warning, .advice { border-left-color: var(--catch); }
    @media (min-width: 1000px) {
      main { width: min(100%, 1120px); grid-template-columns: minmax(0, 1fr) minmax(0, 1.2fr); grid-template-rows: repeat(3, auto) 1fr;
        gap: 28px 48px; align-items: start; }
      .back, header { grid-column: 1 / -1; }
      .out { grid-column: 2; grid-row: 3 / span 2; }
    }
    .out, .about { display: grid; gap: 28px; align-content: start; }
  `];

  override render() {
    return html`<main>
      <a class="back" href="/">What are you rowing today?</a>
      <header><h1 tabindex="-1">Your results</h1>
        <p>Kept on this device. They leave it only for a calculation, and are stored nowhere else.</p></header>
      ${this.athlete ? this.page(this.athlete) : nothing}
    </main>`;
  }

  private page(athlete: Athlete) {
    const results = athlete.results ?? [];
    return html`<section aria-labelledby="yours"><h2 id="yours">What you rowed</h2>
          ${results.length ? html`<ul>${inOrder(results).map(([result, index]) => this.result(result, index))}</ul>`
            : html`<p>Without a result, sessions go by rate and pressure. One result gives splits; two or more show what you can hold.</p>`}
          <result-entry button="Add this result"></result-entry>
          <div role="status">${this.trouble ? html`<p class="find">${this.trouble}</p>` : nothing}</div>
          ${this.findings(this.findingsAt(undefined))}
      </section>
      <athlete-tables class="out" .answer=${this.answer}></athlete-tables>
      <div class="about"><athlete-facts .athlete=${athlete}></athlete-facts>${this.removal(athlete)}</div>`;
  }

  private result(result: Result, index: number) {
    const words = resultWords(result);
    return html`<li><b>${words}</b>
      <button type="button" aria-label="Remove ${words}" @click=${() => this.tell("remove", result)}>Remove</button>
      ${this.findings(this.findingsAt(index))}</li>`;
  }

  /** Findings about one result, or those about none. */
  private findingsAt(index: number | undefined): readonly Finding[] {
    return (this.answer?.findings ?? []).filter(({ place }) => {
      const at = OF_RESULT.exec(place);
      return index === undefined ? !at : at?.[1] === String(index);
    });
  }

  private findings(findings: readonly Finding[]) {
    return findings.map(({ severity, sentence, reason }) => html`<p class="find ${severity}">${sentence}${reason ? html` <span class="small">${reason}</span>` : nothing}</p>`);
  }

  private removal(athlete: Athlete) {
    if (!Object.keys(athlete).length) return nothing;
    return html`<ask-first words="Remove all on this page" yes="Yes, remove it all" @sure=${() => this.tell("forget")}></ask-first>`;
  }

  private tell(name: "remove" | "forget", detail?: Result): void {
    this.dispatchEvent(new CustomEvent(name, { detail }));
  }
}
customElements.define("athlete-screen", AthleteScreen);

/** The shortest first, each with its place among those that are sent. */
function inOrder(results: readonly Result[]): [Result, number][] {
  return [...results.entries()].map(([index, result]): [Result, number] => [result, index]).sort(([a], [b]) => a.metres - b.metres || a.seconds - b.seconds);
}
