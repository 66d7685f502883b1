/** Has a session made for a piece of one kind and opens it. Property `kind`; slot: where to turn when there is no signal. */
import { LitElement, html } from "lit";
import { NoAnswer, Refused } from "../data/api.js";
import { addResult, changeAthlete, readAthlete, type AthleteRecord } from "../data/athlete.js";
import { makeSession } from "../data/making.js";
import { addressOf } from "../data/plans.js";
import { DEFAULTS, changeSettings, readSettings, type Settings } from "../data/settings.js";
import { usualLevel, type Kind } from "../plan/kinds.js";
import type { Level } from "../plan/types.js";
import type { Result } from "../plan/wire.js";
import { knownWords } from "./rower-words.js";
import { goTo } from "./routes.js";
import "./session-form.js";
import type { Remembered, Wanted } from "./session-form.js";

const NO_SIGNAL = "Making a session needs signal, and there is none.";

export class SessionMaking extends LitElement {
  static override properties = { kind: {}, rower: { state: true }, settings: { state: true }, busy: { state: true }, message: { state: true } };
  declare kind: Kind;
  declare rower: AthleteRecord | undefined;
  declare settings: Settings;
  declare busy: boolean;
  declare message: string;
  /** All that is being written down; the session waits for it. */
  private writing: Promise<unknown> = Promise.resolve();

  constructor() {
    super();
    this.settings = DEFAULTS;
    this.busy = false;
    this.message = "";
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.gather();
  }

  override render() {
    if (!this.rower) return html``;
    const { warmup_minutes, room } = this.settings;
    return html`<session-form .kind=${this.kind} .minutes=${warmup_minutes} .room=${room} .level=${this.level(this.rower)}
      .known=${knownWords(this.rower)} .busy=${this.busy} .message=${this.message} @result=${this.keepResult} @chosen=${this.remember}
      @make=${this.make}><slot></slot></session-form>`;
  }

  private async gather(): Promise<void> {
    this.settings = await readSettings();
    this.rower = await readAthlete();
    await this.updateComplete;
    // On a screen this low the next question would stay out of sight.
    if (matchMedia("(max-height: 540px)").matches) this.scrollIntoView();
  }

  /** As the athlete has it, else what is usual for the kind of piece. */
  private level({ athlete }: AthleteRecord): Level {
    return athlete.level ?? usualLevel(this.kind);
  }

  private keepResult({ detail }: CustomEvent<Result>): void {
    this.write(addResult(detail));
  }

  private remember({ detail: { level, ...settings } }: CustomEvent<Partial<Remembered>>): void {
    const person = level && changeAthlete({ level }).then((rower) => (this.rower = rower));
    this.write(person, changeSettings(settings).then((all) => (this.settings = all)));
  }

  private write(...writing: unknown[]): void {
    this.writing = Promise.all([this.writing, ...writing]);
  }

  private async make({ detail: { piece, only_warm_up } }: CustomEvent<Wanted>): Promise<void> {
    this.busy = true;
    this.message = "";
    try {
      await this.writing;
      const { warmup_minutes, room } = this.settings;
      const rower = await readAthlete();
      const record = await makeSession({ piece, level: this.level(rower), only_warm_up, warmup_minutes, room }, rower);
      goTo(this, addressOf(record));
    } catch (error) {
      this.message = messageOf(error);
    } finally {
      this.busy = false;
    }
  }
}
customElements.define("session-making", SessionMaking);

function messageOf(error: unknown): string {
  if (error instanceof NoAnswer) return NO_SIGNAL;
  if (error instanceof Refused && error.problems.length) return error.problems.map(({ sentence }) => `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`).join(" ");
  return error instanceof Error ? error.message : String(error);
}
