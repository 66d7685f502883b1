/**
 * The service worker: what happens at each event.
 *
 * A newer build waits until every window of the old one is closed, or until a page, on a person's wish and while no
 * session runs, tells it to take over. Only the very first one takes its page at once, so that the first visit can
 * already be proved to be saved.
 */
import { missing, precache, rules } from "./caching-rules.js";
import { keepLater } from "./later-files.js";

interface Extendable extends Event {
  waitUntil(work: Promise<unknown>): void;
}

interface Asked extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

interface Told extends Extendable {
  readonly data: { kind?: string } | null;
  readonly ports: readonly MessagePort[];
}

interface Scope {
  readonly registration: ServiceWorkerRegistration;
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(name: "install" | "activate", listener: (event: Extendable) => void): void;
  addEventListener(name: "fetch", listener: (event: Asked) => void): void;
  addEventListener(name: "message", listener: (event: Told) => void): void;
}

const scope = globalThis as unknown as Scope;
const kept = precache();
const router = rules(kept);
let first = false;

scope.addEventListener("install", (event) => {
  first = !scope.registration.active;
  event.waitUntil(kept.install(event as never));
});

scope.addEventListener("activate", (event) => {
  event.waitUntil(kept.activate(event as never).then(() => (first ? scope.clients.claim() : undefined)));
});

scope.addEventListener("fetch", (event) => {
  const answer = router.handleRequest({ request: event.request, event: event as never });
  if (answer) event.respondWith(answer);
});

scope.addEventListener("message", (event) => {
  if (event.data?.kind === "take-over") event.waitUntil(scope.skipWaiting());
  if (event.data?.kind === "take-pages") event.waitUntil(scope.clients.claim());
  if (event.data?.kind === "is-everything-saved") {
    event.waitUntil(missing(kept).then((urls) => event.ports[0]?.postMessage({ missing: urls })).then(keepLater));
  }
});
