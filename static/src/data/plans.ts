/** Plans on this device: every plan that is opened is kept, with the timeline for anybody. */
import { compiledForAnybody } from "../plan/compile.js";
import type { LibraryPlan, Piece, Result } from "../plan/wire.js";
import type { Level, Plan, Timeline } from "../plan/types.js";
import { NoAnswer, Refused, fetchLibrary, readShorthand } from "./api.js";
import type { AthleteRecord } from "./athlete.js";
import { compiled, type Appraisal } from "./compiling.js";
import { database } from "./database.js";
import { newId } from "./ids.js";
import type { Settings } from "./settings.js";
import { planFault, uncompiledFault, Unsound, type Fault } from "./sound-session.js";

/** Where a plan comes from: the app itself, this device, or a link. */
export type Source = "built-in" | "mine" | "sent";

/** A plan kept on this device. */
export interface PlanRecord {
  /** `built-in:<slug>`, `mine:<id>` or `sent:<name>`. */
  id: string;
  source: Source;
  /** The end of its address: /plan/<name> for built-in plans, /mine/<name> for one's own. */
  name: string;
  /** Of a plan that was sent: the address that brought it. */
  address?: string;
  /** The library's word for it; "" for one's own. */
  kind: string;
  plan: Plan;
  /** For anybody: scale it to a result with plan/scale. */
  timeline: Timeline;
  /** What a person calls it by, to find it again: see plan/tags. */
  tags?: readonly string[];
  /** One's own plans: the canonical shorthand. */
  text?: string;
  /** Of a session that was made: why it looks as it does. */
  reasons?: readonly string[];
  /** Of a session that was made: what it was made from, so that it can be made again. */
  made?: Made;
  /** What there is to say about it, for the athlete who asked last. */
  appraisal?: Appraisal;
  /** How the last mend is taken back. */
  undo?: Undo;
  kept_at_ms: number;
}

/** What a plan was before a mend: its content with the mends before that, or for a built-in plan the address of the original. */
export interface Undo {
  /** What was done, in the mend's own words. */
  label: string;
  before: Before | string;
}

export type Before = Content & Pick<PlanRecord, "undo">;

export type Content = Pick<PlanRecord, "plan" | "timeline" | "text" | "reasons" | "made" | "appraisal">;

/** What a session is made from, besides the athlete. */
export interface Making extends Pick<Settings, "room" | "warmup_minutes"> {
  piece: Piece;
  /** As it is shown where the piece is chosen. */
  level: Level;
  /** The way up to the piece, without the piece. */
  only_warm_up: boolean;
}

export interface Made {
  making: Making;
  /** The results that it was made for. */
  results: readonly Result[];
}

/** Where a plan is opened: /plan/half-hour-at-twenty. */
export function addressOf(record: Pick<PlanRecord, "source" | "name" | "address">): string {
  if (record.address !== undefined) return record.address;
  return `/${record.source === "mine" ? "mine" : "plan"}/${encodeURIComponent(record.name)}`;
}

/** The library, from the server or its copy in the cache. Throws NoAnswer where there is neither. */
export function libraryPlans(): Promise<LibraryPlan[]> {
  return fetchLibrary();
}

/** The plans kept on this device that are sound, the last opened first. */
export async function keptPlans(): Promise<PlanRecord[]> {
  return (await everyKept()).sound;
}

/** One's own plans and those that were sent, the last opened first, and the library as far as it can be had. */
export async function allPlans(): Promise<Plan[]> {
  const library = await libraryPlans().catch(() => []);
  const kept = (await keptPlans()).filter(({ source }) => source !== "built-in");
  return [...kept, ...library].map(({ plan }) => plan);
}

/** A kept plan that cannot be used: where it can be had again, and its title or else its address. */
export interface UnsoundPlan {
  address: string;
  title: string;
}

/** Every plan kept on this device: the sound ones, the last opened first, and the others. */
export async function everyKept(): Promise<{ sound: PlanRecord[]; unsound: UnsoundPlan[] }> {
  const [sound, unsound]: [PlanRecord[], UnsoundPlan[]] = [[], []];
  for (const id of await database.keys("plans")) {
    const record = await database.get("plans", id).catch(() => undefined);
    if (record && !planFault(record)) sound.push(record);
    else if (addressOfId(id)) unsound.push({ address: addressOfId(id), title: titleOf(record) || addressOfId(id) });
  }
  return { sound: sound.sort((a, b) => b.kept_at_ms - a.kept_at_ms), unsound };
}

function titleOf(record: PlanRecord | undefined): string {
  const title: unknown = record?.plan?.title;
  return typeof title === "string" ? title : "";
}

/** A plan as it is kept here; undefined when there is none of that id. Throws Unsound. */
async function storedPlan(id: string): Promise<PlanRecord | undefined> {
  const record = await database.get("plans", id).catch(() => null);
  if (record === undefined) return undefined;
  const fault: Fault | null = record ? planFault(record) : { kind: "unreadable", where: "" };
  if (fault) throw new Unsound(fault);
  return record!;
}

