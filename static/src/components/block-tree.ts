/** The blocks of a plan to build with: each opens to be changed in place, moved, copied, repeated or taken out.
 *
 * Properties: `plan`, `timeline` (for strokes and splits; of this plan), `library` (drills and calls, or undefined), `plans`
 * (whose parts can be taken over).
 * Event: `edit` (detail: the plan after a change).
 */
import { LitElement, html, nothing, type PropertyValues, type TemplateResult } from "lit";
import { checkedPlan } from "../plan/checked-plan.js";
import { secondsIn } from "../plan/field-values.js";
import { clock, splitClock } from "../plan/format.js";
import { canMove, doubled, following, inserted, itemAt, moved, movedTo, removed, repeated, replaced, unrolled, type Reshaped } from "../plan/reshape.js";
import type { Part, Plan, Repeat, Segment, Step, TechniqueLibrary, Timeline } from "../plan/wire.js";
import { inline } from "../plan/written.js";
import type { BlockFields } from "./block-fields.js";
import "./block-fields.js";
import { treeLook } from "./block-tree-look.js";
import { Dragging } from "./dragging.js";
import { buttons, type } from "./look.js";
import { partName, strokesWords } from "./segment-words.js";
import "./word-picker.js";
import type { Word } from "./word-picker.js";

const TOO_MUCH = "That would be more than a plan holds: 12 parts, 100 blocks in a row, repeats 4 deep, 500 blocks and 12 hours in all. Nothing was changed.";
const NEW_BLOCK: Step = { for: { seconds: 300 }, rate: 20, effort: { pressure: "light" } };
const NEW_REST: Step = { rest: true, for: { seconds: 120 } };
const NEW_PARTS: readonly Part[] = [
  { kind: "warm-up", blocks: [{ for: { seconds: 300 }, rate: 18, effort: { pressure: "light" } }] },
  { kind: "gap", for: { seconds: 300 } },
  { kind: "main", blocks: [{ for: { seconds: 600 }, rate: 22, effort: { pressure: "half" } }] },
  { kind: "cool-down", blocks: [{ for: { seconds: 300 }, rate: 18, effort: { pressure: "light" } }] },
];

export class BlockTree extends LitElement {
  static override properties = {
    plan: { attribute: false },
    timeline: { attribute: false },
    library: { attribute: false },
    plans: { attribute: false },
    open: { state: true },
    told: { state: true },
  };
  declare plan: Plan | undefined;
  declare timeline: Timeline | undefined;
  declare library: TechniqueLibrary | undefined;
  declare plans: readonly Plan[];
  /** The place that is open to be changed, or "". */
  declare open: string;
  /** What has just happened, for those who hear it. */
  declare told: string;
  private byPlace = new Map<string, Segment>();
  private parts: readonly PartWord[] = [];
  private readonly dragging = new Dragging(this, (from, to) => this.reshape(movedTo(this.plan!, from, to), "Moved"));

  constructor() {
    super();
    this.plans = [];
    this.open = "";
    this.told = "";
  }

