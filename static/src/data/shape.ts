/** What is kept on this device: records by store and key, and what can be done with them. */
import type { DBSchema, StoreNames } from "idb";
import type { AthleteRecord } from "./athlete.js";
import type { Entry } from "./log.js";
import type { PlanRecord } from "./plans.js";
import type { FactRecord, Heartbeat, SessionRecord } from "./sessions.js";
import type { Settings } from "./settings.js";
import type { TechniqueRecord } from "./technique.js";

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
  /**
   * Makes all of these changes or none; `remove` with `to` takes away everything from one key to the other. Once it is
   * called off it is not asked again, and taken back where it waits for an answer.
   */
  write(steps: readonly Step[], durability?: Durability, calledOff?: AbortSignal): Promise<void>;
  /** Puts what `next` makes of the record there is, and answers it; no other write comes between. */
  change<Name extends Store>(store: Name, key: Key<Name>, next: (before: Value<Name> | undefined) => Value<Name>): Promise<Value<Name>>;
}

export const KEY_PATHS: { [Name in Store]: string | string[] } = {
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
