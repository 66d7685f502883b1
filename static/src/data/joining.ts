/**
 * What was kept in memory while the disk did not answer, joined to what the disk holds: nothing of either is lost, and joining
 * twice is joining once. What was said last counts, and what was not said in memory stays as the disk has it.
 */
import { canonical } from "../plan/canonical.js";
import { MOST_TAGS, areTags, together } from "../plan/tags.js";
import type { AthleteRecord } from "./athlete.js";
import type { KeyedWall } from "./keyed-walls.js";
import type { PlanRecord } from "./plans.js";
import { joined as joinedResults } from "./results.js";
import type { Store, Value } from "./shape.js";
import { planFault } from "./sound-session.js";

type Fields = Readonly<Record<string, unknown>>;
type Join<Name extends Store> = (disk: Value<Name>, memory: Value<Name>) => Value<Name>;

const JOINS: { readonly [Name in Store]?: Join<Name> } = {
  settings: (disk, memory) => ({ ...memory, values: joinedSettings({ ...disk.values }, { ...memory.values }) }),
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

const SETTINGS: Readonly<Record<string, (disk: never, memory: never) => unknown>> = {
  draft: joinedDraft,
  drafts: (disk: Fields, memory: Fields) => byName(disk, memory, joinedDraft),
  preferences: (disk: { values: Fields }, memory: { values: Fields }) => ({ ...memory, values: { ...disk.values, ...memory.values } }),
  wall: (disk: Fields, memory: Fields) => ({ ...disk, ...Object.fromEntries(Object.entries(memory).filter(([, value]) => value !== null && !(Array.isArray(value) && !value.length))) }),
  walls: joinedWalls,
};

function joinedSettings(disk: Fields, memory: Fields): Fields {
  return byName(disk, memory, (here, more, name) => {
    const join = SETTINGS[name] as ((disk: unknown, memory: unknown) => unknown) | undefined;
    return join && (here ?? null) !== null && (more ?? null) !== null ? join(here, more) : more;
  });
}

/** Those of both; what both have is joined. */
function byName(disk: Fields, memory: Fields, join: (disk: never, memory: never, name: string) => unknown): Fields {
  const said = Object.entries(memory).map(([name, value]) => [name, name in disk ? join(disk[name] as never, value as never, name) : value]);
  return { ...disk, ...Object.fromEntries(said) };
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
  const tags = together(areTags(disk.tags) ? disk.tags : [], memory.tags).slice(0, MOST_TAGS);
  const isLater = planFault(disk) !== null || (memory.source === "mine" && canonical(disk.plan) !== canonical(memory.plan));
  return { ...(isLater ? memory : disk), ...(tags.length ? { tags } : {}), kept_at_ms: memory.kept_at_ms };
}

/** Each fact as it was said last, and the results of both. */
function joinedAthlete({ athlete: disk, answer }: AthleteRecord, { athlete: memory }: AthleteRecord): AthleteRecord {
  const { results } = joinedResults(disk.results ?? [], memory.results ?? []);
  const athlete = { ...disk, ...memory, ...(results.length ? { results } : {}) };
  return { id: "me", athlete, answer: canonical(athlete) === canonical(disk) ? answer : null };
}
