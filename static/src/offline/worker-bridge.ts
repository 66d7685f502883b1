/** The page's side of the service worker: registering it, the proof that everything is saved, updates. */
import { alone } from "../plan/alone.js";

const WORKER = "/sw.js";
const ANSWER_MS = 10_000;

/**
 * Whether the app will open with no signal. `proved`: the worker found every file in its cache, just now;
 * `not-yet`: some are missing, or the worker is still installing; `impossible`: this connection is not secure,
 * or the browser has no service workers.
 */
export interface SavedProof {
  state: "proved" | "not-yet" | "impossible";
  /** Addresses that the cache could not answer. */
  missing: readonly string[];
}

interface Policy {
  createScriptURL(address: string): string;
}

interface PolicyMaker {
  createPolicy(name: string, rules: { createScriptURL(address: string): string }): Policy;
}

let policy: Policy | undefined;

/** An address of ours in the form that Trusted Types let scripts be loaded from. Throws for any other address. */
export function ourScript(address: string): string {
  policy ??= makePolicy();
  return policy.createScriptURL(address);
}

function makePolicy(): Policy {
  const rules = { createScriptURL: checked };
  const maker = (globalThis as { trustedTypes?: PolicyMaker }).trustedTypes;
  return maker?.createPolicy("slipway", rules) ?? rules;
}

function checked(address: string): string {
  const ours = address === WORKER || /^\/static\/dist\/[\w.-]+\.js$/.test(address);
  const brought = alone && /^data:text\/javascript;base64,[\w+/=]+$/.test(address);
  if (!ours && !brought) throw new TypeError(`no script may be loaded from "${address}": only ${WORKER} and /static/dist/`);
  return address;
}

/** Has the service worker keep what is needed with no signal; does nothing where there can be none. Call once, at the start. */
export async function register(): Promise<void> {
  if (!container()) return;
  try {
    const registration = await container()!.register(ourScript(WORKER), { scope: "/", updateViaCache: "none" });
    watchForUpdates(registration);
  } catch {
    // No signal at the first visit, or storage is off: savedProof() says "not-yet".
  }
}

/** Whether this browser and connection can keep the app at all; a one-file page is kept already. */
export function canSave(): boolean {
  return alone !== undefined || container() !== undefined;
}

/** Asks the worker to look into its cache for every file of the app. */
export async function savedProof(): Promise<SavedProof> {
  if (alone) return { state: "proved", missing: [] };
  if (!container()) return { state: "impossible", missing: [] };
  const worker = await controller();
  const missing = worker ? await ask(worker) : undefined;
  if (!missing) return { state: "not-yet", missing: [] };
  return { state: missing.length ? "not-yet" : "proved", missing };
}

/** Whether a newer build of the app is installed and waits to take over. */
export async function updateIsReady(): Promise<boolean> {
  const registration = await container()?.getRegistration();
  return Boolean(registration?.waiting && registration.active);
}

/** Tells when a newer build has become ready; the answer stops the telling. */
export function onUpdateReady(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Looks for a newer build now; for pages that stay open for days. */
export async function lookForUpdate(): Promise<void> {
  const registration = await container()?.getRegistration();
  await registration?.update().catch(() => undefined);
}

/**
 * Lets the newer build take over and opens the page anew. Only on the person's wish and never while a session
 * runs anywhere: ask state/player's `sessionIsOpen()` first.
 */
export async function applyUpdate(): Promise<void> {
  const registration = await container()?.getRegistration();
  if (!registration?.waiting) return;
  const taken = new Promise((done) => container()!.addEventListener("controllerchange", done, { once: true }));
  registration.waiting.postMessage({ kind: "take-over" });
  await taken;
  location.reload();
}

const listeners = new Set<() => void>();

function watchForUpdates(registration: ServiceWorkerRegistration): void {
  registration.addEventListener("updatefound", () => {
    const installing = registration.installing;
    installing?.addEventListener("statechange", () => {
      if (installing.state === "installed" && registration.active) listeners.forEach((tell) => tell());
    });
  });
}

function container(): ServiceWorkerContainer | undefined {
  return !alone && globalThis.isSecureContext && "serviceWorker" in navigator ? navigator.serviceWorker : undefined;
}

/** The worker that answers this page's requests, once there is one. */
async function controller(): Promise<ServiceWorker | null> {
  const { serviceWorker } = navigator;
  if (serviceWorker.controller) return serviceWorker.controller;
  const changed = new Promise((done) => serviceWorker.addEventListener("controllerchange", done, { once: true }));
  // One that took its pages while this one was on its way has missed it.
  const registration = await serviceWorker.getRegistration();
  registration?.active?.postMessage({ kind: "take-pages" });
  await Promise.race([changed, pause(ANSWER_MS)]);
  return serviceWorker.controller;
}

/** What is missing in the worker's cache; undefined when it does not answer in time. */
async function ask(worker: ServiceWorker): Promise<string[] | undefined> {
  const { port1, port2 } = new MessageChannel();
  const answer = new Promise<string[]>((done) => {
    port1.onmessage = (event: MessageEvent<{ missing: string[] }>) => done(event.data.missing);
  });
  worker.postMessage({ kind: "is-everything-saved" }, [port2]);
  const missing = await Promise.race([answer, pause(ANSWER_MS)]);
  port1.close();
  return missing;
}

function pause(milliseconds: number): Promise<undefined> {
  return new Promise((done) => setTimeout(() => done(undefined), milliseconds));
}
