/** The whole page: which screen the address asks for, links without a new page, the theme, the keyboard's place. */
import { LitElement, css, html, type TemplateResult } from "lit";
import type { Source } from "../data/plans.js";
import { chosen } from "../state/chosen.js";
import { routeOf, type Dress, type Route, type Running } from "./routes.js";
import "./plans-home.js";
import "./plan-opened.js";
import "./session-flow.js";

export class SlipwayApp extends LitElement {
  static override properties = { route: { state: true }, lacking: { state: true } };
  declare route: Route;
  declare lacking: boolean;
  private dressed: Dress = "reading";
  private readonly light = matchMedia("(prefers-color-scheme: light)");
  private readonly follow = () => this.dress();
  private stopFollowing = (): void => {};
  private readonly arrive = () => this.show();

  constructor() {
    super();
    this.route = routeOf(this.here());
    this.lacking = false;
  }

  static override styles = css`:host { display: block; } main { padding: 18px var(--side); } a { color: inherit; }`;

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener("popstate", this.arrive);
    this.light.addEventListener("change", this.follow);
    this.stopFollowing = chosen.subscribe(this.follow);
    this.addEventListener("go", (event) => this.go((event as CustomEvent<string>).detail));
    this.addEventListener("click", (event) => this.followLink(event));
    this.addEventListener("screen-changed", (event) => {
      this.dress((event as CustomEvent<Dress>).detail);
      this.greet();
    });
    this.dress();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener("popstate", this.arrive);
    this.light.removeEventListener("change", this.follow);
    this.stopFollowing();
  }

  override render() {
    const { route } = this;
    if (route.screen === "plan") return html`<plan-opened .source=${route.source} .name=${route.name}></plan-opened>`;
    if (route.screen === "row") return html`<session-flow .source=${route.source} .name=${route.name}></session-flow>`;
    if (route.screen === "link") return this.link(route);
    if (route.screen === "write") return this.write(route.source, route.name);
    if (route.screen === "technique") return this.technique();
    if (route.screen === "athlete") return this.athlete();
    if (route.screen === "settings") return this.settings();
    if (route.screen === "log") return this.log(route.session);
    if (route.screen === "wall") return this.wall(route);
    if (route.screen === "prompter") return this.prompter(route);
    if (route.screen === "afar") return this.sharing(html`<wall-afar .wall=${route.wall}>${this.coming("Wall")}</wall-afar>`);
    if (route.screen === "walls") return this.sharing(html`<walls-page .key=${route.key} .source=${route.source} .name=${route.name}>${this.coming("Walls")}</walls-page>`);
    return this.first();
  }

  /** A page of its own build: until that is here, what stands inside its element is shown. */
  private technique() {
    this.fetchLater();
    return html`<technique-page>${this.coming("Technique")}</technique-page>`;
  }

  /** Links and walls led from afar need more than the first load holds. */
  private link(route: { carried: string } | { id: string }) {
    const [carried, short] = "id" in route ? [undefined, route.id] : [route.carried, undefined];
    return this.sharing(html`<link-opened .carried=${carried} .short=${short}>${this.coming("A plan by a link")}</link-opened>`);
  }

  private sharing(screen: TemplateResult): TemplateResult {
    import("./sharing.js").catch(() => (this.lacking = true));
    return screen;
  }

  private write(source: Source | undefined, name: string | undefined) {
    this.fetchLater();
    return html`<write-home .source=${source} .name=${name}>${this.coming("Write a plan")}</write-home>`;
  }

  private athlete() {
    this.fetchLater();
    return html`<athlete-home>${this.coming("Your results")}</athlete-home>`;
  }

  private settings() {
    this.fetchLater();
    return html`<settings-home>${this.coming("Settings")}</settings-home>`;
  }

  private log(session: string) {
    this.fetchLater();
    return html`<log-home .session=${session}>${this.coming("Log")}</log-home>`;
  }

  private wall({ source, name }: Route & { screen: Running }) {
    this.fetchLater();
    return html`<wall-home .source=${source} .name=${name}>${this.coming("Wall")}</wall-home>`;
  }

  private prompter({ source, name }: Route & { screen: Running }) {
    this.fetchLater();
    return html`<prompter-home .source=${source} .name=${name}>${this.coming("Prompter")}</prompter-home>`;
  }

  private fetchLater(): void {
    import("./later.js").catch(() => (this.lacking = true));
  }

  private coming(title: string) {
    return html`<main><h1 tabindex="-1">${title}</h1>
      <p role="status">${this.lacking ? "This page needs signal the first time, and there is none." : "Opening …"}</p><a href="/">All plans</a></main>`;
  }

  /** Where we are. */
  protected here(): Pick<Location, "pathname" | "search" | "hash"> {
    return location;
  }

  protected moveTo(address: string): void {
    history.pushState(null, "", address);
  }

  protected first(): TemplateResult {
    return html`<plans-home></plans-home>`;
  }

  private go(address: string): void {
    this.moveTo(address);
    this.show();
  }

  private show(): void {
    this.route = routeOf(this.here());
    this.dress("reading");
    scrollTo(0, 0);
    this.greet();
  }

  /** A theme that was chosen holds everywhere; else rowing is dark water, and reading follows the device. */
  private dress(dress = this.dressed): void {
    this.dressed = dress;
    const { theme } = chosen.now;
    const byDevice = dress === "rowing" || !this.light.matches ? "dark" : "light";
    document.documentElement.dataset["theme"] = theme === "device" ? byDevice : theme;
  }

  /** A new screen starts at its heading, for those who hear it or go by the keyboard; who already writes in it is left alone. */
  private greet(): void {
    requestAnimationFrame(() => {
      if (!keyboardIn(document)?.matches("input, textarea, select")) headingIn(this.renderRoot)?.focus({ preventScroll: true });
    });
  }

  private followLink(event: MouseEvent): void {
    if (event.defaultPrevented || event.button || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    const link = event.composedPath().find((node): node is HTMLAnchorElement => node instanceof HTMLAnchorElement);
    if (!link || link.origin !== location.origin || link.target || link.hasAttribute("download")) return;
    event.preventDefault();
    this.go(link.pathname + link.search + link.hash);
  }
}
customElements.define("slipway-app", SlipwayApp);

function keyboardIn(root: DocumentOrShadowRoot): Element | null {
  const active = root.activeElement;
  return active?.shadowRoot?.activeElement ? keyboardIn(active.shadowRoot) : active;
}

function headingIn(root: ParentNode): HTMLElement | null {
  for (const element of root.querySelectorAll<HTMLElement>("*")) {
    if (element.matches("h1[tabindex]")) return element;
    const inside = element.shadowRoot && headingIn(element.shadowRoot);
    if (inside) return inside;
  }
  return null;
}
