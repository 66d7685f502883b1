/** Where a plan is written: its text or its blocks, and beside it what it comes to, what is wrong and what is unwise in it.
 *
 * Properties: `composed` (see state/composer), `from` (title of the plan it is written from, or ""), `own` (that plan is
 * one's own, and is kept in its place), `back` (where one came from), `busy`, `trouble` (why it cannot be kept, or ""),
 * `library` (drills and calls, or undefined), `plans` (whose parts can be taken over), `known` (there are results of one's own), `other` (somebody else's, whose splits
 * are shown, or undefined), `missing` (a sentence where there is nothing to write in). Method: `showFirstProblem()`.
 * Events: `typed` (detail: the text), `undo`, `redo`, `mend` (detail: the mend), `edit` (detail: the plan), `again`, `keep`,
 * `rower` (detail: somebody's result, or null for one's own).
 */
import { LitElement, css, html, nothing } from "lit";
import { resultWords } from "../plan/result-words.js";
import type { Mend, Plan, Problem, Result, TechniqueLibrary } from "../plan/wire.js";
import { LONGEST_TEXT, type Composed } from "../state/composer.js";
import "./block-list.js";
import "./block-tree.js";
import { choices, tiles } from "./choice-look.js";
import "./finding-list.js";
import { buttons, page, type } from "./look.js";
import "./plan-file-entry.js";
import "./plan-head.js";
import "./plan-profile.js";
import { planSums, sumsLook } from "./plan-sums.js";
import type { PlanText } from "./plan-text.js";
import "./plan-text.js";
import "./problem-list.js";
import "./readiness-view.js";
import "./result-entry.js";

const EXAMPLE = `title: Tuesday
warm-up
5' r18 light
  focus: Long arms, legs first
3 x (10 strokes r28 full, 50" r20 light)
gap 5'
main
6 x 700m r28 2k+1 / 3' rest`;

const VIEWS = [{ value: "text", name: "Text" }, { value: "blocks", name: "Blocks" }] as const;

export class WriteScreen extends LitElement {
  static override properties = {
    composed: { attribute: false },
    from: {},
    own: { type: Boolean },
    back: {},
    busy: { type: Boolean },
    trouble: {},
    missing: {},
    library: { attribute: false },
    plans: { attribute: false },
    known: { type: Boolean },
    other: { attribute: false },
    view: { state: true },
    listed: { state: true },
  };
  declare composed: Composed | undefined;
  declare from: string;
  declare own: boolean;
  declare back: string;
  declare busy: boolean;
  declare trouble: string;
  declare missing: string;
  declare library: TechniqueLibrary | undefined;
  declare plans: readonly Plan[];
  declare known: boolean;
  declare other: Result | undefined;
  declare view: "text" | "blocks";
  /** The list of blocks with strokes and splits is unfolded; while it is not, keys do not wait for it. */
  declare listed: boolean;

  constructor() {
    super();
    this.from = "";
    this.own = false;
    this.back = "/";
    this.busy = false;
    this.trouble = "";
    this.missing = "";
    this.plans = [];
    this.known = false;
    this.view = "text";
    this.listed = false;
  }

