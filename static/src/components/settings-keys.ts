/** Which keys steer a session, and whether they do. Property: `chosen`. Event: `choose` (detail: what has changed), which bubbles. */
import { LitElement, css, html, nothing } from "lit";
import type { Preferences } from "../data/preferences.js";
import { mediaKeysKnown } from "../state/media-keys.js";
import { choices, ON_OR_OFF, tiles } from "./choice-look.js";
import { type } from "./look.js";
import { BINDINGS } from "./rowing-keys.js";

const MEDIA: readonly { shown: string; does: string }[] = [
  { shown: "Pause, play", does: "Hold, go on" },
  { shown: "Next", does: "As page down" },
  { shown: "Previous", does: "Back" },
];

export class SettingsKeys extends LitElement {
  static override properties = { chosen: { attribute: false } };
  declare chosen: Preferences;

  static override styles = [type, choices, css`
    section { display: grid; gap: 20px; }
    h2 { border-bottom: 2px solid var(--edge); padding-bottom: 6px; }
    legend { font-weight: 700; }
    .tiles { grid-template-columns: 1fr 1fr; }
    .tiles span { min-height: var(--target); }
    table { width: 100%; margin-top: 12px; border-collapse: collapse; }
    th, td { padding: 8px 12px 8px 0; border-bottom: 1px solid var(--line); text-align: left; vertical-align: top; line-height: 1.25; }
    th { width: 45%; }
    p { margin-top: 8px; }
  `];

  override render() {
    const { keys, media_keys } = this.chosen;
    return html`<section aria-labelledby="keys"><h2 id="keys">Keys</h2>
      <fieldset><legend>Keyboard and clicker while rowing</legend>${tiles("keys", ON_OR_OFF, keys, (value) => this.choose({ keys: value }))}
        ${keys ? table(BINDINGS) : nothing}</fieldset>
      ${mediaKeysKnown() ? html`<fieldset><legend>Headphones and lock screen</legend>${tiles("media", ON_OR_OFF, media_keys, (value) => this.choose({ media_keys: value }))}
        <p class="small">Only some systems hand these keys to a page, and some then stop other music. From the next tap on while rowing.</p>
        ${media_keys ? table(MEDIA) : nothing}</fieldset>` : nothing}
    </section>`;
  }

  private choose(changes: Partial<Preferences>): void {
    this.dispatchEvent(new CustomEvent("choose", { detail: changes, bubbles: true, composed: true }));
  }
}
customElements.define("settings-keys", SettingsKeys);

function table(rows: readonly { shown: string; does: string }[]) {
  return html`<table><thead><tr><th scope="col">Key</th><th scope="col">Does</th></tr></thead>
    <tbody>${rows.map(({ shown, does }) => html`<tr><th scope="row">${shown}</th><td>${does}</td></tr>`)}</tbody></table>`;
}
