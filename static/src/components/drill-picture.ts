/** The drawing of the drill of that name, as the coach wrote it; nothing at all for one that the library does not know. */
import { LitElement, css, html, nothing, type PropertyValues } from "lit";
import { drillNamed } from "../data/technique.js";

export class DrillPicture extends LitElement {
  static override properties = { name: {}, known: { reflect: true } };
  declare name: string;
  /** Its name in the library, once that is found; also an attribute, for those who have room for a picture. */
  declare known: string | undefined;

  static override styles = css`stroke-figure { width: 100%; height: 100%; }`;

  override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has("name")) return;
    this.known = undefined;
    void this.find(this.name);
  }

  override render() {
    return this.known ? html`<stroke-figure name=${this.known}></stroke-figure>` : nothing;
  }

  private async find(name: string): Promise<void> {
    const [drill] = await Promise.all([drillNamed(name), import("./later.js").catch(() => undefined)]);
    if (name === this.name) this.known = drill?.name;
  }
}
customElements.define("drill-picture", DrillPicture);
