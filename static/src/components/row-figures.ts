/** The figures of the row screen, drawn: sizes follow the number of letters, so that nothing is cut. */
import { html, nothing } from "lit";
import type { Face, Figure } from "./row-face.js";

export function figures({ big, left, right }: Face) {
  const tight = left.text.length + right.text.length > 4 ? "tight" : "";
  return html`<div class="face ${tight}">
    <div class="time ${big.note ? "noted" : ""}">
      <div class="big digits ${bigSize(big)}" role=${timer(big)} aria-live=${still(big)} aria-label=${big.kind === "time" && !big.note ? "Time left" : nothing}>${digits(big)}</div>
      ${big.note ? html`<span class="unit">${big.note}</span>` : nothing}
    </div>
    <div class="rate">${small(left)}</div>
    <div class="strokes">${small(right)}</div>
  </div>`;
}

function small(figure: Figure) {
  const size = figure.kind === "time" ? `clock c${Math.max(4, figure.text.length)}` : "";
  return html`${figure.text ? html`<span class="mid digits ${size}" role=${timer(figure)} aria-live=${still(figure)}>${digits(figure)}</span>` : nothing}
    ${figure.note ? html`<span class="unit">${figure.note}</span>` : nothing}`;
}

function digits({ kind, text }: Figure) {
  return kind === "rate" ? html`<i>r</i>${text}` : text;
}

/** A time counts by itself and is never read out. */
function timer({ kind }: Figure) {
  return kind === "time" ? "timer" : nothing;
}

function still({ kind }: Figure) {
  return kind === "time" ? "off" : nothing;
}

function bigSize({ text }: Figure): string {
  return ["short", "short", "short", "short", "", "five", "six"][text.length] ?? "seven";
}
