/**
 * What is kept on this device, in IndexedDB: its shape, and an access that survives lost connections.
 *
 * Browsers close the connections of pages in the background (WebKit above all), so every request that fails for
 * such a reason drops the handle, opens anew and is tried once more. Where no database can be opened at all, the
 * same records are held in memory while the page is open, and `where()` says so.
 */
import { openDB, type DBSchema, type IDBPDatabase, type StoreNames } from "idb";
import { dropExtras } from "./extras.js";
import type { AthleteRecord } from "./athlete.js";
import type { Entry } from "./log.js";
import type { PlanRecord } from "./plans.js";
import type { FactRecord, Heartbeat, SessionRecord } from "./sessions.js";
import type { Settings } from "./settings.js";
import type { TechniqueRecord } from "./technique.js";
import { alone } from "../plan/alone.js";
import { memoryShelf } from "./memory-shelf.js";

export interface Shape extends DBSchema {
  plans: { key: string; value: PlanRecord };
  /** Sessions that were not ended: few, and read whenever the app opens. */
  sessions: { key: string; value: SessionRecord };
  /** Sessions that were ended. */
  log: { key: string; value: SessionRecord };
  /** What those come to, and what was said of them. */
  entries: { key: string; value: Entry };
  facts: { key: [string, number]; value: FactRecord };
  heartbeats: { key: string; value: Heartbeat };
  athletes: { key: string; value: AthleteRecord };
  settings: { key: string; value: { name: string; values: Partial<Settings> } };
  technique: { key: string; value: TechniqueRecord };
}

export type Store = StoreNames<Shape>;
export type Value<Name extends Store> = Shape[Name]["value"];
export type Key<Name extends Store> = Shape[Name]["key"];

/** `strict` waits until the record has left for the disk; `relaxed` leaves the moment to the system. */
export type Durability = "strict" | "relaxed";

/** One of several changes that are made together or not at all. */
export type Step =
  | { [Name in Store]: { store: Name; put: Value<Name> } }[Store]
  | { [Name in Store]: { store: Name; remove: Key<Name>; to?: Key<Name> } }[Store];

/** Records by store and key. */
export interface Shelf {
  get<Name extends Store>(store: Name, key: Key<Name>): Promise<Value<Name> | undefined>;
  all<Name extends Store>(store: Name, from?: Key<Name>, to?: Key<Name>): Promise<Value<Name>[]>;
  keys<Name extends Store>(store: Name): Promise<Key<Name>[]>;
  /** Makes all of these changes or none; `remove` with `to` takes away everything from one key to the other. */
  write(steps: readonly Step[], durability?: Durability): Promise<void>;
  /** Puts what `next` makes of the record there is, and answers it; no other write comes between. */
  change<Name extends Store>(store: Name, key: Key<Name>, next: (before: Value<Name> | undefined) => Value<Name>): Promise<Value<Name>>;
}

export interface Database extends Shelf {
  put<Name extends Store>(store: Name, value: Value<Name>, durability?: Durability): Promise<void>;
  remove<Name extends Store>(store: Name, key: Key<Name>): Promise<void>;
  /** Where records go: `memory` when nothing can be stored, so that they are gone with the page. */
  where(): "disk" | "memory";
  /** Whether nothing can be stored because a newer build has written here, in a way that this one cannot read. */
  isNewer(): boolean;
  /** Opens the database again if the browser has closed it, or could not open it; to be called when the page comes back. */
  reopen(): Promise<void>;
}

const NAME = alone ? `slipway-${alone.id}` : "slipway";
const VERSION = 3;
const KEY_PATHS: { [Name in Store]: string | string[] } = {
  plans: "id",
  sessions: "id",
  log: "id",
  entries: "id",
  facts: ["session", "number"],
  heartbeats: "session",
  athletes: "id",
  settings: "name",
  technique: "id",
};

/** What was kept in memory and is worth taking to disk when that comes back. */
const LASTING: readonly Store[] = ["plans", "sessions", "log", "entries", "facts", "heartbeats"];
const OPENING_MS = 5000;

type Handle = IDBPDatabase<Shape>;
type Open = (dropped: () => void) => Promise<Handle>;

/** Opens the connection; `dropped` is told when it is lost or has to be given up. */
export async function openHandle(dropped: () => void): Promise<Handle> {
  return openDB<Shape>(NAME, VERSION, {
    upgrade(db) {
      for (const store of Object.keys(KEY_PATHS) as Store[]) {
        if (!db.objectStoreNames.contains(store)) db.createObjectStore(store, { keyPath: KEY_PATHS[store] });
      }
    },
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
      dropped();
    },
    terminated: dropped,
  });
}

/**
 * A database over connections made by `open`; `makeRoom` is asked when one is full, and says whether to try again.
 * Tests hand in connections that break.
 */
