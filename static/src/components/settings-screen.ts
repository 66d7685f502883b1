/** The choices of this device, each taking hold at once.
 *
 * Properties: `chosen` (undefined while it is being read), `sound` (whether it is wanted), `volume` (0 to 1),
 * `voices` (of the device, or undefined while they are looked for), `shakes` (whether the device can), `rowing` (a session is open
 * behind this page), `trouble`. Events: `choose` (detail: what has changed), `sound` (detail: boolean),
 * `volume` (detail: 0 to 1), `brought` (a file has added to what is stored).
 */
import { LitElement, css, html, nothing } from "lit";
import { isCount, LONGEST_COUNT_S, type Buttons, type EffortUnit, type FigureKind, type Hand, type Preferences } from "../data/preferences.js";
import type { Theme } from "../data/theme-mirror.js";
import { choices, ON_OR_OFF, tiles, type Option } from "./choice-look.js";
import "./device-file.js";
import "./settings-keys.js";
import { buttons, fields, page, type } from "./look.js";
import "./settings-cues.js";
import type { VoiceName } from "./settings-cues.js";

const FIGURES: readonly Option<FigureKind>[] = [
  { value: "time", name: "Time left" }, { value: "strokes", name: "Strokes left" }, { value: "rate", name: "Rate" }, { value: "split", name: "Split" },
];
const EFFORTS: readonly Option<EffortUnit>[] = [
  { value: "split", name: "Split" }, { value: "watts", name: "Watts" }, { value: "two-k-power", name: "% of 2 km power" }, { value: "words", name: "Words" },
];
const THEMES: readonly Option<Theme>[] = [{ value: "device", name: "As the device" }, { value: "light", name: "Light" }, { value: "dark", name: "Dark" }];
const HANDS: readonly Option<Hand>[] = [{ value: "right", name: "Right" }, { value: "left", name: "Left" }];
const BUTTONS: readonly Option<Buttons>[] = [{ value: "usual", name: "Usual" }, { value: "large", name: "Large" }];

type Count = "start_count_s" | "hold_count_s";

export class SettingsScreen extends LitElement {
  static override properties = {
    chosen: { attribute: false }, sound: { type: Boolean }, volume: { type: Number }, voices: { attribute: false }, shakes: { type: Boolean }, rowing: { type: Boolean }, trouble: {}, wrong: { state: true },
  };
  declare chosen: Preferences | undefined;
  declare sound: boolean;
  declare volume: number;
  declare voices: readonly VoiceName[] | undefined;
  declare shakes: boolean;
  declare rowing: boolean;
  declare trouble: string;
  declare wrong: Partial<Record<Count, boolean>>;

  constructor() {
    super();
    this.sound = true;
    this.volume = 1;
    this.shakes = false;
    this.rowing = false;
    this.trouble = "";
    this.wrong = {};
  }

  static override styles = [type, buttons, fields, page, choices, css`
    .back { justify-self: start; display: inline-grid; align-items: center; min-height: 44px; font-weight: 700; }
    header, section { display: grid; gap: 12px; }
    .all, .side { display: grid; gap: 28px; }
    section { gap: 20px; align-content: start; }
    h2 { border-bottom: 2px solid var(--edge); padding-bottom: 6px; }
    .tiles { grid-template-columns: repeat(auto-fit, minmax(7.4em, 1fr)); }
    .tiles span { min-height: var(--target); }
    fieldset p { margin-top: 8px; }
    .counts { display: grid; grid-template-columns: repeat(auto-fit, minmax(9em, 1fr)); gap: 12px; }
    .counts > div { display: grid; gap: 6px; align-content: end; }
    input[aria-invalid="true"] { border-color: var(--catch); }
    .bad { grid-column: 1 / -1; font-weight: 700; }
    .find { padding: 10px 14px; background: var(--hull); border-left: 6px solid var(--catch); border-radius: 6px var(--r) var(--r) 6px; }
    @media (min-width: 1000px) {
      main { width: min(100%, 1120px); }
      .all { grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 28px 48px; align-items: start; }
      .tiles { grid-template-columns: repeat(auto-fit, minmax(11em, 1fr)); }
    }
  `];

