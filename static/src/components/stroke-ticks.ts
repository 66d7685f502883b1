/** A tick for every stroke of the block; above forty, one mark for every ten and ten ticks for those being rowed.
 *
 * Properties: `total` strokes of the block, `done` strokes finished. Only the ticks that changed are touched.
 */
import { LitElement, css, html, nothing, type PropertyValues, type TemplateResult } from "lit";
import { type } from "./look.js";
import { strokesInAMark } from "./tick-marks.js";

export class StrokeTicks extends LitElement {
  static override properties = { total: { type: Number }, done: { type: Number } };
  declare total: number;
  declare done: number;

  constructor() {
    super();
    this.total = 0;
    this.done = 0;
  }

  static override styles = [type, css`
    :host { height: 24px; contain: strict; container-type: inline-size; }
    .all { display: flex; align-items: end; gap: 14px; height: 100%; }
    .told { display: none; flex: none; font-size: 15px; line-height: 1; color: var(--ink-2); }
    @container (min-width: 700px) { .told { display: block; } }
    .rows { flex: 1; min-width: 0; display: grid; gap: 3px; height: 100%; align-content: end; grid-auto-rows: minmax(4px, 9px); }
    .row { display: flex; gap: 3px; }
    i { flex: 1; min-width: 0; border-radius: 3px; background: var(--ink); }
    i.done { background: transparent; box-shadow: inset 0 0 0 1px var(--edge); }
    i.now { background: var(--catch); }
    i.spare { visibility: hidden; }
    .marks { gap: 2px; }
    .marks i { border-radius: 2px; }
    @media (forced-colors: active) {
      i { forced-color-adjust: none; background: CanvasText; }
      i.done { background: Canvas; box-shadow: inset 0 0 0 1px CanvasText; }
      i.now { background: Highlight; }
    }
  `];

  /** Between two blocks everything is drawn; within one, a stroke changes two ticks. */
  override shouldUpdate(changed: PropertyValues<this>): boolean {
    const before = changed.get("done");
    if (changed.size > 1 || !changed.has("done") || !this.hasUpdated || before === undefined) return true;
    const size = strokesInAMark(this.total);
    if (Math.floor(before / size) !== Math.floor(this.done / size)) return true;
    this.paint(".ticks", size === 1 ? this.done : this.done % size);
    return false;
  }

  override updated(): void {
    const size = strokesInAMark(this.total);
    this.paint(".ticks", size === 1 ? this.done : this.done % size);
    if (size > 1) this.paint(".marks", Math.floor(this.done / size));
  }

  override render() {
    if (!this.total) return nothing;
    const size = strokesInAMark(this.total);
    if (size === 1) return told("a tick for each stroke", row("ticks", this.total, this.total));
    const first = Math.floor(this.done / size) * size;
    return told(`above, a tick for each stroke; below, a mark for every ${size}`, html`${row("ticks", size, Math.min(size, this.total - first))}
      ${row("marks", Math.ceil(this.total / size), Math.ceil(this.total / size))}`);
  }

  private paint(row: string, at: number): void {
    this.renderRoot.querySelectorAll<HTMLElement>(`${row} i`).forEach((tick, index) => {
      tick.classList.toggle("done", index < at);
      tick.classList.toggle("now", index === at);
    });
  }
}
customElements.define("stroke-ticks", StrokeTicks);

/** What one of a row is: heard, and seen where there is room. */
function told(words: string, rows: TemplateResult) {
  return html`<div class="all" role="img" aria-label="Strokes of this block: ${words}"><div class="rows">${rows}</div><span class="told" aria-hidden="true">${words}</span></div>`;
}

function row(name: string, places: number, used: number) {
  const ticks = Array.from({ length: places }, (_, index) =>
    index < used ? html`<i></i>` : html`<i class="spare"></i>`);
  return html`<div class="row ${name}">${ticks}</div>`;
}
