/** What is heard, said and felt while rowing.
 *
 * Properties: `chosen`, `sound` (whether it is wanted), `volume` (0 to 1), `voices` (of the device, or undefined while
 * they are looked for), `shakes` (whether the device can). Events, as settings-screen has them, from inside its shadow.
 */
import { LitElement, css, html, nothing } from "lit";
import type { Preferences } from "../data/preferences.js";
import type { Beat } from "../plan/beats.js";
import { choices, ON_OR_OFF, pick, tiles, type Option } from "./choice-look.js";
import { fields, type } from "./look.js";

export interface VoiceName {
  name: string;
  uri: string;
}

const BEATS: readonly Option<Beat>[] = [
  { value: "whole", name: "Catch, finish, soft beat" }, { value: "catch-finish", name: "Catch and finish" }, { value: "catch", name: "Catch alone" },
  { value: "none", name: "No beat" },
];
const NO_VOICE = "This device has no English voice that works without a signal, so nothing is spoken. Tones still mark every change.";

export class SettingsCues extends LitElement {
  static override properties = {
    chosen: { attribute: false }, sound: { type: Boolean }, volume: { type: Number }, voices: { attribute: false }, shakes: { type: Boolean },
  };
  declare chosen: Preferences | undefined;
  declare sound: boolean;
  declare volume: number;
  declare voices: readonly VoiceName[] | undefined;
  declare shakes: boolean;

  constructor() {
    super();
    this.sound = true;
    this.volume = 1;
    this.shakes = false;
  }

  static override styles = [type, fields, choices, css`
    section { display: grid; gap: 20px; }
    h2 { border-bottom: 2px solid var(--edge); padding-bottom: 6px; }
    .tiles { grid-template-columns: repeat(auto-fit, minmax(7.4em, 1fr)); }
    .tiles span { min-height: var(--target); }
    fieldset p { margin-top: 8px; }
    .loud { display: grid; gap: 6px; }
    input[type="range"] { width: 100%; min-height: var(--target); margin: 0; padding: 0; accent-color: var(--catch); }
  `];

  override render() {
    if (!this.chosen) return nothing;
    const { beat, last_strokes, changes } = this.chosen;
    return html`<section aria-labelledby="cues"><h2 id="cues">Heard, said and felt</h2>
      <fieldset><legend>Sound</legend>${tiles("sound", ON_OR_OFF, this.sound, (value) => this.tell("sound", value))}</fieldset>
      ${this.sound ? html`
        <div class="loud"><label for="volume">Loudness</label><input id="volume" type="range" min="0" max="100" step="5" .value=${String(Math.round(this.volume * 100))}
          aria-valuetext="${Math.round(this.volume * 100)} of 100" @change=${this.turned} /></div>
        <fieldset><legend>Beat of the stroke</legend>${tiles("beat", BEATS, beat, (value) => this.choose({ beat: value }))}
          <p class="small">The soft beat comes half way through a slow recovery.</p></fieldset>
        <fieldset><legend>Last two strokes marked</legend>${tiles("last", ON_OR_OFF, last_strokes, (value) => this.choose({ last_strokes: value }))}</fieldset>
        <fieldset><legend>Changes, count-in and end</legend>${tiles("changes", ON_OR_OFF, changes, (value) => this.choose({ changes: value }))}</fieldset>
        ${this.voice(this.chosen)}` : nothing}
      ${this.shakes ? html`<fieldset><legend>Vibration at changes and last strokes</legend>
        ${tiles("shakes", ON_OR_OFF, this.chosen.shakes, (value) => this.choose({ shakes: value }))}</fieldset>` : nothing}
    </section>`;
  }

  private voice({ voice, voice_uri }: Preferences) {
    const { voices } = this;
    if (!voices) return nothing;
    if (!voices.length) return html`<p class="small">${NO_VOICE}</p>`;
    const options = voices.map(({ name, uri }) => ({ value: uri, name }));
    const picked = options.some(({ value }) => value === voice_uri) ? voice_uri : options[0]!.value;
    return html`<fieldset><legend>Voice</legend>${tiles("voice", ON_OR_OFF, voice, (value) => this.choose({ voice: value }))}
      <p class="small">It names the next block 6 to 10 s ahead, and says the calls.</p></fieldset>
      ${voice && voices.length > 1 ? pick("voice-name", "Whose voice", options, picked, (value) => this.choose({ voice_uri: value })) : nothing}`;
  }

  private turned(event: Event): void {
    this.tell("volume", Number((event.target as HTMLInputElement).value) / 100);
  }

  private choose(changes: Partial<Preferences>): void {
    this.tell("choose", changes);
  }

  private tell(name: "choose" | "sound" | "volume", detail: unknown): void {
    this.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
  }
}
customElements.define("settings-cues", SettingsCues);
