/** Sessions on this device: the plan and the timeline each ran, its facts as they happened, its last sign of life. */
import type { Plan, Timeline } from "../plan/types.js";
import type { Fact } from "../timeline/facts.js";
import { database } from "./database.js";

export interface SessionRecord {
  id: string;
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

export function saveSession(record: SessionRecord): Promise<void> {
  return database.put("sessions", record, "strict");
}

/** Writes a fact at once and for good. */
export function saveFact(session: string, number: number, fact: Fact): Promise<void> {
  return database.put("facts", { session, number, fact }, "strict");
}

export function saveHeartbeat(heartbeat: Heartbeat): Promise<void> {
  return database.put("heartbeats", heartbeat, "relaxed");
}

/** The session that was not ended, the newest if there are several; undefined when there is none. */
export async function openSession(): Promise<StoredSession | undefined> {
  const records = await database.all("sessions");
  const newest = records.filter((record) => record.state === "open").sort((a, b) => b.made_at_ms - a.made_at_ms)[0];
  if (!newest) return undefined;
  return { record: newest, facts: await factsOf(newest.id), heartbeat: await database.get("heartbeats", newest.id) };
}

/** The facts of a session as written; a gap in their numbers ends them, since what follows cannot be trusted. */
export async function factsOf(session: string): Promise<Fact[]> {
  const records = await database.all("facts", [session, 0], [session, Number.MAX_SAFE_INTEGER]);
  const trusted = records.filter((record, index) => record.number === index);
  return trusted.map((record) => record.fact);
}

/** Marks a session as ended, and moves it to the log; one that led a room was rowed by nobody here, and goes. */
export async function closeSession(record: SessionRecord): Promise<void> {
  if (record.led_by) return discardSession(record.id);
  const ended: SessionRecord = { ...record, state: "ended" };
  await database.put("sessions", ended, "strict");
  await database.put("log", ended, "strict");
  await database.remove("sessions", record.id);
}

/** Takes a session off this device, with all its facts. */
export async function discardSession(session: string): Promise<void> {
  const count = (await factsOf(session)).length;
  await database.remove("sessions", session);
  await database.remove("heartbeats", session);
  for (let number = 0; number < count; number += 1) await database.remove("facts", [session, number]);
}
