/** The server's API: every call with a time-out, every refusal as a typed error. */
import { alone } from "../plan/alone.js";
import type { Room } from "../plan/types.js";
import type {
  Athlete, AthleteAnswer, ExportRequest, Library, LibraryPlan, Link, LinkedPlan, Plan, Problem, ProblemDocument, Session, SessionRequest, ShorthandAnswer, TechniqueLibrary, Timeline, WallKeyRequest, WallMade,
} from "../plan/wire.js";

const TIMEOUT_MS = 15_000;
/** Some files are large, and the way to a phone is slow. */
const FILE_TIMEOUT_MS = 120_000;

type Headers = Readonly<Record<string, string>>;

/** The server answered, and refused: `problems` says what to mend, if it can be mended. */
export class Refused extends Error {
  override readonly name = "Refused";

  constructor(readonly status: number, detail: string, readonly problems: readonly Problem[]) {
    super(detail);
  }
}

/** No answer came: no signal, a server that is down, or one that took longer than 15 s. */
export class NoAnswer extends Error {
  override readonly name = "NoAnswer";
}

/** The built-in plans. Throws Refused or NoAnswer, as does everything here. */
export async function fetchLibrary(): Promise<LibraryPlan[]> {
  return (await ask<Library>("/api/library")).plans;
}

/** The coach's library: positions, drills and calls. */
export function fetchTechnique(): Promise<TechniqueLibrary> {
  return ask<TechniqueLibrary>("/api/technique");
}

/** A plan, and its shorthand in canonical form. */
export interface Shorthand {
  plan: Plan;
  text: string;
}

/** The plan that a coach's shorthand says. A call that was given up by `signal` throws NoAnswer. */
export async function readShorthand(text: string, signal?: AbortSignal): Promise<Shorthand> {
  const answer = await ask<ShorthandAnswer>("/api/shorthand", { text }, {}, signal);
  if (!answer.plan) throw new NoAnswer("the answer to the shorthand holds no plan");
  return { plan: answer.plan, text: answer.text };
}

/** A plan in canonical shorthand. */
export async function writeShorthand(plan: Plan): Promise<string> {
  return (await ask<ShorthandAnswer>("/api/shorthand", { plan })).text;
}

/** The timeline of a plan with what there is to say about it; for anybody where no athlete is given. */
export function fetchTimeline(plan: Plan, athlete?: Athlete, room?: Room, signal?: AbortSignal): Promise<Timeline> {
  return ask<Timeline>("/api/timeline", { plan, athlete, room }, {}, signal);
}

/** A short address for a plan, the same for the same plan; `key` is for servers that ask for one, else "". */
export function publishPlan(plan: Plan, key: string): Promise<Link> {
  return ask<Link>("/api/links", { plan }, key ? bearer(key) : {});
}

/** The plan of a short address. */
export async function fetchPublished(id: string): Promise<Plan> {
  return (await ask<LinkedPlan>(`/api/links/${encodeURIComponent(id)}`)).plan;
}

/** A session made for a piece, and why it looks as it does. */
export function fetchSession(asked: SessionRequest): Promise<Session> {
  return ask<Session>("/api/session", asked);
}

/** What follows from an athlete's results. */
export function fetchAthleteAnswer(athlete: Athlete): Promise<AthleteAnswer> {
  return ask<AthleteAnswer>("/api/athlete", athlete);
}

/** A file, and the name to give it. */
export interface MadeFile {
  name: string;
  blob: Blob;
}

/** A new wall; `key` is for servers that ask for one before they take anything, else "". */
export function makeWall(key: string): Promise<WallMade> {
  return ask<WallMade>("/api/walls", {}, key ? bearer(key) : {});
}

/** Another key for a wall in the place of the one that asks. */
export function renewWallKey(id: string, key: string, next_key: string): Promise<WallMade> {
  return ask<WallMade>(`/api/walls/${encodeURIComponent(id)}/key`, { key: next_key } satisfies WallKeyRequest, bearer(key));
}