/** Where the plan of that id is opened; "" for what is no id of a plan, and for one whose address held all of it. */
export function addressOfId(id: string): string {
  const [, short] = /^sent:([a-z2-7]{16,})$/.exec(id) ?? [];
  if (short) return `/p/${short}`;
  if (!/^(mine|built-in):./.test(id)) return "";
  const [source, ...name] = id.split(":");
  return addressOf({ source: source === "mine" ? "mine" : "built-in", name: name.join(":") });
}

/**
 * Opens a built-in plan and keeps it; without an answer, the copy kept earlier.
 * Throws Refused (404: no such plan), NoAnswer (and never opened here before) or Unsound (as is the copy).
 */
export async function openBuiltIn(slug: string): Promise<PlanRecord> {
  const id = `built-in:${slug}`;
  try {
    const [{ kind, plan, findings }, before] = await Promise.all([builtIn(slug), storedPlan(id).catch(() => undefined)]);
    const same = before?.appraisal && JSON.stringify(before.plan) === JSON.stringify(plan);
    const appraisal = same ? { appraisal: before.appraisal! } : {};
    const timeline = { ...compiledHere(plan), findings };
    return await keep(checked({ id, source: "built-in", name: slug, kind, plan, timeline, ...appraisal, kept_at_ms: Date.now() }));
  } catch (error) {
    const kept = error instanceof NoAnswer ? await storedPlan(id) : undefined;
    if (kept) return kept;
    throw error;
  }
}

/** The library may be that of a newer server, or a damaged copy in the cache. */
function checked(record: PlanRecord): PlanRecord {
  const fault = planFault(record);
  if (fault) throw new Unsound(fault);
  return record;
}

/** Exactly what the server compiles. Throws Unsound where the plan cannot be compiled by this build. */
function compiledHere(plan: Plan): Timeline {
  try {
    return compiledForAnybody(plan);
  } catch {
    throw new Unsound(uncompiledFault(plan));
  }
}

async function builtIn(slug: string): Promise<LibraryPlan> {
  const found = (await fetchLibrary()).find((plan) => plan.slug === slug);
  if (!found) throw new Refused(404, "there is no built-in plan of that name", []);
  return found;
}

/** Opens a plan, from wherever it comes. Throws Refused (404) where there is none, NoAnswer, Unsound. */
export function openPlan(source: Source, name: string): Promise<PlanRecord> {
  return source === "built-in" ? openBuiltIn(name) : openKept(source, name);
}

/** Opens one's own plan. Throws Refused (404) where this device has none of that name, Unsound. */
export function openMine(name: string): Promise<PlanRecord> {
  return openKept("mine", name);
}

async function openKept(source: Source, name: string): Promise<PlanRecord> {
  const record = await storedPlan(`${source}:${name}`);
  if (!record) throw new Refused(404, "this plan is not on this device: it may have been made on another one", []);
  return keep({ ...record, kept_at_ms: Date.now() });
}

/**
 * Compiles one's own plan anew from what is left of it, its text or else its plan, and keeps it in its place.
 * Throws Refused where nothing is left that can be read, or NoAnswer.
 */
export async function remake(name: string, rower: AthleteRecord): Promise<PlanRecord> {
  const left = await database.get("plans", `mine:${name}`).catch(() => undefined);
  if (typeof left?.text === "string") {
    const read = await readShorthand(left.text);
    return keepMine({ ...(await compiled(read.plan, rower)), ...read }, name);
  }
  if (!left?.plan) throw new Refused(404, "nothing is left of this plan on this device: open its link again, or write it anew", []);
  return keepMine(await compiled(left.plan, rower), name);
}

/** Keeps a plan as one's own: in place of one's own plan of that name, or of one that says the same, or under a new name. */
export async function keepMine(content: Before, in_place_of?: string): Promise<PlanRecord> {
  const name = in_place_of ?? (await nameOfSame(content.text)) ?? newId();
  const id = `mine:${name}`;
  const before = await database.get("plans", id).catch(() => undefined);
  return keep({ id, source: "mine", name, kind: "", ...(before?.tags ? { tags: before.tags } : {}), ...content, kept_at_ms: Date.now() });
}

async function nameOfSame(text: string | undefined): Promise<string | undefined> {
  if (text === undefined) return undefined;
  return (await keptPlans()).find((record) => record.source === "mine" && record.text === text)?.name;
}

/** Whether a plan, read back from storage, is really there with its timeline: half the proof that it is saved. */
export async function isKept(id: string): Promise<boolean> {
  if (database.where() === "memory") return false;
  return (await storedPlan(id).catch(() => undefined)) !== undefined;
}

/** Takes a plan off this device. */
export function forgetPlan(id: string): Promise<void> {
  return database.remove("plans", id);
}

/** A device that is full still lets a plan be rowed; `isKept` then says no. */
export async function keep(record: PlanRecord): Promise<PlanRecord> {
  await database.put("plans", record).catch(() => undefined);
  return record;
}
