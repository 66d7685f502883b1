/** The addresses of the screens, and how one asks for another. */
import { alone } from "../plan/alone.js";

export type Route =
  | { screen: "first" }
  | { screen: "technique" }
  | { screen: "athlete" }
  | { screen: "settings" }
  | { screen: "write"; source?: "built-in" | "mine"; name?: string }
  | { screen: "plan"; source: "built-in" | "mine"; name: string }
  | { screen: "row"; source?: "built-in" | "mine"; name?: string };

const PLAN = /^\/(plan|mine)\/([^/]+)\/?$/;

export function routeOf(address: Pick<Location, "pathname" | "search">): Route {
  const plan = PLAN.exec(address.pathname);
  if (plan) return { screen: "plan", source: plan[1] === "mine" ? "mine" : "built-in", name: decoded(plan[2]!) };
  if (address.pathname === "/technique") return { screen: "technique" };
  if (address.pathname === "/athlete") return { screen: "athlete" };
  if (address.pathname === "/settings") return { screen: "settings" };
  const search = new URLSearchParams(address.search);
  if (address.pathname === "/write") return { screen: "write", ...planIn(search) };
  return address.pathname === "/row" ? { screen: "row", ...planIn(search) } : { screen: "first" };
}

/** Where a plan is rowed; a reload on the set-up card comes back to it. */
export function rowAddress(source: "built-in" | "mine", name: string): string {
  return `/row?${planAsked(source, name)}`;
}

/** Where a plan is written: one's own in its place, a built-in one as a copy. */
export function writeAddress(source: "built-in" | "mine", name: string): string {
  return `/write?${planAsked(source, name)}`;
}

function planAsked(source: "built-in" | "mine", name: string): string {
  return `${source === "mine" ? "mine" : "plan"}=${encodeURIComponent(name)}`;
}

/** Asks the app for another address; it changes screens without a new page. */
export function goTo(from: HTMLElement, address: string): void {
  from.dispatchEvent(new CustomEvent("go", { detail: address, bubbles: true, composed: true }));
}

/** Puts another address in the place of this one, so that Back does not come to it; a file has no other addresses. */
export function replaceAddress(address: string): void {
  if (!alone) history.replaceState(null, "", address);
}

/** How a screen is to be seen: reading follows the system, rowing is dark water. */
export type Dress = "reading" | "rowing";

/** Says that another screen stands here now, so that the keyboard and the ear start at its heading. */
export function tellScreen(from: HTMLElement, dress: Dress = "reading"): void {
  from.dispatchEvent(new CustomEvent<Dress>("screen-changed", { detail: dress, bubbles: true, composed: true }));
}

function planIn(search: URLSearchParams): { source?: "built-in" | "mine"; name?: string } {
  const plan = search.get("plan");
  const mine = search.get("mine");
  if (mine) return { source: "mine", name: mine };
  return plan ? { source: "built-in", name: plan } : {};
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
