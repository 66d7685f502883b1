/**
 * What is kept on this device: on disk, or, where nothing can be stored, in memory while the page is open; `where()` says
 * which.
 *
 * Browsers close the connections of pages in the background (WebKit above all), and may leave requests without an answer:
 * what fails or waits for such a reason is asked anew over another connection. What the disk holds is never taken for
 * gone because it does not answer; only a person can choose to go on without it, until it does.
 */
import { makeDisk, openHandle, type Handle, type Open } from "./disk.js";
import { dropExtras } from "./extras.js";
import { memoryShelf, type MemoryShelf } from "./memory-shelf.js";
import { KEY_PATHS, type Durability, type Key, type Shelf, type Step, type Store, type Value } from "./shape.js";
import { Silence, Silences } from "./silence.js";

export interface Database extends Shelf {
  put<Name extends Store>(store: Name, value: Value<Name>, durability?: Durability, calledOff?: AbortSignal): Promise<void>;
  remove<Name extends Store>(store: Name, key: Key<Name>): Promise<void>;
  /** Where records go: `memory` when nothing can be stored, so that they are gone with the page. */
  where(): "disk" | "memory";
  /** Whether nothing can be stored because a newer build has written here, in a way that this one cannot read. */
  isNewer(): boolean;
  /** Opens the database again if the browser has closed it, or could not open it; to be called when the page comes back. */
  reopen(): Promise<void>;
  /** Whether storage has left what it was asked without an answer, for seconds; it is asked again and again. */
  isSilent(): boolean;
  /** While storage is silent: goes on in memory, until it answers. */
  goOnWithout(): void;
  /** Whether one goes on in memory, without what a disk holds that does not answer. */
  isWithout(): boolean;
  /** Calls `listener` when storage falls silent or answers again, or is gone on without; the answer stops that. */
  subscribe(listener: () => void): () => void;
}

/** Storage that one goes on without is asked this often whether it answers. */
const ASK_AGAIN_MS = 5000;

/** Over connections made by `open`; `makeRoom` is asked when one is full. Tests hand in connections that break. */
export function makeDatabase(open: Open, makeRoom: (db: Handle) => Promise<boolean> = async () => false): Database {
  let memory: MemoryShelf | undefined;
  let newer = false;
  let without = false;
  let coming: Promise<void> | undefined;
  const listeners = new Set<() => void>();
  const tell = () => listeners.forEach((listener) => listener());
  const silences = new Silences(tell);
  const disk = makeDisk(open, makeRoom, silences);

  /**
   * On disk if that can be opened, else in memory. What was open before and is not now throws instead, and so does what
   * does not answer: what it holds must not be taken for gone.
   */
  async function shelf(): Promise<Shelf> {
    if (memory) return memory;
    try {
      await disk.connect();
    } catch (error) {
      if (error instanceof Silence) throw error;
      if (disk.wasOpen()) return disk;
      newer = isNewer(error);
      memory ??= memoryShelf(KEY_PATHS);
      return memory;
    }
    return disk;
  }

  /** What is not answered is asked again, for as long as it takes. */
  async function asked<Result>(work: (shelf: Shelf) => Promise<Result>): Promise<Result> {
    for (;;) {
      try {
        // What memory has taken until the disk counts again is joined: nothing may come between finding it and using it.
        return await work(memory ?? (await shelf()));
      } catch (error) {
        if (!(error instanceof Silence)) throw error;
      }
    }
  }

  /**
   * Where a disk that could not be opened, or did not answer, does now: all that was kept in memory meanwhile is joined to it,
   * and so is what is done while that goes on. Memory counts until all of it has come through; half of it is joined again.
   */
  async function joinMemory(held: MemoryShelf): Promise<void> {
    await disk.get("settings", "");
    for (let stored = 0; stored < held.changes(); ) {
      const [steps, changes] = [held.since(stored), held.changes()];
      await disk.join(steps);
      stored = changes;
    }
    memory = undefined;
    without = false;
    tell();
  }

  /** Once at a time: what is joined late must not come over what is written to the disk afterwards. */
  function comeBack(held: MemoryShelf): Promise<void> {
    return (coming ??= joinMemory(held).finally(() => (coming = undefined)));
  }

  async function comeBackWhenAnswered(): Promise<void> {
    if (memory && without) await comeBack(memory).catch(() => undefined);
    if (without) setTimeout(() => void comeBackWhenAnswered(), ASK_AGAIN_MS);
  }

  return {
    get: (store, key) => asked((shelf) => shelf.get(store, key)),
    all: (store, from, to) => asked((shelf) => shelf.all(store, from, to)),
    keys: (store) => asked((shelf) => shelf.keys(store)),
    write: (steps, durability, calledOff) => asked((shelf) => shelf.write(steps, durability, calledOff)),
    put: (store, value, durability, calledOff) => asked((shelf) => shelf.write([{ store, put: value } as Step], durability, calledOff)),
    remove: (store, key) => asked((shelf) => shelf.write([{ store, remove: key } as Step])),
    change: (store, key, next) => {
      const once = onlyOnce(next);
      return asked((shelf) => shelf.change(store, key, once));
    },
    where: () => (memory ? "memory" : "disk"),
    isNewer: () => newer,
    reopen: async () => {
      await (memory ? comeBack(memory) : disk.get("settings", "")).catch(() => undefined);
    },
    isSilent: () => without || silences.now,
    isWithout: () => without,
    goOnWithout: () => {
      if (!silences.now || memory) return;
      [without, memory] = [true, memoryShelf(KEY_PATHS)];
      silences.giveUpAll();
      tell();
      void comeBackWhenAnswered();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** A change whose commit was under way when it was given up may have come through: then it is not made on top of itself. */
function onlyOnce<Record>(next: (before: Record | undefined) => Record): (before: Record | undefined) => Record {
  let made: Record | undefined;
  return (before) => (made = made !== undefined && JSON.stringify(before) === JSON.stringify(made) ? made : next(before));
}

function isNewer(error: unknown): boolean {
  return (error as Error | undefined)?.name === "VersionError";
}

/** The database of this device. */
export const database: Database = makeDatabase(openHandle, dropExtras);
