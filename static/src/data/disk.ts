/** The records on disk, in IndexedDB: an access that survives lost connections, and takes back what is not answered. */
import { openDB, type IDBPDatabase } from "idb";
import { alone } from "../plan/alone.js";
import { isJoined, joinedRecord } from "./joining.js";
import { KEY_PATHS, type Durability, type Shape, type Shelf, type Step, type Store, type Value } from "./shape.js";
import { CalledOff, Silence, type Silences } from "./silence.js";

const NAME = alone ? `slipway-${alone.id}` : "slipway";
const VERSION = 3;

export type Handle = IDBPDatabase<Shape>;
export type Open = (dropped: () => void) => Promise<Handle>;

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

export interface Disk extends Shelf {
  /** Opens the connection, if there is none. Rejects where that is refused, and with Silence where there is no answer. */
  connect(): Promise<Handle>;
  /** Whether it has ever been open. */
  wasOpen(): boolean;
  /** Makes these changes in their order, so many at a time; what is put is joined to what is there, as data/joining says. */
  join(steps: readonly Step[]): Promise<void>;
}

/** Far fewer than storage takes until it would be taken for silent, on the slowest device. */
export const STEPS_AT_ONCE = 500;

/** The disk over connections made by `open`; `makeRoom` is asked when it is full, and says whether to try again. */
export function makeDisk(open: Open, makeRoom: (db: Handle) => Promise<boolean>, silences: Silences): Disk {
  let handle: Promise<Handle> | undefined;
  let wasOpen = false;

  function connect(): Promise<Handle> {
    if (handle) return handle;
    const opened = open(() => forget(opening));
    const opening = silences.inTime(opened, () => void opened.then((db) => db.close()).catch(() => undefined));
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
        const isLost = isLostConnection(error) && !tried.opening;
        if (isLost || error instanceof Silence) {
          forget(opening);
          opening.then((db) => db.close()).catch(() => undefined);
        }
        if (isLost) {
          tried.opening = true;
          continue;
        }
        if (!isFull(error) || tried.clearing || !(await makeRoom(await opening).catch(() => false))) throw error;
        tried.clearing = true;
      }
    }
  }

  /** What is asked in a transaction, which is aborted where no answer comes: so it can be asked again and is done once. */
  function within<Result>(transaction: { abort(): void; readonly done: Promise<void> }, answer: Promise<Result>, calledOff?: AbortSignal): Promise<Result> {
    transaction.done.catch(() => undefined);
    const takeBack = () => {
      try {
        transaction.abort();
      } catch {
        // Its commit is under way.
      }
    };
    calledOff?.addEventListener("abort", takeBack);
    return silences.answered(answer, takeBack).finally(() => calledOff?.removeEventListener("abort", takeBack));
  }

  function writeEach(steps: readonly Step[], take: Take, durability: Durability, calledOff?: AbortSignal): Promise<void> {
    return withHandle(async (db) => {
      if (calledOff?.aborted) throw new CalledOff();
      const transaction = db.transaction([...new Set(steps.map(({ store }) => store))], "readwrite", { durability });
      const taken = steps.map((step) => take(step, transaction.objectStore(step.store) as unknown as Records));
      return within(transaction, finished(transaction, [...taken, transaction.done]), calledOff);
    });
  }

  return {
    connect,
    wasOpen: () => wasOpen,
    get: (store, key) =>
      withHandle((db) => {
        const transaction = db.transaction(store);
        return within(transaction, transaction.store.get(key));
      }),
    all: (store, from, to) =>
      withHandle((db) => {
        const transaction = db.transaction(store);
        return within(transaction, transaction.store.getAll(from === undefined ? undefined : IDBKeyRange.bound(from, to)));
      }),
    keys: (store) =>
      withHandle((db) => {
        const transaction = db.transaction(store);
        return within(transaction, transaction.store.getAllKeys());
      }),
    write: (steps, durability = "relaxed", calledOff) => writeEach(steps, take, durability, calledOff),
    join: async (steps) => {
      for (let first = 0; first < steps.length; first += STEPS_AT_ONCE) await writeEach(steps.slice(first, first + STEPS_AT_ONCE), join, "strict");
    },
    change: (store, key, next) =>
      withHandle((db) => {
        const transaction = db.transaction(store, "readwrite");
        const change = async () => {
          const value = next(await transaction.store.get(key));
          await finished(transaction, [transaction.store.put(value), transaction.done]);
          return value;
        };
        return within(transaction, change());
      }),
  };
}

type Take = (step: Step, records: Records) => Promise<unknown>;

async function join(step: Step, records: Records): Promise<unknown> {
  if (!("put" in step) || !isJoined(step.store)) return take(step, records);
  const there = await records.get((step.put as unknown as Readonly<Record<string, unknown>>)[KEY_PATHS[step.store] as string]);
  return records.put(joinedRecord(step.store, there as Value<Store>, step.put as Value<Store>));
}

interface Records {
  get(key: unknown): Promise<unknown>;
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

function isFull(error: unknown): boolean {
  return (error as Error | undefined)?.name === "QuotaExceededError";
}

/** Whether a request failed because its connection was gone, so that a new one may well answer. */
export function isLostConnection(error: unknown): boolean {
  const { name, message } = (error ?? {}) as { name?: string; message?: string };
  if (name === "InvalidStateError" || name === "AbortError" || name === "UnknownError") return true;
  return /connection|server lost|closing/i.test(message ?? "");
}
