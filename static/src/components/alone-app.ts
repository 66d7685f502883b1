/** The app in a one-file page: one plan, and addresses that live in memory, since a file has no others. Property `home`. */
import { html } from "lit";
import { routeOf } from "./routes.js";
import { SlipwayApp } from "./slipway-app.js";

/** Only paths matter; there is no such place. */
const NOWHERE = "https://alone.invalid";

export class AloneApp extends SlipwayApp {
  home = "/";
  private at: string | undefined;

  /** Asked before there is an address at all. */
  protected override here(): URL {
    return new URL(this.at ?? NOWHERE);
  }

  protected override moveTo(address: string): void {
    this.at = new URL(address, NOWHERE).href;
  }

  /** There are no other plans to choose from. */
  protected override first() {
    const route = routeOf(new URL(this.home, NOWHERE));
    return route.screen === "plan" ? html`<plan-opened .source=${route.source} .name=${route.name}></plan-opened>` : html``;
  }
}
customElements.define("alone-app", AloneApp);
