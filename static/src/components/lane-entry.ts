/** The lanes of a room, typed in a row: a name and one result each, both as one likes.
 *
 * Property `lanes`. Event `lanes` (detail: all lanes that can be read), after each change that can be. Method `check()`.
 */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import { LONGEST_NAME, MOST_LANES, nameThatFits, type Lane } from "../plan/lanes.js";
import type { Choice } from "../plan/piece-choices.js";
import { metresOf, timeWords } from "../plan/result-words.js";
import type { Result } from "../plan/wire.js";
import { choices } from "./choice-look.js";
import { buttons, fields, type } from "./look.js";
import { OTHER, readResult, ROWED, TWO_K } from "./result-reading.js";

/** A lane as it stands in the fields. */
interface Row {
  name: string;
  rowed: Choice;
  distance: string;
  text: string;
  problem: string;
}

export class LaneEntry extends LitElement {
  static override properties = { lanes: { attribute: false }, rows: { state: true } };
  declare lanes: readonly Lane[];
  declare rows: readonly Row[];

  constructor() {
    super();
    this.lanes = [];
    this.rows = [emptyRow(TWO_K)];
  }

  static override styles = [type, buttons, fields, choices, css`
    ol { display: grid; gap: 10px; counter-reset: lane; }
    li { display: grid; grid-template-columns: 1.6em minmax(6em, 1.4fr) minmax(6.5em, 1fr) minmax(5em, 1fr) auto; gap: 8px; align-items: center; }
    li::before { counter-increment: lane; content: counter(lane); font: 700 1.125rem var(--digits); color: var(--ink-2); text-align: right; }
    input, select { min-height: 56px; padding: 8px 12px; }
    input[aria-invalid="true"] { border-color: var(--catch); }
    .name { font-family: var(--font); letter-spacing: 0; }
    .own { grid-column: 3; }
    .clear { min-width: 48px; padding: 6px; }
    .bad { grid-column: 2 / -1; font-weight: 700; }
    .full { grid-column: 2 / -1; overflow-wrap: anywhere; }
    .heads { display: grid; grid-template-columns: 1.6em minmax(6em, 1.4fr) minmax(6.5em, 1fr) minmax(5em, 1fr) 48px; gap: 8px; margin-bottom: 6px; }
    .heads span { font-weight: 700; }
    @media (max-width: 620px) {
      .heads { display: none; }
      li { grid-template-columns: 1.6em minmax(0, 1fr) minmax(0, 1fr) auto; padding-bottom: 10px; border-bottom: 1px solid var(--line); }
      li .name { grid-column: 2 / 4; }
      li select { grid-column: 2; grid-row: 2; }
      li .time { grid-column: 3; grid-row: 2; }
      li .clear { grid-column: 4; grid-row: 1; }
      li .own { grid-column: 2 / 4; grid-row: 3; }
    }
    @media (max-width: 340px) {
      li select, li .time { grid-column: 2 / 4; }
      li .time { grid-row: 4; }
      li .full { grid-row: 5; }
      li .bad { grid-row: 6; }
    }
  `];

