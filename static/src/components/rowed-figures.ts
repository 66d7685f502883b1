/** What was rowed, in figures: of the session that has just ended, or of one in the log. */
import { css, html, nothing, type TemplateResult } from "lit";
import { clock, splitClock } from "../plan/format.js";
import { metreWords } from "../plan/result-words.js";
import type { Piece, Sums } from "../timeline/rowed.js";

export const figuresLook = css`
  .rowed { display: grid; grid-template-columns: repeat(auto-fit, minmax(130px, 1fr)); gap: 10px; }
  .rowed div { display: flex; flex-direction: column-reverse; justify-content: flex-end; gap: 4px; padding: 16px; background: var(--hull); border-radius: var(--r); }
  .rowed dd { font-size: 2.375rem; font-family: var(--digits); font-weight: 700; letter-spacing: -0.04em; }
`;

/** Time, metres and strokes; what was planned is said where the session was not rowed whole. */
export function rowedFigures(done: Sums, planned: Sums | undefined, whole: boolean): TemplateResult {
  const of = (value: number | undefined, words: (value: number) => string) => (value === undefined || whole ? "" : `, of ${words(value)}`);
  return html`<dl class="rowed">
    <div><dt class="small">rowed and rested${of(planned?.seconds_s, clock)}</dt><dd>${clock(done.seconds_s)}</dd></div>
    ${done.metres ? html`<div><dt class="small">metres, about</dt><dd>${Math.round(done.metres)}</dd></div>` : nothing}
    <div><dt class="small">strokes${of(planned?.strokes, String)}</dt><dd>${done.strokes}</dd></div>
  </dl>`;
}

export const COUNTED = "Counted from the plan and the clock, not measured on the machine.";

export function wholeWords(whole: boolean): string {
  return whole ? "Rowed to the end" : "Ended here";
}

/** The metre blocks with the times that taps gave them. */
export function pieceList(pieces: readonly Piece[]): TemplateResult {
  return html`<ul>${pieces.map(({ metres, seconds_s, held }) => html`<li>
    ${metreWords(metres)} in ${clock(seconds_s)}, ${splitClock((seconds_s * 500) / metres)} /500 m${held ? ", with a hold" : ""}</li>`)}</ul>`;
}
