/** What is kept after everything else and holds nothing up: the scripts of screens that nobody needs in order to row. */
import { LATER } from "./precache-list.js";

const CACHE = "later";

export function isLater(url: URL): boolean {
  return url.origin === location.origin && LATER.includes(url.pathname);
}

/** The file from the cache, or from the network, to be kept. */
export async function laterFile(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request.url, { ignoreVary: true });
  if (kept) return kept;
  const answer = await fetch(request);
  if (answer.ok) await cache.put(request.url, answer.clone());
  return answer;
}

/** Fetches those that are missing and lets go of those of another build; without a signal it is left for next time. */
export async function keepLater(): Promise<void> {
  const cache = await caches.open(CACHE);
  const held = (await cache.keys()).map(({ url }) => new URL(url));
  await Promise.all(held.filter((url) => !isLater(url)).map((url) => cache.delete(url)));
  const kept = held.map((url) => url.pathname);
  const missing = LATER.filter((path) => !kept.includes(path));
  await Promise.all(missing.map((path) => cache.add(path).catch(() => undefined)));
}