  static override styles = [type, buttons, treeLook];

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has("plans")) this.parts = partsOf(this.plans);
  }

  override render() {
    const { plan } = this;
    this.byPlace = new Map((this.timeline?.segments ?? []).map((segment) => [segment.place, segment] as const).reverse());
    const parts = plan?.parts ?? [];
    return html`<p class="told" role="status">${this.told}</p>
      ${parts.map((part, index) => this.section(part, `/parts/${index}`, parts.length))}
      <section class="adding" aria-labelledby="add"><h2 id="add">Add a part</h2><div class="acts">${NEW_PARTS.map((part) => html`
        <button type="button" @click=${() => this.addPart(part)}>${partName(part.kind)}</button>`)}
        <word-picker label="A part of another plan" .words=${this.parts} @pick=${({ detail }: CustomEvent<PartWord>) => this.addPart(detail.part)}></word-picker></div></section>`;
  }

  private section(part: Part, place: string, parts: number) {
    const name = partName(part.kind);
    return html`<section aria-label=${name}><h2>${name}${part.kind === "gap" ? html`<span class="small">${clock(part.for.seconds)}</span>` : nothing}</h2>
      ${part.kind === "gap" ? html`<typed-field label="Length of the gap, as 5:00" hint="Write it as 5:00, 5 or 50&quot;, up to 4 hours." .value=${clock(part.for.seconds)}
          .read=${(text: string) => secondsIn(text, { low: 1, high: 14_400 })} @value=${({ detail }: CustomEvent<number>) => this.change(replaced(this.plan!, place, { ...part, for: { seconds: detail } }), "Changed")}></typed-field>`
        : this.list(part.blocks, `${place}/blocks`)}
      <div class="acts">${part.kind === "gap" ? nothing : this.adding(`${place}/blocks/${part.blocks.length}`, name)}
        ${this.movers(place, name)}
        ${parts > 1 ? html`<button type="button" aria-label="Take out ${name}" @click=${() => this.change(removed(this.plan!, place), "Taken out")}>Take out</button>` : nothing}</div></section>`;
  }

  private list(steps: readonly Step[], place: string): TemplateResult {
    return html`<ol>${steps.map((step, index) => html`<li>${this.row(step, `${place}/${index}`)}</li>`)}</ol>`;
  }

  private row(step: Step, place: string): TemplateResult {
    const open = this.open === place;
    const drop = this.dragging.to === place ? "before" : this.dragging.to === following(place) ? "after" : "";
    return html`<div class="row ${drop} ${this.dragging.from === place ? "lifted" : ""}" data-place=${place}>
        <button type="button" class="words" id=${place} aria-expanded=${open ? "true" : "false"} @click=${() => this.turn(open ? "" : place)}
          @keydown=${(event: KeyboardEvent) => this.pressed(event, place)}>
          <b dir="ltr">${"times" in step ? `${step.times} times` : inline(step)}</b>${this.about(step, place)}</button>
        <span class="handle" aria-hidden="true" title="Drag to move" @pointerdown=${(event: PointerEvent) => this.dragging.begin(event, place)} @pointermove=${(event: PointerEvent) => this.dragging.over(event)}
          @pointerup=${() => this.dragging.end()} @pointercancel=${() => this.dragging.cancel()}><svg viewBox="0 0 24 24"><path d="M5 8H19M5 12H19M5 16H19" /></svg></span></div>
      ${open ? this.opened(step, place) : nothing}
      ${"times" in step ? html`<div class="inside">${this.list(step.blocks, `${place}/blocks`)}
        ${step.between?.length ? html`<p class="small">and between them</p>${this.list(step.between, `${place}/between`)}` : nothing}</div>` : nothing}`;
  }

  /** What follows from it, and what stands below it. */
  private about(step: Step, place: string) {
    if ("times" in step || "rest" in step) return nothing;
    const segment = this.byPlace.get(place);
    const split = segment?.target?.split_s;
    const known = [
      segment?.strokes && !(step.for && "strokes" in step.for) ? strokesWords(segment.strokes) : "",
      segment && step.for && !("seconds" in step.for) && segment.basis !== "assumed" ? clock(segment.duration_s) : "",
      split === undefined || (step.effort && "split" in step.effort) ? "" : `${splitClock(split)} /500 m`,
      step.drill?.name ?? "", step.focus ?? "",
      step.calls?.length ? (step.calls.length === 1 ? "1 call" : `${step.calls.length} calls`) : "",
    ].filter(Boolean);
    return html`<span class="small" dir="auto">${known.join(" · ")}</span>`;
  }

  private opened(step: Step, place: string) {
    const only = this.plan!.parts.length === 1 && place.split("/").length === 5 && (itemAt<Part>(this.plan!, "/parts/0") as { blocks: Step[] }).blocks.length === 1;
    const name = "times" in step ? "repeat" : "rest" in step ? "rest" : "block";
    return html`<div class="open" role="group" aria-label="Change this ${name}">
      <block-fields .step=${step} .library=${this.library} @step=${({ detail }: CustomEvent<Step>) => this.change(replaced(this.plan!, place, detail), "Changed")}></block-fields>
      <div class="acts">${this.movers(place, `this ${name}`)}
        <button type="button" @click=${() => this.reshape(doubled(this.plan!, place), "Copied")}>Copy</button>
        <button type="button" @click=${() => this.change(repeated(this.plan!, place, 2), "Repeated twice")}>Repeat</button>
        ${"times" in step ? html`<button type="button" @click=${() => this.change(unrolled(this.plan!, place), "Rowed once")}>Row it once</button>
          ${step.between?.length ? nothing : html`<button type="button" @click=${() => this.change(replaced(this.plan!, place, { ...step, between: [NEW_REST] } as Repeat), "Rest added")}>Add a rest between</button>`}` : nothing}
        ${this.adding(following(place))}
        ${only ? nothing : html`<button type="button" @click=${() => this.change(removed(this.plan!, place), "Taken out", "")}>Take out</button>`}</div></div>`;
  }

  /** At a place: below what is open, or at the end of the part that is named. */
  private adding(place: string, part = "") {
    const add = (what: string, step: Step) => html`<button type="button" aria-label=${part ? `${what} to ${part}` : nothing}
      @click=${() => this.reshape({ plan: inserted(this.plan!, place, step), place }, "Added")}>${part ? what : `${what} below`}</button>`;
    return html`${add("Add a block", NEW_BLOCK)}${add("Add a rest", NEW_REST)}`;
  }

  private movers(place: string, name: string) {
    const button = (by: -1 | 1, words: string) => html`<button type="button" aria-label="${words} ${name}" ?disabled=${!canMove(this.plan!, place, by)}
      @click=${() => this.reshape(moved(this.plan!, place, by), words)}>${words}</button>`;
    return html`${button(-1, "Move up")}${button(1, "Move down")}`;
  }

  /** Opens a place, or closes the one that is open. What can be changed must not lie below the fold, or behind the bar at the foot. */
  private async turn(place: string): Promise<void> {
    this.open = place;
    await this.updateComplete;
    const row = (this.renderRoot as ShadowRoot).getElementById(place)?.parentElement;
    const fields = row?.nextElementSibling;
    if (!place || !row || !fields) return;
    await fields.querySelector<BlockFields>("block-fields")!.updateComplete;
    const { scrollPaddingBottom } = getComputedStyle(document.documentElement);
    const isInSight = row.getBoundingClientRect().top >= parseFloat(getComputedStyle(row).scrollMarginTop) && fields.getBoundingClientRect().bottom <= innerHeight - parseFloat(scrollPaddingBottom);
    if (!isInSight) row.scrollIntoView({ block: "start" });
  }

  /** As the buttons do, from the row itself. */
  private pressed(event: KeyboardEvent, place: string): void {
    const by = { ArrowUp: -1, ArrowDown: 1 }[event.key] as -1 | 1 | undefined;
    if (!by || !event.altKey) return;
    event.preventDefault();
    const wasOpen = this.open === place;
    this.reshape(moved(this.plan!, place, by), by < 0 ? "Moved up" : "Moved down", wasOpen);
  }

  private addPart(part: Part): void {
    const end = this.plan?.parts.length ?? 0;
    const plan = this.plan ?? { format: 1, title: "My session", parts: [] };
    this.change(inserted(plan, `/parts/${end}`, part), `${partName(part.kind)} added`, "");
  }

  /** What was changed stays open where it stands now, and has the keyboard. */
  private reshape(reshaped: Reshaped | undefined, told: string, open = true): void {
    if (!reshaped) return;
    const { plan, place } = reshaped;
    const isStep = place.split("/").length > 3;
    if (this.change(plan, told, open && isStep ? place : "") && isStep) void this.focusOn(place);
  }

  private async focusOn(place: string): Promise<void> {
    await new Promise((done) => requestAnimationFrame(done));
    const row = (this.renderRoot as ShadowRoot).getElementById(place);
    row?.focus({ preventScroll: true });
    row?.scrollIntoView({ block: "nearest" });
  }

  private change(plan: Plan, told: string, open = this.open): boolean {
    const sound = checkedPlan(plan);
    this.told = sound ? `${told}.` : TOO_MUCH;
    if (!sound) return false;
    this.open = open;
    this.dispatchEvent(new CustomEvent<Plan>("edit", { detail: sound }));
    return true;
  }
}
customElements.define("block-tree", BlockTree);

interface PartWord extends Word {
  part: Part;
}

/** What is rowed in other plans, to be found by its plan and by its blocks. */
function partsOf(plans: readonly Plan[]): PartWord[] {
  return plans.flatMap(({ title, parts }) => parts.flatMap((part) => (part.kind === "gap" ? [] : [{
    part, text: `${partName(part.kind)} of ${title}`, about: part.blocks.map((step) => inline(step)).join(", "),
  }])));
}