  static override styles = [type, buttons, page, choices, sumsLook, css`
    .back { justify-self: start; display: inline-grid; align-items: center; min-height: 44px; font-weight: 700; }
    header { display: grid; gap: 6px; overflow-wrap: anywhere; }
    .picture { display: grid; gap: 4px; padding: 6px 0; background: var(--water); }
    plan-profile { height: 96px; }
    .stale { opacity: 0.55; }
    .blocks { display: contents; }
    .doc, .said { display: grid; gap: 18px; align-content: start; min-width: 0; }
    .note { padding: 12px 14px; border-left: 6px solid var(--edge); background: var(--hull); border-radius: 6px var(--r) var(--r) 6px; display: grid; gap: 10px; }
    .note button { justify-self: start; background: var(--water); }
    h2 { margin: 0; }
    .views .tiles { grid-template-columns: 1fr 1fr; }
    .views .tiles span { min-height: 60px; }
    pre { margin: 0; padding: 12px 14px; border-left: 4px solid var(--edge); font: 700 1rem/1.5 var(--digits); letter-spacing: -0.02em; white-space: pre-wrap; overflow-wrap: anywhere; }
    .whose > * { margin-bottom: 10px; }
    summary { width: fit-content; min-height: 44px; align-content: center; cursor: pointer; font-weight: 700; text-decoration: underline; text-underline-offset: 4px; }
    .acts { display: grid; grid-template-columns: auto auto 1fr; gap: 10px; }
    .acts button { padding: 8px 12px; font-size: 1.125rem; }
    .go:disabled { background: var(--hull); border-color: var(--edge); }
    @media (max-height: 540px) {
      main { gap: 10px; }
      h1 { font-size: 1.5rem; }
      plan-profile { height: 64px; }
      .bar { padding-block: 6px; }
    }
    @media (min-height: 640px) { .picture { position: sticky; top: 0; z-index: 1; } }
    @media (min-width: 1000px) {
      main { width: min(100%, 1180px); grid-template-columns: minmax(0, 1.1fr) minmax(0, 1fr); gap: 20px 44px; align-items: start; }
      .back, header, .picture, .bar { grid-column: 1 / -1; }
      plan-profile { height: 130px; }
      .acts { grid-template-columns: auto auto minmax(220px, 420px); justify-content: end; }
    }
  `];

  override render() {
    const { composed } = this;
    return html`<main>
      <a class="back" href=${this.back}>${this.from ? "Back to the plan" : "All plans"}</a>
      <header><h1 tabindex="-1">${this.own ? "Change a plan" : "Write a plan"}</h1>
        ${this.from && !this.own ? html`<p class="small">It begins as a copy of <b><bdi>${this.from}</bdi></b>, which stays as it is.</p>` : nothing}</header>
      ${composed ? this.all(composed) : html`<p role="alert">${this.missing}</p>`}
    </main>`;
  }

  /** Leads to the first mistake, if there is one. */
  showFirstProblem(): void {
    const [problem] = this.composed?.problems ?? [];
    if (problem) void this.showPlace(problem);
  }

  private all(composed: Composed) {
    return html`${this.picture(composed)}
      <div class="doc" @keydown=${this.pressed}>
        <fieldset class="views"><legend class="heard-only">Write it as</legend>${tiles("view", VIEWS, this.view, (view) => (this.view = view))}</fieldset>
        ${this.view === "text" ? this.text(composed) : this.blocks(composed)}</div>
      <div class="said">${this.said(composed)}</div>
      <div class="bar">${this.trouble ? html`<p role="alert"><b>${this.trouble}</b></p>` : nothing}
        <div class="acts"><button type="button" ?disabled=${!composed.canUndo} @click=${() => this.tell("undo")}>Undo</button>
          <button type="button" ?disabled=${!composed.canRedo} @click=${() => this.tell("redo")}>Redo</button>
          <button type="button" class="go" ?disabled=${this.busy || !composed.text.trim()} @click=${() => this.tell("keep")}>${this.busy ? "Keeping it …" : "Keep this plan"}</button></div></div>`;
  }

  private text(composed: Composed) {
    const { text, caret, problems, problemText } = composed;
    return html`<plan-text ?fixed=${this.busy} .text=${text} .caret=${caret} .problems=${problems} .problemText=${problemText} .longest=${LONGEST_TEXT}
        @typed=${({ detail }: CustomEvent<string>) => this.tell("typed", detail)} @undo=${() => this.tell("undo")} @redo=${() => this.tell("redo")}>
        <h2>Write or paste your own</h2></plan-text>
      <div role="status">${this.state(composed)}</div>
      <details ?open=${!text.trim()}><summary>How it is written</summary>
        <p class="small">One block a line: length, rate, effort. What stands behind a slash comes between repetitions. Like this:</p>
        <pre dir="ltr">${EXAMPLE}</pre></details>`;
  }