export function makeDatabase(open: Open, makeRoom: (db: Handle) => Promise<boolean> = async () => false): Database {
  let handle: Promise<Handle> | undefined;
  let wasOpen = false;
  let memory: Shelf | undefined;
  let newer = false;

  function connect(): Promise<Handle> {
    if (handle) return handle;
    const opening = inTime(open(() => forget(opening)));
    opening.then(() => (wasOpen = true), () => forget(opening));
    return (handle = opening);
  }

  function forget(old: Promise<Handle> | undefined): void {
    if (handle === old) handle = undefined;
  }

  /** A connection that is gone is opened anew, and a full device cleared of what it can do without, once each. */
  async function withHandle<Result>(work: (db: Handle) => Promise<Result>): Promise<Result> {
    const tried = { opening: false, clearing: false };
    for (;;) {
      const opening = connect();
      try {
        return await work(await opening);
      } catch (error) {
        if (isLostConnection(error) && !tried.opening) {
          tried.opening = true;
          forget(opening);
          opening.then((db) => db.close()).catch(() => undefined);
        } else if (isFull(error) && !tried.clearing && (await makeRoom(await opening).catch(() => false))) {
          tried.clearing = true;
        } else throw error;
      }
    }
  }

  /**
   * On disk if that can be opened, else in memory. What was open before and is not now throws instead: what it holds
   * must not be taken for gone.
   */
  async function shelf(): Promise<Shelf> {
    if (memory) return memory;
    try {
      await connect();
    } catch (error) {
      if (wasOpen) return disk;
      newer = isNewer(error);
      memory ??= memoryShelf(KEY_PATHS);
      return memory;
    }
    return disk;
  }

  /** Where a disk that could not be opened can be now: what was kept in memory meanwhile goes there. */
  async function comeBack(held: Shelf): Promise<void> {
    await connect();
    const steps = await Promise.all(LASTING.map(async (store) => (await held.all(store)).map((put) => ({ store, put }) as Step)));
    if (steps.flat().length) await disk.write(steps.flat(), "strict");
    memory = undefined;
  }

  const disk: Shelf = {
    get: (store, key) => withHandle((db) => db.get(store, key)),
    all: (store, from, to) =>
      withHandle((db) => db.getAll(store, from === undefined ? undefined : IDBKeyRange.bound(from, to))),
    keys: (store) => withHandle((db) => db.getAllKeys(store)),
    write: (steps, durability = "relaxed") =>
      withHandle(async (db) => {
        const transaction = db.transaction([...new Set(steps.map(({ store }) => store))], "readwrite", { durability });
        const taken = steps.map((step) => take(step, transaction.objectStore(step.store) as unknown as Records));
        await finished(transaction, [...taken, transaction.done]);
      }),
    change: (store, key, next) =>
      withHandle(async (db) => {
        const transaction = db.transaction(store, "readwrite");
        const value = next(await transaction.store.get(key));
        await finished(transaction, [transaction.store.put(value), transaction.done]);
        return value;
      }),
  };

  return {
    get: async (store, key) => (await shelf()).get(store, key),
    all: async (store, from, to) => (await shelf()).all(store, from, to),
    keys: async (store) => (await shelf()).keys(store),
    write: async (steps, durability) => (await shelf()).write(steps, durability),
    put: async (store, value, durability) => (await shelf()).write([{ store, put: value } as Step], durability),
    remove: async (store, key) => (await shelf()).write([{ store, remove: key } as Step]),
    change: async (store, key, next) => (await shelf()).change(store, key, next),
    where: () => (memory ? "memory" : "disk"),
    isNewer: () => newer,
    reopen: async () => {
      await (memory ? comeBack(memory) : withHandle((db) => db.count("settings"))).catch(() => undefined);
    },
  };
}

interface Records {
  put(value: unknown): Promise<unknown>;
  delete(key: unknown): Promise<unknown>;
}

function take(step: Step, records: Records): Promise<unknown> {
  if ("put" in step) return records.put(step.put);
  return records.delete(step.to === undefined ? step.remove : IDBKeyRange.bound(step.remove, step.to));
}

/** An aborted transaction has a reason, which its requests do not tell. */
async function finished(transaction: { readonly error?: unknown }, all: readonly Promise<unknown>[]): Promise<void> {
  try {
    await Promise.all(all);
  } catch (error) {
    await Promise.allSettled(all);
    throw transaction.error ?? error;
  }
}

/** Some engines leave an opening without an answer. */
function inTime(opening: Promise<Handle>): Promise<Handle> {
  return new Promise((done, failed) => {
    const timer = setTimeout(() => {
      failed(new Error(`no answer within ${OPENING_MS} ms`));
      opening.then((db) => db.close()).catch(() => undefined);
    }, OPENING_MS);
    opening.then(done, failed).finally(() => clearTimeout(timer));
  });
}

function isFull(error: unknown): boolean {
  return (error as Error | undefined)?.name === "QuotaExceededError";
}

function isNewer(error: unknown): boolean {
  return (error as Error | undefined)?.name === "VersionError";
}

/** Whether a request failed because its connection was gone, so that a new one may well answer. */
export function isLostConnection(error: unknown): boolean {
  const { name, message } = (error ?? {}) as { name?: string; message?: string };
  if (name === "InvalidStateError" || name === "AbortError" || name === "UnknownError") return true;
  return /connection|server lost|closing/i.test(message ?? "");
}

/** The database of this device. */
export const database: Database = makeDatabase(openHandle, dropExtras);