/** What a wall shows, or is to show; the document is undefined where nothing has changed since If-None-Match. */
export async function askWall(id: string, method: "GET" | "PUT", headers: Headers, body?: unknown): Promise<{ document: unknown; headers: Response["headers"] }> {
  const sent: Headers = body === undefined ? {} : { "Content-Type": "application/json" };
  const options = { method, headers: { ...sent, ...headers }, cache: "no-store" as const, ...(body === undefined ? {} : { body: JSON.stringify(body) }) };
  const response = await fetch(`/api/walls/${encodeURIComponent(id)}`, { ...options, signal: AbortSignal.timeout(TIMEOUT_MS) }).catch(noAnswer);
  if (response.status === 304) return { document: undefined, headers: response.headers };
  const document = await json(response);
  if (!response.ok) throw refusal(response.status, document);
  return { document, headers: response.headers };
}

function bearer(key: string): Headers {
  return { Authorization: `Bearer ${key}` };
}

/** A plan made into a file of this kind. */
export async function fetchFile(kind: string, asked: ExportRequest): Promise<MadeFile> {
  const response = await send(`/api/exports/${kind}`, JSON.stringify(asked), FILE_TIMEOUT_MS);
  if (!response.ok) throw refusal(response.status, await json(response));
  const name = nameIn(response.headers.get("Content-Disposition") ?? "");
  if (!name) throw new NoAnswer("an answer came that is not from Slipway");
  return { name, blob: await response.blob().catch(noAnswer) };
}

/** The name in a Content-Disposition as the server writes it (RFC 6266). */
function nameIn(disposition: string): string | undefined {
  const coded = /filename\*=UTF-8''([^;]+)/.exec(disposition)?.[1];
  return coded && decodeURIComponent(coded);
}

/** What the server has to say against a text that is no JSON, with the line and column. Throws NoAnswer. */
export async function refusalOf(text: string): Promise<Refused> {
  const response = await send("/api/shorthand", text);
  const document = await json(response);
  if (response.ok) throw new NoAnswer("an answer came that is not from Slipway");
  return refusal(response.status, document);
}

async function ask<Answer>(path: string, body?: unknown, headers: Headers = {}, given_up?: AbortSignal): Promise<Answer> {
  const response = await send(path, body === undefined ? undefined : JSON.stringify(body), TIMEOUT_MS, headers, given_up);
  const document = await json(response);
  if (response.ok) return document as Answer;
  throw refusal(response.status, document);
}

async function send(path: string, body: string | undefined, timeout_ms = TIMEOUT_MS, headers: Headers = {}, given_up?: AbortSignal): Promise<Response> {
  if (alone) throw new NoAnswer("this page stands alone: there is no server behind it");
  const posted = { method: "POST", headers: { "Content-Type": "application/json", ...headers }, body };
  const too_late = AbortSignal.timeout(timeout_ms);
  try {
    return await fetch(path, { ...(body === undefined ? {} : posted), signal: given_up ? either(too_late, given_up) : too_late });
  } catch (error) {
    return noAnswer(error);
  }
}

/** As AbortSignal.any, which Safari has only from 17.4. */
function either(...signals: readonly AbortSignal[]): AbortSignal {
  const both = new AbortController();
  for (const signal of signals) {
    if (signal.aborted) both.abort(signal.reason);
    signal.addEventListener("abort", () => both.abort(signal.reason), { once: true, signal: both.signal });
  }
  return both.signal;
}

function noAnswer(error: unknown): never {
  throw new NoAnswer("no answer came: there is no signal, or the server is not there", { cause: error });
}

async function json(response: Response): Promise<unknown> {
  try {
    return await response.json();
  } catch (error) {
    throw new NoAnswer(`an answer came (status ${response.status}) that is not from Slipway`, { cause: error });
  }
}

function refusal(status: number, document: unknown): Refused {
  const { detail, problems } = (document ?? {}) as Partial<ProblemDocument>;
  return new Refused(status, detail ?? `the server refused with status ${status}`, problems ?? []);
}
