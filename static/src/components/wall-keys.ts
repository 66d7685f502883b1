/** The keys of a screen that leads a room: out of sight until somebody touches the screen, moves the mouse or presses a key.
 *
 * Properties: `watching` (another tab has the session: nothing here steers it); `held`; `waiting` (for a start set by the clock); `sound`; `turns` (lanes take turns) and `stays` (they do
 * not for now). Slot: more keys. Events: `start`, `hold` (or go on), `back`, `skip`, `sound`, `stay`, `full`, `end`, `signs`;
 * `awake` (detail: whether the keys are in sight).
 */
import { LitElement, css, html, nothing } from "lit";
import { buttons, type } from "./look.js";
import type { SoundState } from "../state/snapshot.js";

const STAY_MS = 6000;

export class WallKeys extends LitElement {
  static override properties = {
    watching: { type: Boolean }, held: { type: Boolean }, waiting: { type: Boolean }, sound: {}, turns: { type: Boolean }, stays: { type: Boolean },
    awake: { type: Boolean, reflect: true }, full: { state: true },
  };
  declare watching: boolean;
  declare held: boolean;
  declare waiting: boolean;
  declare sound: SoundState;
  declare turns: boolean;
  declare stays: boolean;
  declare awake: boolean;
  declare full: boolean;
  private sleep: ReturnType<typeof setTimeout> | undefined;
  private readonly wake = () => this.show();
  private readonly followFull = () => (this.full = document.fullscreenElement !== null);

  constructor() {
    super();
    this.watching = false;
    this.held = false;
    this.waiting = false;
    this.sound = "on";
    this.turns = false;
    this.stays = false;
    this.awake = false;
    this.full = document.fullscreenElement !== null;
  }

  static override styles = [type, buttons, css`
    :host { position: fixed; inset: auto 0 0; z-index: 1; opacity: 0; pointer-events: none; transition: opacity 0.25s; }
    :host([awake]) { opacity: 1; pointer-events: auto; }
    .keys { display: flex; flex-wrap: wrap; justify-content: center; gap: 10px; padding: 12px max(16px, var(--side)) max(14px, var(--foot)); background: var(--water); border-top: 2px solid var(--edge); }
    button { flex: 1 1 auto; max-width: 15em; padding: 8px 14px; }
    .main { flex-grow: 2; }
    @media (prefers-reduced-motion: reduce) { :host { transition: none; } }
    /* zoomed in so far that they would hide all the rest: they stand below it */
    @media (max-height: 300px) { :host { position: static; opacity: 1; pointer-events: auto; } }
  `];

  override connectedCallback(): void {
    super.connectedCallback();
    for (const name of WAKING) addEventListener(name, this.wake);
    document.addEventListener("fullscreenchange", this.followFull);
    this.show();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    for (const name of WAKING) removeEventListener(name, this.wake);
    document.removeEventListener("fullscreenchange", this.followFull);
    clearTimeout(this.sleep);
  }

  override render() {
    return html`<section class="keys" aria-label="Session">
      ${this.watching ? nothing : this.steering()}
      ${this.turns ? this.key("stay", this.stays ? "Let lanes take turns" : "Keep these lanes") : nothing}
      <slot></slot>
      ${this.watching ? nothing : this.key("sound", this.sound === "off" ? "Unmute" : "Mute")}
      ${document.fullscreenEnabled ? this.key("full", this.full ? "Leave full screen" : "Full screen") : nothing}
      ${this.watching ? nothing : html`${this.key("signs", "Stop signs")}${this.key("end", "End")}`}
    </section>`;
  }

  private steering() {
    if (this.waiting) return this.key("start", "Start now", "main go");
    return html`${this.key("back", "Back")}${this.key("hold", this.held ? "Go on" : "Hold", `main ${this.held ? "go" : ""}`)}${this.key("skip", "Skip")}`;
  }

  private key(name: string, words: string, look = "") {
    return html`<button type="button" class=${look} @click=${() => this.tell(name)}>${words}</button>`;
  }

  private show(): void {
    clearTimeout(this.sleep);
    this.sleep = setTimeout(() => this.hide(), STAY_MS);
    if (!this.awake) this.change(true);
  }

  /** Whoever goes by the keyboard still needs to see where they are. */
  private hide(): void {
    if (this.renderRoot.querySelector(":focus-visible")) return this.show();
    this.change(false);
  }

  private change(awake: boolean): void {
    this.awake = awake;
    this.tell("awake", awake);
  }

  private tell(name: string, detail?: boolean): void {
    this.dispatchEvent(new CustomEvent(name, { detail }));
  }
}
customElements.define("wall-keys", WallKeys);

const WAKING = ["pointerdown", "pointermove", "keydown"] as const;
