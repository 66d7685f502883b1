/** What is wrong in a text: each mistake with its place, what was read there and what would do.
 *
 * Property: `problems`. Event: `place` (detail: the problem whose place is asked for).
 */
import { LitElement, css, html, nothing } from "lit";
import type { Problem } from "../plan/wire.js";
import { buttons, type } from "./look.js";

/** The place stands on the button beside the sentence already. */
const PLACE = /^line \d+, column \d+: /;

export class ProblemList extends LitElement {
  static override properties = { problems: { attribute: false } };
  declare problems: readonly Problem[];

  constructor() {
    super();
    this.problems = [];
  }

  static override styles = [type, buttons, css`
    ul { display: grid; gap: 10px; }
    li { display: grid; gap: 6px; padding: 12px 14px; background: var(--hull); border-left: 6px solid var(--catch); border-radius: 6px var(--r) var(--r) 6px; overflow-wrap: anywhere; }
    li li { padding: 0; border: 0; }
    button { justify-self: start; font-size: 1.0625rem; background: var(--water); }
    code { font-family: var(--digits); font-weight: 700; }
    summary { min-height: 44px; align-content: center; cursor: pointer; text-decoration: underline; text-underline-offset: 4px; }
  `];

  override render() {
    return html`<ul aria-label="What cannot be read">${this.problems.map((problem) => this.problem(problem))}</ul>`;
  }

  private problem(problem: Problem) {
    const accepted = problem.accepted ?? [];
    return html`<li>
      ${problem.line === undefined ? nothing : html`<button type="button" @click=${() => this.dispatchEvent(new CustomEvent<Problem>("place", { detail: problem }))}>
        Line ${problem.line}, column ${problem.column}</button>`}
      ${problem.received ? html`<p>Read: <code><bdi>${problem.received}</bdi></code></p>` : nothing}
      <p dir="auto">${capital(problem.sentence.replace(PLACE, ""))}</p>
      ${accepted.length ? html`<details class="small"><summary>What would do here</summary><ul>${accepted.map((each) => html`<li>${capital(each)}</li>`)}</ul></details>` : nothing}
    </li>`;
  }
}
customElements.define("problem-list", ProblemList);

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
