/** One plan before it is rowed: picture, findings, totals, readiness, blocks, whose splits, and the button to row it.
 *
 * Properties: `timeline`, `findings`, `appraised` (whether they are for this athlete, with whatever readiness and energy there is),
 * `unasked` (nobody could be asked for advice),
 * `readiness` and `energy` (or undefined), `athlete` (whose splits a download can show, or undefined), `reasons` (why it was made so), `known` (a line about
 * known results, or "" for a field to give one), `saved` (see saved-mark), `own` (kept under a name of its own), `tags` (of one's own plan), `sent` (came by a link),
 * `query` (how other screens are told of it), `plan_id`, `mendedBy` (the label of a mend that can be taken back, or ""),
 * `level` and `room` (what advice is for), `outdated` (made for other results than those known now), `busy`,
 * `mendTrouble`, `trouble` (a sentence where the plan cannot be shown).
 * Events: `row`, `result` (detail: metres and seconds), `mend` (detail: the mend), `undo`, `again`, `terms` (detail: level or room), `edit`,
 * and of one's own plan `forget`, `tags` (detail: those it has now).
 */
import { LitElement, css, html, nothing } from "lit";
import type { Athlete, Energy, Finding, Mend, Plan, Readiness, Timeline } from "../plan/wire.js";
import { alone } from "../plan/alone.js";
import type { Level, Room } from "../plan/types.js";
import { choices, pick } from "./choice-look.js";
import { LEVELS } from "./level-names.js";
import { buttons, page, type } from "./look.js";
import { cannotBeKeptWords } from "./plain-http.js";
import type { PlanDownloads } from "./plan-downloads.js";
import "./plan-profile.js";
import { planSums, sumsLook } from "./plan-sums.js";
import { ROOMS } from "./room-names.js";
import "./saved-mark.js";

/** As planner/start_line.py has it: readiness is what rowing before the start line leaves. */
const NO_START_LINE = "Nothing is rowed before a main piece here, so there is no start line to be ready for.";

const WHOM: Readonly<Record<Level, string>> = { novice: "somebody new to it", club: "a regular rower", trained: "a trained rower" };
const NOT_ASKED = "Advice on this plan, and how ready you come to the start, need signal, and there is none now.";

export class PlanScreen extends LitElement {
  static override properties = {
    timeline: { attribute: false },
    findings: { attribute: false },
    appraised: { type: Boolean },
    unasked: { type: Boolean },
    readiness: { attribute: false },
    energy: { attribute: false },
    athlete: { attribute: false },
    reasons: { attribute: false },
    known: {},
    saved: {},
    query: {},
    plan_id: {},
    own: { type: Boolean },
    tags: { attribute: false },
    sent: { type: Boolean },
    mendedBy: {},
    level: {},
    room: {},
    outdated: { type: Boolean },
    busy: { type: Boolean },
    mendTrouble: {},
    trouble: {},
    sharing: { state: true },
    lacking: { state: true },
  };
  declare timeline: Timeline | undefined;
  declare findings: readonly Finding[];
  declare appraised: boolean;
  declare unasked: boolean;
  declare readiness: Readiness | undefined;
  declare energy: Energy | undefined;
  declare athlete: Athlete | undefined;
  declare reasons: readonly string[];
  declare known: string;
  declare saved: string;
  declare query: string;
  declare plan_id: string;
  declare own: boolean;
  declare tags: readonly string[];
  declare sent: boolean;
  declare mendedBy: string;
  declare level: Level | undefined;
  declare room: Room | undefined;
  declare outdated: boolean;
  declare busy: boolean;
  declare mendTrouble: string;
  declare trouble: string;
  declare sharing: boolean;
  /** The part that shares is not on this device, and could not be fetched. */
  declare lacking: boolean;

  constructor() {
    super();
    this.findings = [];
    this.appraised = false;
    this.unasked = false;
    this.reasons = [];
    this.known = "";
    this.saved = "saving";
    this.query = "";
    this.plan_id = "";
    this.own = false;
    this.tags = [];
    this.sent = false;
    this.mendedBy = "";
    this.outdated = false;
    this.busy = false;
    this.mendTrouble = "";
    this.trouble = "";
    this.sharing = false;
    this.lacking = false;
  }

