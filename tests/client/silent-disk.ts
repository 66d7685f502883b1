/** A disk in memory that can fall silent, refuse, or lose what is asked of it half way; it makes a transaction whole or not at all. */
import type { makeDatabase } from "../../static/src/data/database.js";
import { KEY_PATHS, type Store } from "../../static/src/data/shape.js";
import type { TestContext } from "node:test";

type Open = Parameters<typeof makeDatabase>[0];
type Handle = Awaited<ReturnType<Open>>;
type Fields = Record<string, unknown>;

export class SilentDisk {
  silent = false;
  /** What writing is refused with, from so many transactions on. */
  refuses: { error: Error; after: number } | null = null;
  /** Called within every transaction that writes, before it is through. */
  during: (() => void) | undefined;
  opened = 0;
  closed = 0;
  writes = 0;
  private readonly stores = new Map<Store, Map<string, Fields>>();

  /** What is kept in a store, by its key as JSON. */
  of(store: Store): Map<string, Fields> {
    return this.stores.get(store) ?? this.stores.set(store, new Map()).get(store)!;
  }

  readonly open: Open = async () => {
    this.opened += 1;
    return { close: () => (this.closed += 1), transaction: (names: Store | Store[], mode?: string) => this.transaction(names, mode === "readwrite") } as unknown as Handle;
  };

  private transaction(names: Store | Store[], writes: boolean) {
    const changed = new Map<Store, Map<string, Fields | undefined>>();
    const changes = (store: Store) => changed.get(store) ?? changed.set(store, new Map()).get(store)!;
    let aborted = false;
    const answer = async <Result>(does: () => Result): Promise<Result> => (this.silent ? new Promise<Result>(() => undefined) : does());
    const kept = (store: Store) => {
      const path = KEY_PATHS[store];
      const keyOf = (value: Fields) => (Array.isArray(path) ? path.map((name) => value[name]) : value[path]);
      return {
        get: (key: unknown) => answer(() => {
          const name = JSON.stringify(key);
          return structuredClone(changes(store).has(name) ? changes(store).get(name) : this.of(store).get(name));
        }),
        put: (value: Fields) => answer(() => void changes(store).set(JSON.stringify(keyOf(value)), structuredClone(value))),
        delete: (key: unknown) => answer(() => void changes(store).set(JSON.stringify(key), undefined)),
        getAll: () => answer(() => [...this.of(store).values()]),
        getAllKeys: () => answer(() => [...this.of(store).keys()].map((key) => JSON.parse(key) as unknown)),
      };
    };
    const done = async () => {
      await new Promise((turn) => setImmediate(turn));
      if (aborted || this.silent) return new Promise<void>(() => undefined);
      if (writes) {
        this.writes += 1;
        this.during?.();
        if (this.refuses && this.refuses.after < this.writes) throw this.refuses.error;
      }
      for (const [store, records] of changed) {
        for (const [key, value] of records) value ? this.of(store).set(key, value) : this.of(store).delete(key);
      }
    };
    return { store: kept(Array.isArray(names) ? names[0]! : names), objectStore: kept, done: done(), abort: () => (aborted = true) };
  }
}

export const sleeping = (t: TestContext) => t.mock.timers.enable({ apis: ["setTimeout"] });

/** Lets this much time pass, and everything happen that is due by then. */
export async function pass(t: TestContext, seconds: number): Promise<void> {
  for (let second = 0; second < seconds; second += 1) {
    t.mock.timers.tick(1000);
    for (let turn = 0; turn < 5; turn += 1) await new Promise((done) => setImmediate(done));
  }
}