  /** What is typed stays as it was typed, until other lanes are handed over. */
  override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has("lanes") || same(this.lanes, lanesIn(this.rows))) return;
    const rows = this.lanes.map(rowOf);
    this.rows = rows.length < MOST_LANES ? [...rows, emptyRow(rows.at(-1)?.rowed ?? TWO_K)] : rows;
  }

  override render() {
    return html`<div class="heads" aria-hidden="true"><span></span><span>Name</span><span>Rowed</span><span>Time or metres</span></div>
      <ol>${this.rows.map((row, index) => this.row(row, index))}</ol>`;
  }

  /** Whether every lane can be read; else the first that cannot has the keyboard. */
  check(): boolean {
    const wrong = this.rows.findIndex(({ problem }) => problem);
    if (wrong >= 0) this.field(wrong, "time").focus();
    return wrong < 0;
  }

  private row(row: Row, index: number) {
    const lane = `Lane ${index + 1}`;
    const byTime = "seconds" in row.rowed.length;
    const tooLong = cutWords(row.name, lane);
    return html`<li>
      <input class="name" aria-label="${lane}, name" autocomplete="off" autocapitalize="words" enterkeyhint="next" aria-describedby="full-${index}" .value=${row.name}
        @input=${(event: InputEvent) => this.change(index, { name: valueOf(event) })} @keydown=${(event: KeyboardEvent) => this.onwards(event, index, "time")} />
      <select aria-label="${lane}, rowed" @change=${(event: InputEvent) => this.change(index, { rowed: ROWED[(event.target as HTMLSelectElement).selectedIndex]!.value })}>
        ${ROWED.map(({ value, name }) => html`<option .selected=${value === row.rowed}>${name}</option>`)}</select>
      ${row.rowed === OTHER ? html`<input class="own" aria-label="${lane}, distance in metres" inputmode="numeric" autocomplete="off" placeholder="metres" .value=${row.distance}
        @input=${(event: InputEvent) => this.change(index, { distance: valueOf(event) })} />` : nothing}
      <input class="time" aria-label="${lane}, ${byTime ? "metres" : "time"}" inputmode="decimal" autocomplete="off" enterkeyhint="next" placeholder=${byTime ? "7105" : "7:42"}
        aria-invalid=${row.problem ? "true" : "false"} aria-describedby="problem-${index}" .value=${row.text}
        @input=${(event: InputEvent) => this.change(index, { text: valueOf(event) }, false)} @change=${() => this.change(index, {})}
        @keydown=${(event: KeyboardEvent) => this.onwards(event, index + 1, "name")} />
      <button type="button" class="clear" aria-label="Clear lane ${index + 1}" ?disabled=${isEmpty(row)} @click=${() => this.clear(index)}>×</button>
      <p class="full" id="full-${index}" role="status" dir="auto" ?hidden=${!tooLong}>${tooLong}</p>
      <p class="bad" id="problem-${index}" role="alert" ?hidden=${!row.problem}>${row.problem ? `${lane}: ${row.problem}` : ""}</p>
    </li>`;
  }

  /** `whole` once it has been typed to its end: a time is not blamed while it is being written. */
  private change(index: number, changes: Partial<Row>, whole = true): void {
    const row = { ...this.rows[index]!, ...changes };
    const read = readRow(row);
    const problem = typeof read === "string" && (whole || row.problem) ? read : "";
    const rows = this.rows.map((before, at) => (at === index ? { ...row, problem } : before));
    const full = rows.length >= MOST_LANES || isEmpty(rows.at(-1)!);
    this.rows = full ? rows : [...rows, emptyRow(row.rowed)];
    this.tell();
  }

  private clear(index: number): void {
    const rows = this.rows.filter((_, at) => at !== index);
    this.rows = rows.length && isEmpty(rows.at(-1)!) ? rows : [...rows, emptyRow(rows.at(-1)?.rowed ?? TWO_K)];
    this.tell();
  }

  /** Enter goes to the next field: a touch keyboard has no Tab. */
  private onwards(event: KeyboardEvent, index: number, name: "name" | "time"): void {
    if (event.key !== "Enter" || !this.rows[index]) return;
    event.preventDefault();
    this.field(index, name).focus();
  }

  private field(index: number, name: "name" | "time"): HTMLInputElement {
    return this.renderRoot.querySelectorAll<HTMLInputElement>(`input.${name}`)[index]!;
  }

  private tell(): void {
    this.dispatchEvent(new CustomEvent("lanes", { detail: lanesIn(this.rows) }));
  }
}
customElements.define("lane-entry", LaneEntry);

function emptyRow(rowed: Choice): Row {
  return { name: "", rowed, distance: "", text: "", problem: "" };
}

function isEmpty({ name, text }: Row): boolean {
  return !name.trim() && !text.trim();
}

/** What is kept of a name that is too long; "" where all of it is. What was typed stays in its field. */
function cutWords(typed: string, lane: string): string {
  const kept = nameThatFits(typed);
  return kept === typed.trim() ? "" : `${lane}: a name has room for ${LONGEST_NAME} letters. The wall shows “${kept}”.`;
}

/** The fields that say a lane that was kept. */
function rowOf({ name, result }: Lane): Row {
  if (!result) return { ...emptyRow(TWO_K), name };
  const { metres, seconds } = result;
  const known = ROWED.find(({ value: { length } }) => ("metres" in length ? length.metres === metres : length.seconds === seconds))?.value;
  const byTime = known && "seconds" in known.length;
  const text = byTime ? String(metres) : timeWords(seconds);
  return { name, rowed: known ?? OTHER, distance: known ? "" : String(metres), text, problem: "" };
}

/** The result, or null where none is given, or what is wrong with it. */
function readRow({ rowed, text, distance }: Row): Result | null | string {
  const typed = text.trim();
  if (!typed) return rowed === OTHER && metresOf(distance) !== undefined ? "Write the time for that distance, or clear the distance." : null;
  return readResult(rowed, typed, distance.trim());
}

/** The lanes that can be read; one that is empty between two others keeps its place. */
function lanesIn(rows: readonly Row[]): Lane[] {
  const used = rows.slice(0, rows.map((row) => !isEmpty(row)).lastIndexOf(true) + 1);
  return used.map((row) => {
    const read = readRow(row);
    return { name: nameThatFits(row.name), result: typeof read === "string" ? null : read };
  });
}

function same(some: readonly Lane[], others: readonly Lane[]): boolean {
  return JSON.stringify(some) === JSON.stringify(others);
}

function valueOf(event: InputEvent): string {
  return (event.target as HTMLInputElement).value;
}
