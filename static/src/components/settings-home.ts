/** Brings the settings page what is chosen on this device, and keeps what is chosen there. */
import { LitElement, html } from "lit";
import type { Preferences } from "../data/preferences.js";
import { openSession } from "../data/sessions.js";
import { chosen } from "../state/chosen.js";
import { player } from "../state/player.js";
import { voicesHere } from "../state/session-speech.js";
import { canShake } from "../state/session-touch.js";
import { tellScreen } from "./routes.js";
import type { VoiceName } from "./settings-cues.js";
import "./settings-screen.js";

const REFUSED = "This device could not keep that: its storage is full or closed to this page. It holds until the page is closed.";

export class SettingsHome extends LitElement {
  static override properties = { chosen: { state: true }, sound: { state: true }, volume: { state: true }, voices: { state: true }, rowing: { state: true }, trouble: { state: true } };
  declare chosen: Preferences | undefined;
  declare sound: boolean;
  declare volume: number;
  declare voices: readonly VoiceName[] | undefined;
  declare rowing: boolean;
  declare trouble: string;
  private stops: (() => void)[] = [];

  constructor() {
    super();
    this.sound = true;
    this.volume = 1;
    this.rowing = false;
    this.trouble = "";
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.title = "Settings · Slipway";
    this.stops = [chosen.subscribe(() => (this.chosen = chosen.now)), player.subscribe(() => void this.look())];
    void chosen.ready.then(() => (this.chosen = chosen.now));
    void this.look();
    void voicesHere().then((voices) => (this.voices = voices));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.stops.forEach((stop) => stop());
  }

  override firstUpdated(): void {
    tellScreen(this);
  }

  override render() {
    return html`<settings-screen .chosen=${this.chosen} .sound=${this.sound} .volume=${this.volume} .voices=${this.voices} .shakes=${canShake()} .rowing=${this.rowing} .trouble=${this.trouble}
      @sound=${({ detail }: CustomEvent<boolean>) => this.keep(player.setSound(detail).then(() => true, () => false))}
      @volume=${({ detail }: CustomEvent<number>) => this.keep(player.setVolume(detail).then(() => true, () => false))}
      @brought=${this.follow} @choose=${({ detail }: CustomEvent<Partial<Preferences>>) => this.keep(chosen.change(detail))}></settings-screen>`;
  }

  private async look(): Promise<void> {
    this.sound = player.snapshot().sound !== "off";
    this.volume = player.volume;
    this.rowing = (await openSession().catch(() => undefined)) !== undefined;
  }

  /** Some of what was brought may have been chosen nowhere before. */
  private async follow(): Promise<void> {
    await Promise.all([chosen.follow(), player.followSettings()]);
    await this.look();
  }

  private async keep(kept: Promise<boolean>): Promise<void> {
    this.trouble = (await kept) ? "" : REFUSED;
  }
}
customElements.define("settings-home", SettingsHome);
