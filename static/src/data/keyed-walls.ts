/** Walls whose keys are on this device. No lost answer and no key link takes away the only key that works: what may be right is kept. */
import { Refused, askWall, makeWall, renewWallKey } from "./api.js";
import { base64url } from "./link-codec.js";
import { changeSettings, keepSettings, readSettings } from "./settings.js";

/** A wall whose key is on this device; `name` is what its owner calls it. */
export interface KeyedWall {
  id: string;
  key: string;
  name: string;
  /** Made here to take the place of `key`; the server has not said yet that it has. */
  next_key?: string;
  /** Came by links; the server has not said yet whether one of them is right. */
  given_keys?: readonly string[];
}

export type WallKey = Pick<KeyedWall, "id" | "key">;

const ID = /^[a-z2-7]{16}$/;
const KEY = /^[A-Za-z0-9_-]{43}$/;
const KEY_LINK = /^([a-z2-7]{16})\.([A-Za-z0-9_-]{43})$/;
const KEY_BYTES = 32;

/** The walls whose keys are here. */
export async function readWalls(): Promise<readonly KeyedWall[]> {
  return wallsIn((await readSettings()).walls);
}

/** A new wall, whose key is kept here. Throws Refused, NoAnswer. */
export async function newWall(): Promise<readonly KeyedWall[]> {
  return keepKey(await makeWall((await readSettings()).publish_key));
}

export function renameWall(id: string, name: string): Promise<readonly KeyedWall[]> {
  return changeOne(id, (wall) => ({ ...wall, name }));
}

/** Takes a wall's keys off this device. */
export function forgetWall(id: string): Promise<readonly KeyedWall[]> {
  return change((walls) => walls.filter((wall) => wall.id !== id));
}

/** Keeps a key: that of a wall not known here as its own, another one of a known wall beside those it has, until `settleKey`. */
export function keepKey({ id, key }: WallKey): Promise<readonly KeyedWall[]> {
  return change((walls) => {
    const known = walls.find((wall) => wall.id === id);
    if (!known) return [...walls, { id, key, name: `Wall ${walls.length + 1}` }];
    if (keysOf(known).includes(key)) return walls;
    return walls.map((wall) => (wall === known ? { ...wall, given_keys: [...(wall.given_keys ?? []), key] } : wall));
  });
}

/** Asks the server whether a key that was kept is right, and lets it take the place of the others only then. Throws Refused (401: it is not), NoAnswer. */
export async function settleKey({ id, key }: WallKey): Promise<readonly KeyedWall[]> {
  const walls = await readWalls();
  if (walls.some((wall) => wall.id === id && wall.key === key)) return walls;
  try {
    await askWall(id, "GET", { Authorization: `Bearer ${key}` });
  } catch (error) {
    if (isWrongKey(error)) await refused(id, key);
    throw error;
  }
  return works(id, key);
}

/** Another key for a wall, kept here before it is asked for; one whose answer was lost is asked for again. Throws Refused, NoAnswer, or Error where it cannot be kept. */
export async function newKey({ id }: KeyedWall): Promise<readonly KeyedWall[]> {
  const { walls } = await keepSettings((before) => ({ walls: replaced(wallsIn(before.walls), id, (wall) => ({ ...wall, next_key: wall.next_key ?? freshKey() })) })).catch(() => {
    throw new Error("This device could not keep another key, so the key was not replaced.");
  });
  const wall = wallsIn(walls).find((each) => each.id === id);
  if (wall) await withKey(wall, (key) => renewWallKey(id, key, wall.next_key!), wall.next_key);
  return readWalls();
}

/**
 * Does something with the key of a wall, and where the server refuses it, with the others that are here; the one that works is kept.
 * `then_key`: what the key of the wall is once it was done, if it becomes another one by that. Throws what `act` throws.
 */
export async function withKey<Answer>(wall: KeyedWall, act: (key: string) => Promise<Answer>, then_key?: string): Promise<Answer> {
  const { id } = wall;
  const known = (await readWalls()).find((each) => each.id === id) ?? wall;
  let wrong: unknown;
  for (const key of keysOf(known)) {
    try {
      const answer = await act(key);
      if (then_key !== undefined || key !== known.key || known.given_keys) await works(id, then_key ?? key);
      return answer;
    } catch (error) {
      if (!isWrongKey(error)) throw error;
      wrong ??= error;
      await refused(id, key);
    }
  }
  throw wrong;
}

/** Whether the server says that a key is not that of the wall. */
export function isWrongKey(error: unknown): boolean {
  return error instanceof Refused && error.status === 401;
}

/** What the tablet of a wall opens. */
export function tabletAddress({ id }: Pick<KeyedWall, "id">): string {
  return `${location.origin}/wall/${id}`;
}

/** What gives another phone the key; behind the #, which no server sees. */
export function keyLink({ id, key }: WallKey): string {
  return `${location.origin}/walls#${id}.${key}`;
}

/** The wall and key of such a link; undefined for anything else. */
export function fromKeyLink(fragment: string): WallKey | undefined {
  const found = KEY_LINK.exec(fragment.trim());
  return found ? { id: found[1]!, key: found[2]! } : undefined;
}

/** 256 bits by chance, in base64url (RFC 4648, 5). */
function freshKey(): string {
  return base64url(crypto.getRandomValues(new Uint8Array(KEY_BYTES)));
}

function keysOf({ key, next_key, given_keys = [] }: KeyedWall): string[] {
  return [key, ...(next_key === undefined ? [] : [next_key]), ...given_keys];
}

/** A wall has one key, so the others go; a next one stays while a late answer could still make it the key. */
function works(id: string, right: string): Promise<readonly KeyedWall[]> {
  return changeOne(id, ({ key, name, next_key }) => ({ id, key: right, name, ...(right === key && next_key !== undefined ? { next_key } : {}) }));
}

/** Only what came by a link is thrown away when it is refused. */
function refused(id: string, wrong: string): Promise<readonly KeyedWall[]> {
  return changeOne(id, ({ given_keys = [], ...wall }) => {
    const left = given_keys.filter((key) => key !== wrong);
    return left.length ? { ...wall, given_keys: left } : wall;
  });
}

function changeOne(id: string, next: (wall: KeyedWall) => KeyedWall): Promise<readonly KeyedWall[]> {
  return change((walls) => replaced(walls, id, next));
}

function replaced(walls: readonly KeyedWall[], id: string, next: (wall: KeyedWall) => KeyedWall): readonly KeyedWall[] {
  return walls.map((wall) => (wall.id === id ? next(wall) : wall));
}

async function change(next: (walls: readonly KeyedWall[]) => readonly KeyedWall[]): Promise<readonly KeyedWall[]> {
  const { walls } = await changeSettings((before) => ({ walls: next(wallsIn(before.walls)) }));
  return wallsIn(walls);
}

function wallsIn(stored: unknown): readonly KeyedWall[] {
  return (Array.isArray(stored) ? stored : []).flatMap((wall: Partial<KeyedWall> | null) => {
    const { id, key, name, next_key, given_keys } = wall ?? {};
    if (typeof id !== "string" || !ID.test(id) || typeof key !== "string" || typeof name !== "string") return [];
    const given = Array.isArray(given_keys) ? given_keys.filter(isKey) : [];
    return [{ id, key, name, ...(isKey(next_key) ? { next_key } : {}), ...(given.length ? { given_keys: given } : {}) }];
  });
}

function isKey(value: unknown): value is string {
  return typeof value === "string" && KEY.test(value);
}
