/** How far away people look from, and how large the screen is: said once. Properties: `sight` (or null), `lanes` (how many). Event `sight`. */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import type { Sight } from "../data/wall.js";
import { choices, pick, tiles, type Option } from "./choice-look.js";
import { fields, type } from "./look.js";
import { BAR_PX, barProblem, diagonalByBar, diagonalProblem, distanceProblem, numberOf, readWords, UNITS, type Unit } from "./sight-words.js";

type Way = "diagonal" | "bar";
type Field = "distance" | "diagonal" | "bar";

const WAYS: readonly Option<Way>[] = [{ value: "diagonal", name: "By its diagonal" }, { value: "bar", name: "By a ruler" }];
const MEASURES: readonly Option<Unit>[] = [{ value: "inches", name: "inches" }, { value: "cm", name: "cm" }];

export class SightEntry extends LitElement {
  static override properties = { sight: { attribute: false }, lanes: { type: Number }, way: { state: true }, unit: { state: true }, texts: { state: true }, tried: { state: true } };
  declare sight: Sight | null;
  declare lanes: number;
  declare way: Way;
  declare unit: Unit;
  declare texts: Readonly<Record<Field, string>>;
  /** Which fields have been left, so that what is wrong in them is said. */
  declare tried: readonly Field[];

  constructor() {
    super();
    this.sight = null;
    this.lanes = 0;
    this.way = "diagonal";
    this.unit = "inches";
    this.texts = { distance: "", diagonal: "", bar: "" };
    this.tried = [];
  }

  static override styles = [type, fields, choices, css`
    :host { display: grid; gap: 14px; }
    .tiles { grid-template-columns: 1fr 1fr; }
    .row { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); gap: 8px; align-items: end; }
    .row > div { display: grid; gap: 6px; }
    .row select { min-height: var(--target); }
    .bar { height: 20px; border: 2px solid var(--ink); border-block-width: 8px; border-radius: 2px; }
    .bad { font-weight: 700; }
  `];

  override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has("sight") || !this.sight || this.texts.distance) return;
    const { distance_m, diagonal_mm } = this.sight;
    this.texts = { distance: String(distance_m), diagonal: rounded(diagonal_mm / UNITS[this.unit]), bar: "" };
  }

  override render() {
    const inches = pick("unit", "Measured in", MEASURES, this.unit, (unit) => this.read({ unit }));
    return html`
      ${this.field("distance", "People look from, in metres", "5")}
      <fieldset><legend>How large is the screen?</legend>${tiles("way", WAYS, this.way, (way) => this.read({ way }))}</fieldset>
      ${this.way === "diagonal" ? html`<div class="row">${this.field("diagonal", "Diagonal", "55")}${inches}</div>${this.problem("diagonal")}`
        : html`<div class="bar" role="img" aria-label="The bar to measure"></div>${this.field("bar", "Length of this bar, in millimetres", "62")}${this.problem("bar")}`}
      ${this.sight ? html`<p role="status">${readWords(this.sight, screen, this.lanes)}</p>`
        : html`<p class="small">Until then everything is as large as fits.</p>`}`;
  }

  override updated(): void {
    this.renderRoot.querySelector<HTMLElement>(".bar")?.style.setProperty("width", `${BAR_PX}px`);
  }

  private field(name: Field, label: string, such: string) {
    return html`<div><label for=${name}>${label}</label>
      <input id=${name} inputmode="decimal" autocomplete="off" placeholder="such as ${such}" aria-describedby="${name}-problem"
        aria-invalid=${this.wrong(name) ? "true" : "false"} .value=${this.texts[name]} @input=${(event: Event) => this.type(name, event)}
        @change=${() => this.read({ tried: [...this.tried, name] })} />
      ${name === "distance" ? this.problem(name) : nothing}</div>`;
  }

  private problem(name: Field) {
    return html`<p id="${name}-problem" class="bad" role="alert" ?hidden=${!this.wrong(name)}>${this.wrong(name)}</p>`;
  }

  private wrong(name: Field): string {
    return this.tried.includes(name) && this.texts[name].trim() ? this.fault(name) : "";
  }

  private fault(name: Field): string {
    const text = this.texts[name];
    if (name === "distance") return distanceProblem(text);
    return name === "diagonal" ? diagonalProblem(text, this.unit) : barProblem(text, screen);
  }

  private type(name: Field, event: Event): void {
    this.read({ texts: { ...this.texts, [name]: (event.target as HTMLInputElement).value } });
  }

  /** Takes a change over, and tells what it comes to where both can be read. */
  private read(changes: Partial<Pick<SightEntry, "way" | "unit" | "texts" | "tried">>): void {
    Object.assign(this, changes);
    if (this.fault("distance") || this.fault(this.way)) return;
    const diagonal_mm = this.way === "diagonal" ? numberOf(this.texts.diagonal) * UNITS[this.unit] : diagonalByBar(numberOf(this.texts.bar), screen);
    const sight: Sight = { distance_m: numberOf(this.texts.distance), diagonal_mm: Math.round(diagonal_mm) };
    this.dispatchEvent(new CustomEvent("sight", { detail: sight }));
  }
}
customElements.define("sight-entry", SightEntry);

function rounded(value: number): string {
  return String(Math.round(value * 10) / 10);
}
