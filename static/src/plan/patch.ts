/** A plan document changed by JSON Patch (RFC 6902): the operations that mends use. Nothing given is changed. */
import type { Edit } from "./wire.js";

/** The path of an edit leads nowhere in this document. */
export class PatchError extends Error {
  override readonly name = "PatchError";
}

type Holder = Record<string, unknown> | unknown[];

/** The document after all edits, in order. Throws PatchError; then nothing counts. */
export function patched<Document>(document: Document, edits: readonly Edit[]): Document {
  return edits.reduce<unknown>(edited, structuredClone(document)) as Document;
}

function edited(document: unknown, edit: Edit): unknown {
  const keys = keysOf(edit.path);
  const last = keys.pop();
  if (last === undefined) return whole(edit);
  const holder = keys.reduce<unknown>((value, key) => inside(value, key, edit.path), document);
  if (Array.isArray(holder)) changeList(holder, last, edit);
  else if (isObject(holder)) changeObject(holder, last, edit);
  else throw nowhere(edit.path);
  return document;
}

function whole({ op, path, value }: Edit): unknown {
  if (op === "remove") throw nowhere(path);
  return structuredClone(value);
}

/** "/a~1b/0" is "a/b" and then "0"; "" is the whole document. */
function keysOf(path: string): string[] {
  if (path === "") return [];
  if (!path.startsWith("/")) throw nowhere(path);
  return path.slice(1).split("/").map((key) => key.replaceAll("~1", "/").replaceAll("~0", "~"));
}

function inside(value: unknown, key: string, path: string): unknown {
  if (Array.isArray(value)) return value[indexIn(key, path, value.length - 1)];
  if (isObject(value) && Object.hasOwn(value, key)) return value[key];
  throw nowhere(path);
}

function changeList(list: unknown[], key: string, { op, path, value }: Edit): void {
  const at = op === "add" && key === "-" ? list.length : indexIn(key, path, list.length - (op === "add" ? 0 : 1));
  list.splice(at, op === "add" ? 0 : 1, ...(op === "remove" ? [] : [structuredClone(value)]));
}

function changeObject(object: Record<string, unknown>, key: string, { op, path, value }: Edit): void {
  if (op !== "add" && !Object.hasOwn(object, key)) throw nowhere(path);
  if (op === "remove") delete object[key];
  else Object.defineProperty(object, key, { value: structuredClone(value), enumerable: true, writable: true, configurable: true });
}

function indexIn(key: string, path: string, most: number): number {
  const index = /^(0|[1-9]\d*)$/.test(key) ? Number(key) : Infinity;
  if (index > most) throw nowhere(path);
  return index;
}

function isObject(value: unknown): value is Exclude<Holder, unknown[]> {
  return typeof value === "object" && value !== null;
}

function nowhere(path: string): PatchError {
  return new PatchError(`"${path}" leads nowhere in this plan`);
}
