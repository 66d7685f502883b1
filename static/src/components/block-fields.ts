/** Everything about one block, rest or repeat, each thing changed in its field.
 *
 * Properties: `step`; `library` (drills and calls to choose from, or undefined). Event: `step` (detail: the step after a change).
 */
import { LitElement, css, html, nothing, type TemplateResult } from "lit";
import { lineIn, numberIn, secondsIn, type Bounds } from "../plan/field-values.js";
import { clock } from "../plan/format.js";
import type { Block, Call, Drill, Repeat, Rest, Step, TechniqueLibrary } from "../plan/wire.js";
import { choices, pick, type Option } from "./choice-look.js";
import { effortFields } from "./effort-fields.js";
import { buttons, type } from "./look.js";
import { machineFields } from "./machine-fields.js";
import "./typed-field.js";
import "./word-picker.js";
import type { Word } from "./word-picker.js";

/** As in planner/limits.py. */
const SECONDS: Bounds = { low: 1, high: 14_400 };
const RATES: Bounds = { low: 10, high: 50 };
const STROKES: Bounds = { low: 1, high: 2000 };
const CALLS = 20;

type Unit = "seconds" | "metres" | "strokes" | "open" | "sides";

const UNITS: readonly Option<Unit>[] = [
  { value: "seconds", name: "time" }, { value: "metres", name: "metres" }, { value: "strokes", name: "strokes" },
  { value: "open", name: "until a tap" }, { value: "sides", name: "each side, in turn" },
];
const PLACES: readonly Option<"opening" | "stroke" | "strokes_left">[] = [
  { value: "opening", name: "as it begins" }, { value: "stroke", name: "at stroke" }, { value: "strokes_left", name: "strokes before the end" },
];

export class BlockFields extends LitElement {
  static override properties = { step: { attribute: false }, library: { attribute: false } };
  declare step: Step | undefined;
  declare library: TechniqueLibrary | undefined;

  static override styles = [type, buttons, choices, css`
    :host { display: grid; gap: 14px; }
    .picks { grid-template-columns: repeat(auto-fit, minmax(min(100%, 8em), 1fr)); }
    .picks > div:has(#effort) { grid-column: 1 / -1; }
    label { font-weight: 700; }
    select { min-height: 60px; }
    .call { display: grid; gap: 8px; padding-left: 12px; border-left: 4px solid var(--edge); }
    .more { display: flex; flex-wrap: wrap; gap: 8px; }
    button { font-size: 1.0625rem; padding: 8px 14px; }
  `];

  override render() {
    const { step } = this;
    if (!step) return nothing;
    if ("times" in step) return this.number("Times", step.times, { low: 1, high: 100 }, (times) => this.tell({ ...step, times } satisfies Repeat));
    if ("rest" in step) return this.time("Rest, as 3:00", step.for.seconds, (seconds) => this.tell({ rest: true, for: { seconds } } satisfies Rest));
    return this.block(step);
  }

  private block(block: Block) {
    return html`<div class="picks">${this.length(block)}
        ${this.rate(block)}
        ${effortFields(block.effort, (effort) => this.change(block, { effort }))}</div>
      ${this.words("Focus", block.focus ?? "", 120, this.focuses(), (focus) => this.change(block, { focus: focus || undefined }))}
      ${this.words("Drill", block.drill?.name ?? "", 60, this.drills(), (name) => this.change(block, name ? { drill: { ...block.drill, name } } : { drill: undefined }))}
      ${(block.calls ?? []).map((call, index) => this.call(block, call, index))}
      ${(block.calls ?? []).length < CALLS ? html`<div class="more">
        <button type="button" @click=${() => this.addCall(block, "Long and easy")}>Add a call</button>
        <word-picker label="Add a call from the library" .words=${this.calls()} @pick=${({ detail }: CustomEvent<Word>) => this.addCall(block, detail.text)}></word-picker></div>` : nothing}
      <div class="picks">${machineFields(block.setting, (setting) => this.change(block, { setting }))}</div>`;
  }

  private length(block: Block) {
    const unit = unitOf(block);
    const { drill } = block;
    const sides = (changes: Partial<Drill>) => this.change(block, sided({ ...drill!, ...changes }));
    return html`${pick("unit", "Length in", block.drill ? UNITS : UNITS.slice(0, 4), unit, (next) => this.change(block, inUnit(block, next)))}
      ${unit === "seconds" ? this.time("Length, as 5:00", (block.for as { seconds: number }).seconds, (seconds) => this.change(block, { for: { seconds } })) : nothing}
      ${unit === "metres" ? this.number("Metres", (block.for as { metres: number }).metres, { low: 50, high: 100_000 }, (metres) => this.change(block, { for: { metres } })) : nothing}
      ${unit === "strokes" ? this.number("Strokes", (block.for as { strokes: number }).strokes, STROKES, (strokes) => this.change(block, { for: { strokes } })) : nothing}
      ${unit === "sides" ? html`${this.number("Seconds on a side", drill!.side_seconds, { low: 5, high: 120 }, (side_seconds) => sides({ side_seconds }))}
        ${this.number("Seconds to swap", drill!.swap_seconds ?? 0, { low: 0, high: 60 }, (swap_seconds) => sides({ swap_seconds }))}
        ${pick("sides", "Sides", [2, 4, 6, 8].map((value) => ({ value, name: String(value) })), drill!.sides!, (sides_) => sides({ sides: sides_ }))}` : nothing}`;
  }