  static override styles = [type, buttons, page, choices, sumsLook, css`
    .back { justify-self: start; display: inline-grid; align-items: center; min-height: 44px; font-weight: 700; }
    header { display: grid; gap: 6px; }
    header h1 { overflow-wrap: anywhere; }
    .doing { margin-top: 6px; }
    .doing button { min-height: 48px; font-size: 1.125rem; }
    plan-profile { height: 120px; }
    .mended { display: flex; flex-wrap: wrap; gap: 8px 14px; align-items: center; justify-content: space-between; padding: 10px 14px; background: var(--hull); border-radius: var(--r); }
    .not-secure { display: grid; gap: 10px; padding: 12px 14px; border-left: 6px solid var(--edge); background: var(--hull); border-radius: 6px var(--r) var(--r) 6px; }
    .mended button { min-height: 48px; }
    .reasons { display: grid; gap: 8px; padding-left: 20px; list-style: disc; }
    summary { width: fit-content; min-height: 44px; align-content: center; cursor: pointer; font-weight: 700; text-decoration: underline; text-underline-offset: 4px; }
    .go { width: 100%; font-size: 1.375rem; }
    @media (min-width: 1000px) {
      main { width: min(100%, 1120px); grid-template-columns: minmax(0, 1fr) minmax(0, 1.1fr); gap: 28px 48px; align-items: start; }
      .back, header, plan-profile, .bar { grid-column: 1 / -1; }
      plan-profile { height: 170px; }
      .bar { justify-items: end; }
      .go { width: 420px; }
    }
    @media (orientation: landscape) and (max-height: 540px) and (min-width: 480px) {
      .bar { grid-template-columns: 1fr minmax(220px, 340px); align-items: center; padding: 8px var(--side); }
    }
    .left, .blocks { display: grid; gap: 22px; align-content: start; }
    last-rowed:not(:defined) { display: none; }
    .keeping { display: grid; gap: 10px; justify-items: start; }
    .keeping ask-first { width: 100%; }
  `];

  /** Blocks in words, findings, readiness: without them the plan can still be rowed. */
  override firstUpdated(): void {
    import("./later.js").catch(() => undefined);
  }

  override render() {
    return html`<main>
      ${alone ? nothing : html`<a class="back" href="/">All plans</a>`}
      ${this.timeline ? this.plan(this.timeline) : this.without()}
    </main>`;
  }

  private doing(plan: Plan) {
    return html`<div class="doing"><button type="button" @click=${this.share}>Share</button>
      ${this.sharing && !this.lacking ? html`<share-plan .plan=${plan} @closed=${() => (this.sharing = false)}></share-plan>` : nothing}
      ${this.sharing && this.lacking ? html`<p role="alert">Sharing needs signal the first time, and there is none.</p>` : nothing}</div>`;
  }

  private share(): void {
    this.sharing = true;
    import("./sharing.js").then(() => (this.lacking = false), () => (this.lacking = true));
  }

  private without() {
    return html`<h1 tabindex="-1">${this.trouble ? "This plan cannot be opened" : "Opening the plan …"}</h1>
      ${this.trouble ? html`<p role="alert">${this.trouble}</p>` : nothing}`;
  }