  /** Blocks are those of the text: while it cannot be read, there are none to change. */
  private blocks(composed: Composed) {
    const { plan, current, text } = composed;
    if (!current && text.trim()) {
      return html`<div role="status">${this.state(composed) === nothing ? html`<p>Reading the text …</p>` : html`<p>The text has to be read before its blocks can be changed.</p>${this.state(composed)}`}</div>`;
    }
    const edit = ({ detail }: CustomEvent<Plan>) => this.tell("edit", detail);
    return html`<div class="blocks" ?inert=${this.busy}>${plan ? html`<plan-head .plan=${plan} @edit=${edit}></plan-head>` : html`<p>Begin with a part.</p>`}
      <block-tree .plan=${plan} .timeline=${composed.timeline} .library=${this.library} .plans=${this.plans} @edit=${edit}></block-tree></div>`;
  }

  /** What is to be said of the text itself. */
  private state({ problems, trouble, unread, timeline }: Composed) {
    if (unread) {
      return html`<div class="note"><p>There is no signal, so the text cannot be read now. What you wrote is kept on this device.</p>
        <button type="button" @click=${() => this.tell("again")}>Try again</button></div>`;
    }
    if (trouble) return html`<div class="note"><p>${trouble.charAt(0).toUpperCase()}${trouble.slice(1)}.</p></div>`;
    if (!problems.length) return nothing;
    return html`<problem-list .problems=${problems} @place=${({ detail }: CustomEvent<Problem>) => this.showPlace(detail)}></problem-list>
      ${timeline ? html`<p class="small">The picture is of the plan as it could last be read.</p>` : nothing}`;
  }

  private picture({ timeline, current }: Composed) {
    if (!timeline) return nothing;
    return html`<div class="picture ${current ? "" : "stale"}"><plan-profile labels .timeline=${timeline}></plan-profile></div>`;
  }

  private said({ timeline, current, advice, advising, unadvised }: Composed) {
    if (!timeline) return html`<plan-file-entry></plan-file-entry>`;
    const findings = advice?.findings ?? timeline.findings;
    const fresh = current && !advising;
    return html`${planSums(timeline, advice?.energy)}${this.whose()}
      ${findings.length ? html`<finding-list .findings=${findings} .busy=${!fresh || this.busy} @mend=${({ detail }: CustomEvent<Mend>) => this.tell("mend", detail)}></finding-list>` : nothing}
      ${unadvised ? html`<p class="small" role="status">Advice on this plan, and how ready you come to the start, need signal, and there is none now.</p>` : nothing}
      ${advice?.readiness ? html`<readiness-view .readiness=${advice.readiness}></readiness-view>` : nothing}
      <details @toggle=${(event: Event) => (this.listed = (event.target as HTMLDetailsElement).open)}><summary>Block by block, with strokes and splits</summary>
        ${this.listed ? html`<block-list .timeline=${timeline}></block-list>` : nothing}</details>`;
  }

  /** A coach writes for somebody: that one's result is used here, and kept nowhere. */
  private whose() {
    const { other, known } = this;
    const told = other ? `Splits for ${resultWords(other)}` : known ? "Splits from your results" : "Splits for whom?";
    return html`<details class="whose"><summary>${told}</summary>
      <result-entry heading="Somebody’s result, for splits while you write" button="Show their splits" @result=${({ detail }: CustomEvent<Result>) => this.tell("rower", detail)}></result-entry>
      ${other ? html`<button type="button" @click=${() => this.tell("rower")}>${known ? "Back to your results" : "Without splits again"}</button>` : nothing}
      <p class="small">It is used on this page alone, and not kept.</p></details>`;
  }

  private async showPlace(problem: Problem): Promise<void> {
    this.view = "text";
    await this.updateComplete;
    this.renderRoot.querySelector<PlanText>("plan-text")!.showPlace(problem);
  }

  /** A field of a block has a history of its own while it is typed in. */
  private pressed(event: KeyboardEvent): void {
    if (event.composedPath()[0] instanceof HTMLInputElement || !(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const redo = key === "y" || (key === "z" && event.shiftKey);
    if (!redo && key !== "z") return;
    event.preventDefault();
    this.tell(redo ? "redo" : "undo");
  }

  private tell(name: "typed" | "undo" | "redo" | "mend" | "edit" | "again" | "keep" | "rower", detail?: unknown): void {
    this.dispatchEvent(new CustomEvent(name, { detail }));
  }
}
customElements.define("write-screen", WriteScreen);