  private call(block: Block, call: Call, index: number) {
    const set = (next: Call | undefined) => this.change(block, { calls: block.calls!.flatMap((each, at) => (at !== index ? [each] : next ? [next] : [])) });
    const place = call.stroke !== undefined ? "stroke" : call.strokes_left !== undefined ? "strokes_left" : "opening";
    const places = block.open ? PLACES.slice(0, 2) : PLACES;
    const { text } = call;
    return html`<div class="call" role="group" aria-label="Call ${index + 1}">
      <typed-field label="Call" hint="Write up to 120 plain characters." .value=${text} .read=${(typed: string) => lineIn(typed, 120) || undefined} @value=${({ detail }: CustomEvent<string>) => set({ ...call, text: detail })}></typed-field>
      <div class="picks">${pick(`place-${index}`, "Said", places, place, (next) => set(next === "opening" ? { text } : { text, [next]: 1 }))}
        ${place === "opening" ? nothing : this.number(place === "stroke" ? "Stroke" : "Strokes left", call[place], STROKES, (value) => set({ text, [place]: value }))}</div>
      <button type="button" @click=${() => set(undefined)}>Take this call out</button></div>`;
  }

  private number(label: string, value: number | undefined, bounds: Bounds, set: (value: number) => void): TemplateResult {
    return html`<typed-field .label=${label} .hint=${`Write a whole number from ${bounds.low} to ${bounds.high}.`} .value=${value === undefined ? "" : String(value)}
      .read=${(text: string) => numberIn(text, bounds)} @value=${({ detail }: CustomEvent<number>) => set(detail)}></typed-field>`;
  }

  /** Without a rate there is no beat; strokes cannot be counted without one. */
  private rate(block: Block): TemplateResult {
    const needed = block.for && "strokes" in block.for;
    const read = (text: string) => (needed || text.trim() ? numberIn(text, RATES) : null);
    return html`<typed-field label="Rate" .hint=${`Write a whole number from ${RATES.low} to ${RATES.high}${needed ? "" : ", or nothing"}.`} .value=${String(block.rate ?? "")}
      .read=${read} @value=${({ detail }: CustomEvent<number | null>) => this.change(block, { rate: detail ?? undefined })}></typed-field>`;
  }

  private time(label: string, seconds: number, set: (seconds: number) => void): TemplateResult {
    return html`<typed-field .label=${label} hint="Write it as 5:00, 5 or 50&quot;, up to 4 hours." .value=${clock(seconds)} .read=${(text: string) => secondsIn(text, SECONDS)}
      @value=${({ detail }: CustomEvent<number>) => set(detail)}></typed-field>`;
  }

  private words(label: string, value: string, longest: number, known: readonly Word[], set: (text: string) => void): TemplateResult {
    return html`<div class="call"><typed-field .label=${label} .hint=${`Write up to ${longest} plain characters.`} .value=${value} .read=${(text: string) => lineIn(text, longest)}
        @value=${({ detail }: CustomEvent<string>) => set(detail)}></typed-field>
      <word-picker label="${label} from the library" .words=${known} @pick=${({ detail }: CustomEvent<Word>) => set(detail.text)}></word-picker></div>`;
  }

  private drills(): Word[] {
    return (this.library?.drills ?? []).map(({ name, how, mends }) => ({ text: name, about: `${how} ${mends}` }));
  }

  private focuses(): Word[] {
    return (this.library?.focuses ?? []).map(({ name, phase }) => ({ text: name, about: phase }));
  }

  private calls(): Word[] {
    return (this.library?.focuses ?? []).flatMap(({ name, calls }) => calls.map(({ text }) => ({ text, about: name })));
  }

  private addCall(block: Block, text: string): void {
    this.change(block, { calls: [...(block.calls ?? []), { text }] });
  }

  /** What is undefined in the changes is left out. */
  private change(block: Block, changes: Changes): void {
    const next = Object.entries({ ...block, ...changes }).filter(([, value]) => value !== undefined && !(Array.isArray(value) && !value.length));
    this.tell(Object.fromEntries(next) as Block);
  }

  private tell(step: Step): void {
    this.dispatchEvent(new CustomEvent<Step>("step", { detail: step }));
  }
}
customElements.define("block-fields", BlockFields);

type Changes = { [Name in keyof Block]?: Block[Name] | undefined };

function unitOf({ for: length, drill }: Block): Unit {
  if (drill?.sides) return "sides";
  return length ? (Object.keys(length)[0] as Unit) : "open";
}

/** As long in the other unit as one usually asks for; a count of strokes needs a rate, and an open block has no last strokes. */
function inUnit(block: Block, unit: Unit): Changes {
  const drill = block.drill && unit !== "sides" ? { drill: { name: block.drill.name } } : {};
  switch (unit) {
    case "sides": return sided({ ...block.drill!, sides: 2, side_seconds: 20, swap_seconds: 10 });
    case "metres": return { ...drill, open: undefined, for: { metres: 500 } };
    case "strokes": return { ...drill, open: undefined, for: { strokes: 20 }, rate: block.rate ?? 20 };
    case "open": return { ...drill, open: true, for: undefined, calls: (block.calls ?? []).map(({ strokes_left, ...call }) => call) };
    default: return { ...drill, open: undefined, for: { seconds: 300 } };
  }
}

/** A drill done side after side, which says how long the block is. */
function sided({ name, sides = 2, side_seconds = 20, swap_seconds }: Drill): Changes {
  const seconds = sides * side_seconds + (sides - 1) * (swap_seconds ?? 0);
  return { open: undefined, for: { seconds }, drill: { name, sides, side_seconds, ...(swap_seconds ? { swap_seconds } : {}) } };
}
