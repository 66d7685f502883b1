/** Sessions on this device: the plan and the timeline each ran, its facts as they happened, its last sign of life. */
import type { Plan, Timeline } from "../plan/types.js";
import type { Fact } from "../timeline/facts.js";
import { database } from "./database.js";
import { sessionFault, soundHeartbeat, type Fault } from "./sound-session.js";

export interface SessionRecord {
  id: string;
  /** Of its facts; 1 where none is given. */
  format?: number;
  /** The plan record it came from; that may be gone or changed by now. */
  plan_id: string;
  plan: Plan;
  /** What was really run, scaled to a result if there was one. */
  timeline: Timeline;
  /** The build of the app that ran it. */
  app: string;
  /** The device's clock when the session was made, in ms since 1970. */
  made_at_ms: number;
  state: "open" | "ended";
  /** The screen that leads a room through it: it goes by the clock, and nobody's rowing is counted. Absent where one rows. */
  led_by?: LedBy;
}

export type LedBy = "wall" | "prompter";

/** One fact of a session; they are numbered from 0 in the order in which they were written. */
export interface FactRecord {
  session: string;
  number: number;
  fact: Fact;
}

/** The last sign of life: overwritten about once a second. */
export interface Heartbeat {
  session: string;
  /** Seconds of the session's own clock. */
  session_s: number;
  /** The device's clock at that moment, and at second 0 as far as is known now, in ms since 1970. */
  wall_ms: number;
  wall_zero_ms: number;
}

/** What is needed to go on with a session. */
export interface StoredSession {
  record: SessionRecord;
  facts: Fact[];
  heartbeat: Heartbeat | undefined;
}

/** A session left open that cannot be gone on with, as far as it can still be told. */
export interface UnsoundSession {
  id: string;
  title: string;
  plan_id: string;
  fault: Fault;
}

export function isSound(open: StoredSession | UnsoundSession): open is StoredSession {
  return "record" in open;
}

/** Writes a session together with its first fact, so that there is never the one without the other. */
export function saveSession(record: SessionRecord, first: Fact, calledOff?: AbortSignal): Promise<void> {
  const fact: FactRecord = { session: record.id, number: 0, fact: first };
  return database.write([{ store: "sessions", put: record }, { store: "facts", put: fact }], "strict", calledOff);
}

/** Writes a fact at once and for good. */
export function saveFact(session: string, number: number, fact: Fact, calledOff?: AbortSignal): Promise<void> {
  return database.put("facts", { session, number, fact }, "strict", calledOff);
}

export function saveHeartbeat(heartbeat: Heartbeat, calledOff?: AbortSignal): Promise<void> {
  return database.put("heartbeats", heartbeat, "relaxed", calledOff);
}

/** The session that was not ended, the newest if there are several; undefined when there is none. */
export async function openSession(): Promise<StoredSession | UnsoundSession | undefined> {
  const [newest] = (await allOpen()).sort((a, b) => madeAt(b.record) - madeAt(a.record));
  if (!newest) return undefined;
  const { id, record } = newest;
  const [facts, heartbeat] = await Promise.all([factRecords(id), database.get("heartbeats", id)]);
  const fault = record ? sessionFault(record, facts) : UNREADABLE;
  if (!record || fault) return { id, title: text(record?.plan?.title), plan_id: text(record?.plan_id), fault: fault! };
  return { record, facts: facts.map(({ fact }) => fact), heartbeat: soundHeartbeat(heartbeat) };
}

/** The facts of a session as written. */
export async function factsOf(session: string): Promise<Fact[]> {
  return (await factRecords(session)).map(({ fact }) => fact);
}

/** Marks a session as ended, and moves it to the log; one that led a room was rowed by nobody here, and goes. */
export function closeSession(record: SessionRecord, calledOff?: AbortSignal): Promise<void> {
  if (record.led_by) return discardSession(record.id, calledOff);
  const ended: SessionRecord = { ...record, state: "ended" };
  return database.write([{ store: "log", put: ended }, { store: "sessions", remove: record.id }], "strict", calledOff);
}

/** Takes a session out of the way as it is: what can be read of it stays, in the log, and is not offered again. */
export async function putAside(id: string): Promise<void> {
  const record = await database.get("sessions", id).catch(() => null);
  // One that is not there may be on a disk that does not answer, and stays there.
  if (record === undefined) return;
  await database.write([...(record ? [{ store: "log", put: record } as const] : []), { store: "sessions", remove: id }], "strict");
}

/** Takes a session off this device, with all its facts. */
export function discardSession(session: string, calledOff?: AbortSignal): Promise<void> {
  return database.write([
    { store: "sessions", remove: session },
    { store: "heartbeats", remove: session },
    { store: "facts", remove: [session, 0], to: [session, Number.MAX_SAFE_INTEGER] },
  ], "relaxed", calledOff);
}

const UNREADABLE: Fault = { kind: "unreadable", where: "" };

/** The open sessions; one that storage does not hand out is known by its key alone. */
async function allOpen(): Promise<{ id: string; record: SessionRecord | undefined }[]> {
  const ids = await database.keys("sessions");
  const read = ids.map(async (id) => ({ id, record: await database.get("sessions", id).catch(() => undefined) }));
  return (await Promise.all(read)).filter(({ record }) => record?.state !== "ended");
}

function factRecords(session: string): Promise<FactRecord[]> {
  return database.all("facts", [session, 0], [session, Number.MAX_SAFE_INTEGER]);
}

/** In ms since 1970; 0 where that cannot be read. */
export function madeAt(record: SessionRecord | undefined): number {
  return Number(record?.made_at_ms) || 0;
}

function text(value: unknown): string {
  return typeof value === "string" ? value : "";
}
