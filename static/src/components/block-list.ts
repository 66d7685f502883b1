/** The blocks of a plan as they were written: by part, repeats kept together ("3 times"). Property `timeline`. */
import { LitElement, css, html, nothing, type TemplateResult } from "lit";
import type { Block, Drill, Part, Repeat, Segment, Step, Timeline } from "../plan/wire.js";
import { clock, splitClock } from "../plan/format.js";
import { callLines } from "./call-lines.js";
import "./drill-line.js";
import { type } from "./look.js";
import { depthOf, quickestSplit } from "./profile-geometry.js";
import { drillWords, effortWords, lengthWords, partName, powerWords, restWords, settingWords, strokesWords } from "./segment-words.js";

export class BlockList extends LitElement {
  static override properties = { timeline: { attribute: false } };
  declare timeline: Timeline | undefined;
  private byPlace = new Map<string, Segment>();
  private quickest = 0;

  static override styles = [type, css`
    :host { display: grid; gap: 22px; }
    h2 { display: flex; justify-content: space-between; align-items: baseline; gap: 12px; border-bottom: 2px solid var(--edge); padding-bottom: 6px; }
    h2 span { font-weight: 400; text-align: right; }
    .block { display: grid; grid-template-columns: 12px minmax(3.4em, auto) 2.6em 1fr auto; gap: 2px 10px; align-items: center; padding: 11px 0; border-bottom: 1px solid var(--line); }
    .block i { height: 30px; border-radius: 4px; background: var(--gap); border: 1px solid var(--edge); align-self: start; }
    .block i.d1 { background: var(--p-light); }
    .block i.d2 { background: var(--p-half); }
    .block i.d3 { background: var(--p-three-quarter); }
    .block i.d4 { background: var(--p-full); }
    .block i.d5 { background: var(--p-race); }
    .block b { font-family: var(--digits); letter-spacing: -0.03em; white-space: nowrap; }
    .block .says { grid-column: 2 / -1; display: grid; gap: 2px; font-size: 1.0625rem; }
    .says span { color: var(--ink-2); }
    .times { margin: 10px 0 0; padding-left: 12px; border-left: 4px solid var(--edge); }
    .times > p { font-weight: 700; padding: 4px 0; }
    .between { color: var(--ink-2); font-size: 1rem; padding-top: 8px; }
    .rest { color: var(--ink-2); }
    @media (forced-colors: active) { .block i { forced-color-adjust: none; } }
  `];

  override render() {
    const timeline = this.timeline;
    if (!timeline) return nothing;
    this.byPlace = new Map(timeline.segments.map((segment) => [segment.place, segment] as const).reverse());
    this.quickest = quickestSplit(timeline);
    return timeline.plan.parts.map((part, index) => this.section(part, index));
  }

  private section(part: Part, index: number): TemplateResult {
    const totals = this.timeline?.totals.parts.find((item) => item.part_index === index);
    const sums = totals ? `${totals.estimated ? "about " : ""}${clock(totals.seconds_s)}${totals.strokes ? ` · ${strokesWords(totals.strokes)}` : ""}` : "";
    return html`<section>
      <h2>${partName(part.kind)}<span class="small">${sums}</span></h2>
      ${part.kind === "gap" ? html`<p class="block rest"><i></i><b>${clock(part.for.seconds)}</b><span class="says">Off the machine: stand, drink, set the machine.</span></p>`
        : html`<ol>${this.steps(part.blocks, `/parts/${index}/blocks`)}</ol>`}
    </section>`;
  }

  private steps(steps: readonly Step[], place: string): TemplateResult[] {
    return steps.map((step, index) => html`<li>${this.step(step, `${place}/${index}`)}</li>`);
  }

  private step(step: Step, place: string): TemplateResult {
    if ("times" in step) return this.repeat(step, place);
    if ("rest" in step) return html`<div class="block rest"><i></i><b>${clock(step.for.seconds)}</b><span></span><span>${restWords(step.for.seconds)}</span></div>`;
    return this.block(step, place);
  }

  private repeat(repeat: Repeat, place: string): TemplateResult {
    return html`<div class="times"><p>${repeat.times} times</p>
      <ol>${this.steps(repeat.blocks, `${place}/blocks`)}</ol>
      ${repeat.between?.length ? html`<p class="between">and between them</p><ol>${this.steps(repeat.between, `${place}/between`)}</ol>` : nothing}
    </div>`;
  }

  private block(block: Block, place: string): TemplateResult {
    const segment = this.byPlace.get(place);
    if (!segment) return html``;
    const depth = depthOf(segment, this.quickest, 2);
    return html`<div class="block">
      <i class="d${Math.round(depth)}"></i>
      <b>${block.drill?.sides ? clock(lengthSeconds(block)) : lengthWords(segment)}</b>
      <b>${block.rate === undefined ? "" : `r${block.rate}`}</b>
      <span>${effortAndSplit(block, segment)}</span>
      <span class="small">${segment.strokes && !block.drill?.sides ? strokesWords(segment.strokes) : ""}</span>
      ${this.says(block, segment)}
    </div>`;
  }

  private says(block: Block, segment: Segment) {
    const drill = block.drill && (block.drill.sides ? sidesWords(block.drill) : drillWords(segment));
    const lines = [
      ...(block.focus ? [["Focus", block.focus]] : []),
      ...(block.setting ? [["Machine", settingWords(block.setting)]] : []),
      ...callLines(block.calls ?? [], segment.repetition !== undefined),
    ];
    if (!drill && !lines.length) return nothing;
    return html`<div class="says">${drill ? html`<drill-line .name=${block.drill!.name} .words=${drill}></drill-line>` : nothing}${lines.map(([label, text]) => html`<div dir="auto"><span>${label}: </span><bdi>${text}</bdi></div>`)}</div>`;
  }
}
customElements.define("block-list", BlockList);

/** "single foot, 2 sides of 20 s, 10 s to swap". */
function sidesWords({ name, sides, side_seconds, swap_seconds }: Drill): string {
  return `${name}, ${sides} sides of ${side_seconds} s${swap_seconds ? `, ${swap_seconds} s to swap` : ""}`;
}

/** The effort as it was written, and the split that follows from it where a result is known. */
function effortAndSplit({ effort }: Block, { target }: Segment): string {
  const written = effort && "two_k_power_fraction" in effort ? powerWords(effort.two_k_power_fraction) : effortWords(target);
  const split = target?.split_s === undefined ? "" : splitClock(target.split_s);
  if (!split) return written;
  return written === `at ${split}` ? `${written} /500 m` : `${written} · ${split}`;
}

function lengthSeconds(block: Block): number {
  return block.for && "seconds" in block.for ? block.for.seconds : 0;
}
