/**
 * What was kept in memory while the disk did not answer, joined to what the disk holds: nothing of either is lost, and joining
 * twice is joining once. What was said last counts, and what was not said in memory stays as the disk has it.
 */
import { MOST_TAGS, together } from "../plan/tags.js";
import type { AthleteRecord } from "./athlete.js";
import type { KeyedWall } from "./keyed-walls.js";
import type { PlanRecord } from "./plans.js";
import { joined as joinedResults } from "./results.js";
import type { Store, Value } from "./shape.js";
import { planFault } from "./sound-session.js";

type Fields = Readonly<Record<string, unknown>>;
type Join<Name extends Store> = (disk: Value<Name>, memory: Value<Name>) => Value<Name>;

const JOINS: { readonly [Name in Store]?: Join<Name> } = {
  settings: (disk, memory) => ({ ...memory, values: byName(disk.values, memory.values, joinedSetting) }),
  plans: joinedPlan,
  entries: (disk, memory) => ({ ...disk, ...memory }),
  athletes: joinedAthlete,
};

/** Whether a record of this store may be made of less than the disk has of it; those of the others stand for themselves. */
export function isJoined(store: Store): boolean {
  return store in JOINS;
}

/** What is to stand on the disk; what is damaged there counts as nothing. */
export function joinedRecord<Name extends Store>(store: Name, disk: Value<Name> | undefined, memory: Value<Name>): Value<Name> {
  const join = JOINS[store] as Join<Name> | undefined;
  if (!join || disk === undefined) return memory;
  try {
    return join(disk, memory);
  } catch {
    return memory;
  }
}

type JoinSaid = (here: never, said: never, name: string) => unknown;

const SETTINGS: Readonly<Record<string, JoinSaid>> = {
  draft: joinedDraft,
  drafts: (here: Fields, said: Fields) => byName(here, said, joinedDraft),
  preferences: (here: { values: Fields }, said: { values: Fields }) => ({ ...said, values: { ...here.values, ...said.values } }),
  wall: (here: Fields, said: Fields) => byName(here, said, (before: unknown, now: unknown[] | null) => (now?.length === 0 ? before : (now ?? before))),
  walls: joinedWalls,
};

/** Those of both; what both have is joined. */
function byName(here: Fields, said: Fields, join: JoinSaid): Fields {
  const both = Object.entries(said).map(([name, value]) => [name, (here[name] ?? null) === null ? value : join(here[name] as never, value as never, name)]);
  return { ...here, ...Object.fromEntries(both) };
}

/** One that is damaged takes no other with it. */
function joinedSetting(here: never, said: never, name: string): unknown {
  try {
    return SETTINGS[name]?.(here, said, name) ?? said;
  } catch {
    return said;
  }
}

/** The later text where it grew out of the earlier one; of two that have nothing to do with each other, one stands under the other. */
function joinedDraft(disk: string, memory: string): string {
  if (disk.startsWith(memory)) return disk;
  const lines = memory.split("\n");
  const before = disk.split("\n").filter((line) => line.trim());
  const goesOn = memory.startsWith(disk) || before.filter((line) => lines.includes(line)).length * 2 > before.length;
  return goesOn ? memory : `${memory.trimEnd()}\n\n${disk}`;
}

/** A wall has the keys of both, until the server says which of them is right. */
function joinedWalls(disk: readonly KeyedWall[], memory: readonly KeyedWall[]): readonly KeyedWall[] {
  const here = disk.map((wall) => {
    const more = memory.find(({ id }) => id === wall.id);
    const known = [wall.key, wall.next_key, ...(wall.given_keys ?? [])];
    const keys = more ? [more.key, more.next_key, ...(more.given_keys ?? [])].filter((key) => key !== undefined && !known.includes(key)) : [];
    return keys.length ? { ...wall, given_keys: [...(wall.given_keys ?? []), ...(keys as string[])] } : wall;
  });
  return [...here, ...memory.filter(({ id }) => !disk.some((wall) => wall.id === id))];
}

/** The disk's, with the tags of both; one's own plan that says something else now is the later one. */
function joinedPlan(disk: PlanRecord, memory: PlanRecord): PlanRecord {
  const tags = together(Array.isArray(disk.tags) ? disk.tags : [], memory.tags).slice(0, MOST_TAGS);
  const isLater = planFault(disk) !== null || (memory.source === "mine" && !same(disk.plan, memory.plan));
  return { ...(isLater ? memory : disk), ...(tags.length ? { tags } : {}), kept_at_ms: memory.kept_at_ms };
}

/** Each fact as it was said last, and the results of both. */
function joinedAthlete({ athlete: disk, answer }: AthleteRecord, { athlete: memory }: AthleteRecord): AthleteRecord {
  const { results } = joinedResults(disk.results ?? [], memory.results ?? []);
  const athlete = { ...disk, ...memory, ...(results.length ? { results } : {}) };
  return { id: "me", athlete, answer: same(athlete, disk) ? answer : null };
}

function same(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