  private plan(timeline: Timeline) {
    const { plan } = timeline;
    return html`
      <header><h1 tabindex="-1" dir="auto">${plan.title}</h1>
        ${plan.summary ? html`<p dir="auto">${plan.summary}</p>` : nothing}
        ${this.sent ? html`<p class="small">It came by a link, and is kept on this device as it was sent.</p>` : nothing}
        ${alone ? nothing : this.doing(plan)}</header>
      <plan-profile labels .timeline=${timeline}></plan-profile>
      <div class="left">
        ${this.known && !alone ? nothing : html`<result-entry heading=${this.known ? "A result of your own, for your splits" : "A recent result, for splits (if you have one)"}></result-entry>`}
        ${this.outdated ? this.againLine() : nothing}
        ${this.mendedBy ? this.undoLine() : nothing}
        ${this.findings.length ? html`<finding-list .findings=${this.findings} .busy=${this.busy} .trouble=${this.mendTrouble} @mend=${this.pass}></finding-list>` : nothing}
        ${planSums(timeline, this.energy)}
        ${this.readiness ? html`<readiness-view .readiness=${this.readiness}></readiness-view>`
          : this.appraised ? html`<p class="small">${NO_START_LINE}</p>`
            : this.unasked && !alone ? html`<p class="small" role="status">${NOT_ASKED}</p>` : nothing}
        ${this.reasons.length ? html`<details><summary>Why it looks like this</summary><ul class="reasons">${this.reasons.map((reason) => html`<li dir="auto">${reason}</li>`)}</ul></details>` : nothing}
        ${this.saved === "insecure" ? this.notSecure() : nothing}
        ${alone ? nothing : this.whom()}
        ${this.known ? html`<p class="small">${this.known} ${alone ? nothing : html`<a href="/athlete">Your results</a>`}</p>` : nothing}
        ${alone ? nothing : html`<last-rowed .plan=${this.plan_id}></last-rowed>`}
      </div>
      <div class="blocks">${alone ? nothing : html`<nav class="keeping" aria-label="For a room"><a class="button" href="/wall${this.query}">Show on a wall</a><a class="button" href="/walls${this.query}">Put on a wall elsewhere</a><a class="button" href="/prompter${this.query}">Coach’s prompter</a></nav>`}
        <block-list .timeline=${timeline}></block-list>
        ${alone ? nothing : html`<plan-downloads .plan=${plan} .athlete=${this.athlete}></plan-downloads>`}${alone ? nothing : this.keeping()}</div>
      <div class="bar"><saved-mark state=${this.saved}></saved-mark><button type="button" class="go" @click=${() => this.dispatchEvent(new CustomEvent("row"))}>Row it</button></div>`;
  }

  private notSecure() {
    const make = async () => {
      await customElements.whenDefined("plan-downloads");
      await this.renderRoot.querySelector<PlanDownloads>("plan-downloads")!.offer("offline");
    };
    return html`<div class="not-secure"><p>${cannotBeKeptWords(html`This plan can be had with its player as one file, which needs no server.`)}</p>
      <button type="button" @click=${make}>Get the one-file page</button></div>`;
  }

  /** What else can be done with a plan: to change one's own in its place, another as a copy; to take one's own off the device. */
  private keeping() {
    const tell = (name: "edit" | "forget") => () => this.dispatchEvent(new CustomEvent(name));
    const tag = ({ detail }: CustomEvent<string[]>) => this.dispatchEvent(new CustomEvent("tags", { detail }));
    return html`${this.own ? html`<tag-entry .tags=${this.tags} @tags=${tag}></tag-entry>` : nothing}
      <div class="keeping"><button type="button" @click=${tell("edit")}>${this.own && !this.sent ? "Change it" : "Make your own of it"}</button>
      ${this.own ? html`<ask-first words="Take it off this device" yes="Yes, take it off this device" @sure=${tell("forget")}></ask-first>` : nothing}</div>`;
  }

  /** The splits follow a result at once; the words, the goal and the warm-up were made without it. */
  private againLine() {
    return html`<div class="mended" role="status"><p>Your results have changed since this session was made.</p>
      <button type="button" ?disabled=${this.busy} @click=${() => this.dispatchEvent(new CustomEvent("again"))}>Make it again</button>
      ${this.mendTrouble && !this.findings.length ? html`<p role="alert">${this.mendTrouble}</p>` : nothing}</div>`;
  }

  /** What was chosen last sticks, so it is said and can be changed here. */
  private whom() {
    const { level, room } = this;
    if (!level || !room) return nothing;
    const tell = (detail: { level?: Level; room?: Room }) => this.dispatchEvent(new CustomEvent("terms", { detail }));
    return html`<details><summary>Advice for ${WHOM[level]} in a ${room} room</summary>
      <div class="picks">${pick("level", "Your rowing", LEVELS, level, (level) => tell({ level }))}${pick("room", "The room", ROOMS, room, (room) => tell({ room }))}</div></details>`;
  }

  private undoLine() {
    return html`<div class="mended" role="status"><p>Done: <b dir="auto">${this.mendedBy}</b>.</p>
      <button type="button" ?disabled=${this.busy} @click=${() => this.dispatchEvent(new CustomEvent("undo"))}>Undo</button></div>`;
  }

  private pass({ detail }: CustomEvent<Mend>): void {
    this.dispatchEvent(new CustomEvent<Mend>("mend", { detail }));
  }
}
customElements.define("plan-screen", PlanScreen);
