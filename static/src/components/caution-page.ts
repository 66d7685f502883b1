/** What to know before the first session. Accepted once on a device. Events: `accepted`, `leave`. */
import { LitElement, css, html } from "lit";
import { buttons, page, type } from "./look.js";
import { GET_HELP, stopSigns } from "./stop-signs-list.js";

export class CautionPage extends LitElement {
  static override styles = [type, buttons, page, css`
    section { display: grid; gap: 8px; }
    .bar { grid-template-columns: 1fr 2.2fr; }
    .signs { display: grid; gap: 4px; padding-left: 22px; list-style: disc; }
    .first { background: var(--hull); border-left: 6px solid var(--catch); border-radius: 6px var(--r) var(--r) 6px; padding: 14px 16px; }
  `];

  override render() {
    return html`<main>
      <div><p class="small">Read once, before your first session</p>
        <h1 tabindex="-1">Hard rowing is hard on the body</h1></div>
      <section class="first">
        <h2>Ask a doctor first</h2>
        <p>if you are not sure, or if you have or had trouble with heart, blood vessels, lungs, kidneys or blood
          sugar; if you get chest pain, faint, or lose your breath at small efforts; if you are pregnant, ill or
          feverish, had an operation lately, or take something that changes your pulse.</p>
        <p>If you have not been active for some months, begin with short, light sessions and build up over weeks.</p>
      </section>
      <section><h2>Stop at once if you feel</h2>${stopSigns()}<p><b>${GET_HELP}</b>
        This list stays one tap away while you row.</p></section>
      <section><h2>Technique before pressure</h2>
        <p>Learn the stroke from somebody who can see you row. When it falls apart, ease off: a light stroke done
          well is worth more than a hard one done badly.</p></section>
      <section><h2>Your back</h2>
        <p>Never row hard through back pain. Get up for a moment at least every half hour on the machine, and let
          weekly distance grow slowly.</p></section>
      <section><h2>Heat and water</h2>
        <p>Row with a fan or moving air, and drink. In a hot, damp room do less, rest more, or leave it for a cooler hour.</p></section>
      <section><h2>Children and older rowers</h2>
        <p>Children: short, light, technique first, with an adult beside them. Older rowers: more time to warm up and
          to come down; go by how it feels and whether you can talk, not by a number.</p></section>
      <section><h2>People on the spot come first</h2>
        <p>Your coach, the staff and the rules where you row outrank anything on this screen. Splits, distances and
          times marked “about” are estimates, and nothing here is medical advice.</p></section>
      <div class="bar"><button type="button" @click=${() => this.dispatchEvent(new CustomEvent("leave"))}>Not now</button>
        <button type="button" class="go" @click=${this.accept}>I have read this, go on</button></div>
    </main>`;
  }

  private accept(): void {
    this.dispatchEvent(new CustomEvent("accepted"));
  }
}
customElements.define("caution-page", CautionPage);
