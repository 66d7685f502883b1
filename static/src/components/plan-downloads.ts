/** The files that can be made of a plan, in plain words, each with a button.
 *
 * Properties: `plan`; `athlete` (whose splits they can show, or undefined).
 */
import { LitElement, css, html, nothing, type TemplateResult } from "lit";
import { NoAnswer, fetchFile } from "../data/api.js";
import type { Athlete, ExportRequest, Plan } from "../plan/wire.js";
import { buttons, fields, type } from "./look.js";
import { saveFile } from "./save-file.js";

interface Kind {
  kind: string;
  name: string;
  about: string;
}

const KINDS: readonly Kind[] = [
  { kind: "print", name: "Print sheet", about: "One page for the wall, A4 or Letter, black on white. Open it in a browser and print it." },
  { kind: "offline", name: "One-file page", about: "Player and plan in one file, which runs with no server and no network: from a phone's storage, from a stick. Open it in a browser." },
  { kind: "ics", name: "Calendar entry", about: "For your calendar, with the whole plan in its text." },
  { kind: "wav", name: "Click track", about: "Count-in, catches, finishes and changes as sound, exact to the sample, to play in a room or lay under a film (WAV, about 3 MB a minute)." },
  { kind: "vtt", name: "Captions", about: "Blocks and calls for a film of the session (WebVTT)." },
  { kind: "calls", name: "Call sheet", about: "What to say and when, to the thousandth, for whoever speaks or cuts the calls." },
  { kind: "csv", name: "Table", about: "Every block with its start, strokes and split, for a spreadsheet." },
  { kind: "json", name: "Plan file", about: "The plan itself, to keep, to send, or to open here again." },
];

const NO_SIGNAL = "Files are made by the server, so this needs signal, and there is none. The plan itself runs without.";

export class PlanDownloads extends LitElement {
  static override properties = {
    plan: { attribute: false },
    athlete: { attribute: false },
    start: { state: true },
    personal: { state: true },
    making: { state: true },
    said: { state: true },
  };
  declare plan: Plan | undefined;
  declare athlete: Athlete | undefined;
  declare start: string;
  declare personal: boolean;
  declare making: string;
  /** What became of the file that was asked for last, under its button. */
  declare said: { kind: string; words: TemplateResult | string } | undefined;

  constructor() {
    super();
    this.start = "";
    this.personal = false;
    this.making = "";
  }

  static override styles = [type, buttons, fields, css`
    summary { width: fit-content; min-height: 44px; align-content: center; cursor: pointer; font-weight: 700; text-decoration: underline; text-underline-offset: 4px; }
    .inside { display: grid; gap: 14px; padding-top: 8px; }
    ul { display: grid; gap: 10px; }
    li { display: grid; grid-template-columns: minmax(8.4em, auto) 1fr; gap: 4px 14px; align-items: center; }
    li button { min-height: 48px; padding: 6px 12px; font-size: 1.125rem; }
    .choice { display: flex; gap: 12px; align-items: center; min-height: 44px; font-weight: 400; }
    .choice input { width: 24px; min-height: 24px; height: 24px; flex: none; accent-color: var(--catch); }
    .when { grid-column: 1 / -1; display: grid; gap: 6px; }
    .when input { max-width: 20em; font-size: 1.125rem; }
    .said { grid-column: 1 / -1; padding: 12px 14px; background: var(--hull); border-left: 6px solid var(--edge); border-radius: 6px var(--r) var(--r) 6px; overflow-wrap: anywhere; }
    .said:empty { display: none; }
    @media (max-width: 420px) { li { grid-template-columns: 1fr; } }
  `];

  /** Makes one of them, asked for elsewhere on the page. */
  async offer(kind: string): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector("details")!.open = true;
    this.renderRoot.querySelector(`[aria-describedby="about-${kind}"]`)!.scrollIntoView({ block: "center" });
    await this.make(kind);
  }

  override render() {
    return html`<details><summary>Download</summary><div class="inside">
      ${this.athlete ? html`<label class="choice"><input type="checkbox" .checked=${this.personal} @change=${this.choose}>With the splits from your results, for whoever gets the file to see</label>` : nothing}
      <ul>${KINDS.map((kind) => this.line(kind))}</ul>
    </div></details>`;
  }

  private line({ kind, name, about }: Kind) {
    return html`<li><button type="button" aria-describedby=${`about-${kind}`} ?disabled=${Boolean(this.making)}
      @click=${() => this.make(kind)}>${this.making === kind ? "Making it …" : name}</button>
      <span class="small" id=${`about-${kind}`}>${about}</span>
      <p class="said" role="status">${this.said?.kind === kind ? this.said.words : nothing}</p>
      ${kind === "ics" ? this.when() : nothing}</li>`;
  }

  private when() {
    return html`<div class="when"><label for="start">When it starts</label>
      <input id="start" type="datetime-local" .value=${this.start} @input=${this.keepStart} aria-describedby="unset">
      <p class="small" id="unset">Left empty, the entry stands over the whole of today, to be moved.</p></div>`;
  }

  private choose(event: Event): void {
    this.personal = (event.target as HTMLInputElement).checked;
  }

  private keepStart(event: Event): void {
    this.start = (event.target as HTMLInputElement).value;
  }

  private async make(kind: string): Promise<void> {
    this.making = kind;
    this.said = undefined;
    try {
      const file = await fetchFile(kind, this.asked(kind));
      saveFile(file.name, file.blob);
      this.said = { kind, words: html`Made: <bdi>${file.name}</bdi>` };
    } catch (error) {
      this.said = { kind, words: troubleWords(error) };
    } finally {
      this.making = "";
    }
  }

  private asked(kind: string): ExportRequest {
    return {
      plan: this.plan!,
      ...(this.personal && this.athlete ? { athlete: this.athlete } : {}),
      ...(this.start ? { start: this.start.slice(0, 16) } : kind === "ics" ? { today: todayHere() } : {}),
    };
  }
}
customElements.define("plan-downloads", PlanDownloads);

/** As the person's own calendar has it: 2026-12-01. */
function todayHere(now = new Date()): string {
  const [month, day] = [now.getMonth() + 1, now.getDate()].map((number) => String(number).padStart(2, "0"));
  return `${now.getFullYear()}-${month}-${day}`;
}

function troubleWords(error: unknown): string {
  if (error instanceof NoAnswer) return NO_SIGNAL;
  return error instanceof Error ? error.message : String(error);
}