  override render() {
    return html`<main>
      <a class="back" href="/">What are you rowing today?</a>
      <header><h1 tabindex="-1">Settings</h1><p>For this device. Each takes hold at once.</p></header>
      <div role="status">${this.trouble ? html`<p class="find">${this.trouble}</p>` : nothing}</div>
      ${this.chosen ? html`<div class="all"><div class="side">${this.whileRowing(this.chosen)}<settings-cues .chosen=${this.chosen} .sound=${this.sound}
          .volume=${this.volume} .voices=${this.voices} .shakes=${this.shakes}></settings-cues></div>
        <div class="side">${this.counting(this.chosen)}${this.device(this.chosen)}<settings-keys .chosen=${this.chosen}></settings-keys><device-file @brought=${() => this.dispatchEvent(new CustomEvent("brought"))}></device-file></div></div>` : nothing}
      ${this.rowing ? html`<div class="bar"><p class="small">A session is open behind this page.</p><a class="button go" href="/row">Back to rowing</a></div>` : nothing}
    </main>`;
  }

  private whileRowing({ biggest, effort }: Preferences) {
    return html`<section aria-labelledby="rowing"><h2 id="rowing">While rowing</h2>
      <fieldset><legend>Largest on the screen</legend>${tiles("biggest", FIGURES, biggest, (value) => this.choose({ biggest: value }))}
        <p class="small">A block without it shows the time left.</p></fieldset>
      <fieldset><legend>Effort shown as</legend>${tiles("effort", EFFORTS, effort, (value) => this.choose({ effort: value }))}
        <p class="small">Where the figure is not known, the words of the plan stand.</p></fieldset>
    </section>`;
  }

  private counting(chosen: Preferences) {
    return html`<section aria-labelledby="counting"><h2 id="counting">Count-in</h2>
      <div class="counts">${this.count("start_count_s", "Before a start, seconds", chosen)}${this.count("hold_count_s", "After a hold, seconds", chosen)}
        ${this.problem("start_count_s", "Before a start")}${this.problem("hold_count_s", "After a hold")}</div>
      <p class="small">Before a start also means after a gap. A start set by the clock keeps its minute.</p></section>`;
  }

  private count(name: Count, label: string, chosen: Preferences) {
    const wrong = this.wrong[name] === true;
    const read = (event: Event) => this.read(name, event);
    return html`<div><label for=${name}>${label}</label>
      <input id=${name} inputmode="numeric" autocomplete="off" aria-describedby="${name}-problem" aria-invalid=${wrong ? "true" : "false"}
        .value=${String(chosen[name])} @input=${wrong ? read : nothing} @change=${read} /></div>`;
  }

  private problem(name: Count, which: string) {
    return html`<p id="${name}-problem" class="bad" role="alert" ?hidden=${!this.wrong[name]}>${which}: write a whole number from 0 to ${LONGEST_COUNT_S}.</p>`;
  }

  private device({ theme, hand, buttons: size, keep_awake }: Preferences) {
    return html`<section aria-labelledby="device"><h2 id="device">This device</h2>
      <fieldset><legend>Light or dark</legend>${tiles("theme", THEMES, theme, (value) => this.choose({ theme: value }))}
        <p class="small">As the device: pages follow it, and rowing is dark.</p></fieldset>
      <fieldset><legend>The hand for the buttons</legend>${tiles("hand", HANDS, hand, (value) => this.choose({ hand: value }))}
        <p class="small">On a screen on its side the buttons stand on that side.</p></fieldset>
      <fieldset><legend>Buttons while rowing</legend>${tiles("buttons", BUTTONS, size, (value) => this.choose({ buttons: value }))}
        <p class="small">Large ones can be hit from the seat. The figures are smaller then. On a phone, what comes next, the picture of the plan and the line that says what is saved make room for them; on a small one, or on its side, the effort does too.</p></fieldset>
      <fieldset><legend>Keep the screen on while a session runs</legend>${tiles("awake", ON_OR_OFF, keep_awake, (value) => this.choose({ keep_awake: value }))}</fieldset>
    </section>`;
  }

  private read(name: Count, event: Event): void {
    const text = (event.target as HTMLInputElement).value.trim();
    const value = Number(text);
    const fine = text !== "" && isCount(value);
    this.wrong = { ...this.wrong, [name]: !fine };
    if (fine) this.choose({ [name]: value });
  }

  private choose(changes: Partial<Preferences>): void {
    this.tell("choose", changes);
  }

  private tell(name: "choose" | "sound", detail: Partial<Preferences> | boolean): void {
    this.dispatchEvent(new CustomEvent(name, { detail }));
  }
}
customElements.define("settings-screen", SettingsScreen);
