/** A drill in a list of blocks; one that the library knows opens to its drawing, how it is done and what to beware of.
 *
 * Properties: `name`, as the coach wrote it, and `words`, which stand on the line.
 */
import { LitElement, css, html, type PropertyValues } from "lit";
import { drillNamed } from "../data/technique.js";
import type { KnownDrill } from "../plan/wire.js";
import { type } from "./look.js";

export class DrillLine extends LitElement {
  static override properties = { name: {}, words: {}, drill: { state: true } };
  declare name: string;
  declare words: string;
  declare drill: KnownDrill | undefined;

  static override styles = [type, css`
    span { color: var(--ink-2); }
    summary { min-height: 48px; align-content: center; cursor: pointer; }
    summary bdi { text-decoration: underline; text-underline-offset: 4px; }
    .told { display: grid; gap: 8px; margin-bottom: 8px; padding: 4px 12px 14px; background: var(--hull); border-radius: var(--r); --figure-ground: var(--hull); }
    stroke-figure { width: 100%; max-width: 400px; aspect-ratio: 252 / 128; }
  `];

  override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has("name")) return;
    this.drill = undefined;
    const { name } = this;
    void drillNamed(name).then((drill) => name === this.name && (this.drill = drill));
  }

  override render() {
    const line = html`<span>Drill: </span><bdi>${this.words}</bdi>`;
    if (!this.drill) return html`<div dir="auto">${line}</div>`;
    const { name, how, caution, mends } = this.drill;
    return html`<details @toggle=${draw}><summary dir="auto">${line}</summary>
      <div class="told"><stroke-figure name=${name}></stroke-figure>
        <p>${how}</p><p><b>${caution}</b></p><p class="small">Mends: ${mends}</p></div>
    </details>`;
  }
}
customElements.define("drill-line", DrillLine);

/** Without the drawing the words still stand. */
function draw(): void {
  import("./later.js").catch(() => undefined);
}
