/** The addresses of the screens, and how one asks for another. */
import type { Source } from "../data/plans.js";
import { alone } from "../plan/alone.js";

export type Route =
  | { screen: "first" }
  | { screen: "technique" }
  | { screen: "athlete" }
  | { screen: "settings" }
  | { screen: "log"; session: string }
  | { screen: "write"; source?: Source; name?: string }
  | { screen: "plan"; source: Source; name: string }
  | { screen: "link"; carried: string }
  | { screen: "link"; id: string }
  | { screen: "afar"; wall: string }
  | { screen: "walls"; key: string; source?: Source; name?: string }
  | { screen: Running; source?: Source; name?: string };

/** The screens that run a session. */
export type Running = "row" | "wall" | "prompter";
/** Those, and the one that changes a plan: each is told of which. */
export type OfAPlan = Running | "write";

const OF_A_PLAN = /^\/(row|wall|prompter|write)$/;
const PLAN = /^\/(plan|mine)\/([^/]+)\/?$/;
const AFAR = /^\/wall\/([^/]+)\/?$/;
const LINK = /^\/p(?:\/([^/]*))?\/?$/;
/** By what the address of a row screen names its plan. */
const NAMED_BY: Record<Source, string> = { "built-in": "plan", mine: "mine", sent: "sent" };

export function routeOf(address: Pick<Location, "pathname" | "search" | "hash">): Route {
  const plan = PLAN.exec(address.pathname);
  if (plan) return { screen: "plan", source: plan[1] === "mine" ? "mine" : "built-in", name: decoded(plan[2]!) };
  const link = LINK.exec(address.pathname);
  if (link) return link[1] ? { screen: "link", id: decoded(link[1]) } : { screen: "link", carried: address.hash.slice(1) };
  if (address.pathname === "/technique") return { screen: "technique" };
  if (address.pathname === "/athlete") return { screen: "athlete" };
  if (address.pathname === "/settings") return { screen: "settings" };
  if (address.pathname === "/log") return { screen: "log", session: address.hash.slice(1) };
  const afar = AFAR.exec(address.pathname);
  if (afar) return { screen: "afar", wall: decoded(afar[1]!) };
  if (address.pathname === "/walls") return { ...planRoute("row", address.search), screen: "walls", key: address.hash.slice(1) };
  const named = OF_A_PLAN.exec(address.pathname);
  return named ? planRoute(named[1] as OfAPlan, address.search) : { screen: "first" };
}

/** Where a plan is rowed; a reload on the set-up card comes back to it. */
export function rowAddress(source: Source, name: string): string {
  return `/row${queryOf(source, name)}`;
}

/** Where a plan is written: one's own in its place, another as a copy. */
export function writeAddress(source: Source, name: string): string {
  return `/write${queryOf(source, name)}`;
}

/** How a screen that runs or changes a plan is told which. */
export function queryOf(source: Source, name: string): string {
  return `?${NAMED_BY[source]}=${encodeURIComponent(name)}`;
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

function planRoute(screen: OfAPlan, text: string): Route {
  const search = new URLSearchParams(text);
  const source = (Object.keys(NAMED_BY) as Source[]).find((source) => search.get(NAMED_BY[source]));
  return source ? { screen, source, name: search.get(NAMED_BY[source])! } : { screen };
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
