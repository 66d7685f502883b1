/** How a session is to be: the piece of one kind, the warm-up, the room, the rower; and the button that makes it.
 *
 * Properties: `kind`, `minutes`, `room`, `level`, `known` (a line about known results, or "" for a field to give one),
 * `busy`, `message`. Events: `result` (detail: metres and seconds), `chosen` (detail: a part of what is remembered),
 * `make` (detail: the piece, and whether only its warm-up is wanted).
 */
import type { Piece } from "../plan/wire.js";
import { LitElement, css, html, nothing } from "lit";
import {
  CAPPED, CAPS, SETS, STEADY, TECHNIQUE, TESTS, USUAL, intervalPiece, setName, testPiece, type Choice, type Repetitions,
} from "../plan/piece-choices.js";
import type { Kind } from "../plan/kinds.js";
import type { Level, Room } from "../plan/types.js";
import { choices, pick, tiles, type Option } from "./choice-look.js";
import { LEVELS } from "./level-names.js";
import { ROOMS } from "./room-names.js";
import "./interval-entry.js";
import type { IntervalEntry } from "./interval-entry.js";
import { buttons, fields, type } from "./look.js";
import "./result-entry.js";
import type { ResultEntry } from "./result-entry.js";

export interface Wanted {
  piece: Piece;
  only_warm_up: boolean;
}

/** What is remembered until the next session is made. */
export interface Remembered {
  warmup_minutes: number;
  room: Room;
  level: Level;
}

const MINUTES: readonly Option<number>[] = [5, 8, 10, 12, 15, 18, 20, 25, 30].map((count) => ({ value: count, name: `${count} minutes` }));
const OWN_SET = -1;

export class SessionForm extends LitElement {
  static override properties = {
    kind: {}, minutes: { attribute: false }, room: {}, level: {}, known: {}, busy: { type: Boolean }, message: {}, chosen: { state: true },
  };
  declare kind: Kind;
  declare minutes: number;
  declare room: Room;
  declare level: Level;
  declare known: string;
  declare busy: boolean;
  declare message: string;
  /** The place of what is chosen in each list. */
  declare chosen: Record<keyof typeof USUAL, number>;

  constructor() {
    super();
    this.kind = "test";
    this.minutes = 15;
    this.room = "normal";
    this.level = "club";
    this.known = "";
    this.busy = false;
    this.message = "";
    this.chosen = { ...USUAL };
  }

  static override styles = [type, buttons, fields, choices, css`
    form { display: grid; gap: 20px; }
    .sets .tiles { grid-template-columns: repeat(auto-fill, minmax(9em, 1fr)); }
    .bar { position: sticky; bottom: 0; z-index: 1; display: grid; gap: 8px; margin: 0 calc(var(--side) * -1); padding: 10px var(--side) 14px;
      background: var(--water); border-top: 1px solid var(--line); }
    .go { font-size: 1.375rem; }
    .said { padding: 10px 14px; background: var(--hull); border-left: 6px solid var(--catch); border-radius: 6px var(--r) var(--r) 6px; }
    @media (min-width: 700px) { .bar { margin: 0; padding-inline: 0; } }
    @media (orientation: landscape) and (max-height: 540px) { .bar { grid-template-columns: 1fr minmax(220px, 340px); align-items: center; padding-block: 8px; } }
  `];

  override render() {
    return html`<form novalidate @submit=${this.make}>
      ${this.pieces()}
      ${this.known ? html`<p class="small">${this.known} <a href="/athlete">Your results</a></p>`
        : html`<result-entry heading="A recent result, for splits (if you have one)"></result-entry>`}
      <div class="picks">
        ${pick("minutes", "Warm-up", MINUTES, this.minutes, (warmup_minutes) => this.remember({ warmup_minutes }))}
        ${pick("level", "Your rowing", LEVELS, this.level, (level) => this.remember({ level }))}
        ${pick("room", "The room", ROOMS, this.room, (room) => this.remember({ room }))}
      </div>
      <div class="bar">
        <div role="alert">${this.message ? html`<p class="said">${this.message} <slot></slot></p>` : nothing}</div>
        <button type="submit" class="go" ?disabled=${this.busy}>${this.busy ? "Making it …" : "Make the session"}</button>
      </div>
    </form>`;
  }

  private pieces() {
    switch (this.kind) {
      case "intervals": return html`${this.sets()}${this.chosen.set === OWN_SET ? html`<interval-entry></interval-entry>` : nothing}`;
      case "steady": return this.list("steady", "How long?", STEADY);
      case "technique": return this.list("technique", "How long?", TECHNIQUE);
      case "capped": return html`${this.list("capped", "How long?", CAPPED)}
        <fieldset><legend>At no more than</legend>${tiles("cap", CAPS.map((cap) => ({ value: cap, name: `r${cap}` })), this.chosen.cap, (cap) => this.choose({ cap }))}</fieldset>`;
      case "warm-up": return this.list("test", "Before which piece?", TESTS);
      default: return this.list("test", "Which piece?", TESTS);
    }
  }

  private list(of: "test" | "capped" | "steady" | "technique", legend: string, from: readonly Choice[]) {
    const options = from.map(({ name }, value) => ({ value, name }));
    return html`<fieldset><legend>${legend}</legend>${tiles(of, options, this.chosen[of], (value) => this.choose({ [of]: value }))}</fieldset>`;
  }

  private sets() {
    const options = [...SETS.map((set, value) => ({ value, name: setName(set) })), { value: OWN_SET, name: "Other" }];
    return html`<fieldset class="sets"><legend>Which set?</legend>${tiles("set", options, this.chosen.set, (set) => this.choose({ set }))}</fieldset>`;
  }

  private choose(choice: Partial<SessionForm["chosen"]>): void {
    this.chosen = { ...this.chosen, ...choice };
  }

  private remember(part: Partial<Remembered>): void {
    this.dispatchEvent(new CustomEvent<Partial<Remembered>>("chosen", { detail: part }));
  }

  private make(event: Event): void {
    event.preventDefault();
    const entry = this.renderRoot.querySelector<ResultEntry>("result-entry");
    const piece = this.piece();
    if (!piece || (entry && !entry.check())) return;
    this.dispatchEvent(new CustomEvent<Wanted>("make", { detail: { piece, only_warm_up: this.kind === "warm-up" } }));
  }

  /** Undefined while one's own set cannot be read; it says so itself. */
  private piece(): Piece | undefined {
    const { test, capped, cap, steady, technique } = this.chosen;
    switch (this.kind) {
      case "intervals": {
        const set = this.set();
        return set && intervalPiece(set);
      }
      case "steady": return { steady: secondsOf(STEADY[steady]!) };
      case "technique": return { technique: secondsOf(TECHNIQUE[technique]!) };
      case "capped": return testPiece(CAPPED[capped]!, cap);
      default: return testPiece(TESTS[test]!);
    }
  }

  private set(): Repetitions | undefined {
    if (this.chosen.set !== OWN_SET) return SETS[this.chosen.set]!;
    return this.renderRoot.querySelector<IntervalEntry>("interval-entry")!.read();
  }
}
customElements.define("session-form", SessionForm);

function secondsOf({ length }: Choice): { seconds: number } {
  return { seconds: "seconds" in length ? length.seconds : 0 };
}
