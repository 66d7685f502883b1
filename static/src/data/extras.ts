/** What a device that has no room left can do without: everything here is fetched again when there is signal. */
import type { IDBPDatabase } from "idb";
import type { Shape } from "./shape.js";

/** The cache of the app itself, which runs with no signal, is named so by workbox. */
const NEEDED = /-precache-/;

/** Takes the extras off this device: never a plan, a session or its log. True when that may have made room. */
export async function dropExtras(db: IDBPDatabase<Shape>): Promise<boolean> {
  const [screens, library] = await Promise.all([dropCaches(), dropLibrary(db)]);
  return screens || library;
}

/** The scripts of screens that nobody needs in order to row. */
async function dropCaches(): Promise<boolean> {
  if (!("caches" in globalThis)) return false;
  const extra = (await caches.keys()).filter((name) => !NEEDED.test(name));
  return (await Promise.all(extra.map((name) => caches.delete(name)))).includes(true);
}

async function dropLibrary(db: IDBPDatabase<Shape>): Promise<boolean> {
  const kept = await db.count("technique");
  if (kept) await db.clear("technique");
  return kept > 0;
}
