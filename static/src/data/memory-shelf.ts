/** The same records without a disk: for browsers that refuse to store anything, and while storage does not answer. */
import type { Key, Shelf, Step, Store, Value } from "./shape.js";

export interface MemoryShelf extends Shelf {
  /** How many changes have been made. */
  changes(): number;
  /** What was done after so many changes, in its order, as steps that do the same elsewhere. */
  since(changes: number): Step[];
}

/** A shelf that forgets everything when the page is closed. */
export function memoryShelf(keyPaths: { [Name in Store]: string | string[] }): MemoryShelf {
  const stores = new Map<Store, Map<string, unknown>>();
  /** By what was changed, in the order of the last change of each. */
  const done = new Map<string, { number: number; step: () => Step | undefined }>();
  let changes = 0;
  const records = (store: Store) => stores.get(store) ?? stores.set(store, new Map()).get(store)!;

  const keyOf = (store: Store, value: unknown) => {
    const fields = value as Record<string, unknown>;
    const path = keyPaths[store];
    return Array.isArray(path) ? path.map((name) => fields[name]) : fields[path];
  };

  const note = (store: Store, key: string, step: () => Step | undefined) => {
    const name = `${store} ${key}`;
    done.delete(name);
    done.set(name, { number: (changes += 1), step });
  };

  const put = (store: Store, value: unknown) => {
    const key = JSON.stringify(keyOf(store, value));
    records(store).set(key, structuredClone(value));
    note(store, key, () => {
      const put = records(store).get(key);
      return put === undefined ? undefined : ({ store, put: structuredClone(put) } as Step);
    });
  };

  const remove = (store: Store, from: unknown, to: unknown) => {
    for (const [name, value] of [...records(store)]) {
      const key = keyOf(store, value);
      if (order(key, from) >= 0 && order(key, to) <= 0) records(store).delete(name);
    }
  };

  return {
    async get<Name extends Store>(store: Name, key: Key<Name>) {
      return structuredClone(records(store).get(JSON.stringify(key))) as Value<Name> | undefined;
    },
    async all<Name extends Store>(store: Name, from?: Key<Name>, to?: Key<Name>) {
      const found = [...records(store).values()].map((value) => ({ value, key: keyOf(store, value) }));
      const inside = found.filter(({ key }) => from === undefined || (order(key, from) >= 0 && order(key, to) <= 0));
      return inside.sort((a, b) => order(a.key, b.key)).map(({ value }) => structuredClone(value) as Value<Name>);
    },
    changes: () => changes,
    since: (changes) => [...done.values()].flatMap(({ number, step }) => (number > changes ? (step() ?? []) : [])),
    async keys<Name extends Store>(store: Name) {
      return [...records(store).keys()].map((key) => JSON.parse(key) as Key<Name>);
    },
    async write(steps: readonly Step[]) {
      for (const step of steps) {
        if ("put" in step) put(step.store, step.put);
        else {
          remove(step.store, step.remove, step.to ?? step.remove);
          note(step.store, JSON.stringify(["removed", step.remove, step.to]), () => step);
        }
      }
    },
    async change<Name extends Store>(store: Name, key: Key<Name>, next: (before: Value<Name> | undefined) => Value<Name>) {
      const value = next(structuredClone(records(store).get(JSON.stringify(key))) as Value<Name> | undefined);
      put(store, value);
      return value;
    },
  };
}

/** As IndexedDB orders keys: a number before a text, lists item by item. */
function order(a: unknown, b: unknown): number {
  if (Array.isArray(a) && Array.isArray(b)) {
    return a.map((item, index) => order(item, b[index])).find((difference) => difference !== 0) ?? 0;
  }
  if (typeof a === "number" && typeof b === "number") return a - b;
  return String(a) < String(b) ? -1 : String(a) > String(b) ? 1 : 0;
}
