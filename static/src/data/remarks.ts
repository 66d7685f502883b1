/**
 * What a rower says of a session: kept beside its figures in the log, and tried again and again until storage has taken it.
 * What waits for that is kept here, by session, whatever screen is shown meanwhile.
 */
import * as v from "valibot";
import { database } from "./database.js";
import { WriteQueue } from "./write-queue.js";

/** In UTF-16 units, as fields count them. */
export const LONGEST_NOTE = 2000;

export interface Remarks {
  /** How hard the whole of it was: 0 to 10, whole. */
  cr10?: number;
  /** How it went. */
  note?: string;
}

/** Something more, or something else; an empty note is none, and so is no effort. */
export interface Said {
  cr10?: number | undefined;
  note?: string;
}

const CR10 = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(10));
const NOTE = v.pipe(v.string(), v.nonEmpty(), v.maxLength(LONGEST_NOTE));

const unkept = new Map<string, Said>();
const listeners = new Set<() => void>();
const writes = new WriteQueue(() => listeners.forEach((listener) => listener()));

/** Whether these can be a rower's remarks. */
export function areRemarks({ cr10, note }: { cr10?: unknown; note?: unknown }): boolean {
  return v.is(v.optional(CR10), cr10) && v.is(v.optional(NOTE), note);
}

/** Those remarks that make sense. */
export function remarksIn({ cr10, note }: { cr10?: unknown; note?: unknown }): Remarks {
  return { ...(v.is(CR10, cr10) ? { cr10 } : {}), ...(v.is(NOTE, note) ? { note } : {}) };
}

/** What was said of a session, stored or not yet. Rejects where storage does not hand it out: that is not nothing. */
export async function remarksOf(id: string): Promise<Remarks> {
  const stored = await database.get("entries", id);
  const elsewhere = database.isWithout() && !(await database.get("log", id));
  if (elsewhere) throw new Error("what was said of it is on a disk that does not answer");
  return withUnkept(id, remarksIn(stored ?? {}));
}

/** The stored remarks of a session, with what was said of it and is not stored yet. */
export function withUnkept(id: string, stored: Remarks): Remarks {
  return said(stored, unkept.get(id));
}

/** Says something of a session, and keeps it. Settled when storage has taken everything that waits, or has refused. */
export async function say(id: string, more: Said): Promise<void> {
  const waits = unkept.has(id);
  unkept.set(id, { ...unkept.get(id), ...more });
  // Quick fingers are quicker than storage: what is said meanwhile is stored in one go.
  if (!waits) await writes.add(() => keep(id));
}

/** Whether storage has refused what was said of a session; it is tried again and again. */
export function isRefused(id: string): boolean {
  return writes.trouble !== null && unkept.has(id);
}

/** Calls `listener` when storage refuses, or takes it all; the answer stops that. */
export function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Gives up what waits to be stored of a session; the answer is what that was. */
export function unsay(id: string): Said | undefined {
  const waited = unkept.get(id);
  unkept.delete(id);
  return waited;
}

/** Stores what is said of a session. Rejects when the device could not keep it. */
export async function remark(id: string, more: Said): Promise<void> {
  await database.change("entries", id, (before) => {
    const { cr10: _cr10, note: _note, ...entry } = { ...before, id };
    return { ...entry, ...said(remarksIn(before ?? {}), more) };
  });
}

async function keep(id: string): Promise<void> {
  for (let more = unkept.get(id); more; more = unkept.get(id)) {
    await remark(id, more);
    if (unkept.get(id) === more) unkept.delete(id);
  }
}

/** These remarks, with what more was said. */
export function said(before: Remarks, more: Said | undefined): Remarks {
  const { cr10, note } = { ...before, ...more };
  return { ...(cr10 === undefined ? {} : { cr10 }), ...(note ? { note } : {}) };
}
