/**
 * A plan inside a link. The form of a payload is described in web/link_codec.py, which has the same codec.
 *
 * A link is untrusted: its length is bounded before and after it is unpacked, and what is in it is looked at field
 * by field.
 */
import { deflateSync, inflateSync } from "fflate";
import { canonical } from "../plan/canonical.js";
import { checkedPlan } from "../plan/checked-plan.js";
import { crc32 } from "../plan/crc32.js";
import type { Plan } from "../plan/wire.js";
import dictionaryText from "./link-dictionary-1.txt";

const VERSION = 1;
const LONGEST = 8000;
const UNPACKED_BYTES = 256 * 1024;
const HEAD = 5;
const PAYLOAD = /^[A-Za-z0-9_-]*$/;
/** What a sentence puts behind a link. */
const AFTER_IT = ".,;:!?)]>}'\"»”’…";

const dictionary = new TextEncoder().encode(dictionaryText);

/** Why a link cannot be opened, or a plan has none. */
export type Fault = "empty" | "damaged" | "doubled" | "future" | "too-long" | "no-plan";

const SENTENCES: Record<Fault, string> = {
  empty: "The link holds no plan: what should stand after its # was cut off. Ask for it to be sent again.",
  damaged: "The link is damaged or was cut short, as happens when a message is broken into lines. Copy the whole of it, or ask for it to be sent again.",
  doubled: "The link stands there twice, one after the other. Take one of them away.",
  future: "The link was made by a newer Slipway than this one. Update this one: close every page of it, and open the link again with signal.",
  "too-long": "The plan is too long for a link that holds all of it.",
  "no-plan": "The link is whole, but what it holds is no plan.",
};

export class LinkError extends Error {
  override readonly name = "LinkError";

  constructor(readonly fault: Fault) {
    super(SENTENCES[fault]);
  }
}

/** The payload of a link that carries this plan. Throws LinkError when it would be too long. */
export function encode(plan: Plan): string {
  const text = new TextEncoder().encode(canonical(plan));
  const payload = base64url(sealed(VERSION, deflateSync(text, { level: 9, mem: 9, dictionary })));
  if (payload.length > LONGEST) throw new LinkError("too-long");
  return payload;
}

/** The plan of a link, whatever a message put behind or inside it. Throws LinkError and nothing else. */
export function decode(payload: string): Plan {
  const { version, body } = opened(payload);
  if (version !== VERSION) throw new LinkError("future");
  return planOf(inflated(body));
}

function sealed(version: number, body: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(HEAD + body.length);
  bytes[0] = version;
  bytes.set(body, HEAD);
  new DataView(bytes.buffer).setUint32(1, crc32([version], body));
  return bytes;
}

function opened(payload: string): { version: number; body: Uint8Array } {
  const text = tidied(payload);
  if (!text) throw new LinkError("empty");
  const half = Math.floor(text.length / 2);
  if (text.includes("#") || text.slice(0, half) === text.slice(half)) throw new LinkError("doubled");
  if (text.length > LONGEST) throw new LinkError("too-long");
  if (!PAYLOAD.test(text) || text.length % 4 === 1) throw new LinkError("damaged");
  const bytes = fromBase64url(text);
  if (bytes.length <= HEAD) throw new LinkError("damaged");
  const [version, body] = [bytes[0]!, bytes.subarray(HEAD)];
  if (crc32([version], body) !== new DataView(bytes.buffer).getUint32(1)) throw new LinkError("damaged");
  return { version, body };
}

function tidied(payload: string): string {
  const text = payload.replace(/\s/g, "");
  let end = text.length;
  while (end && AFTER_IT.includes(text[end - 1]!)) end -= 1;
  return text.slice(0, end);
}

/** What was packed, unless it is packed wrongly or comes to more than any plan does; it never grows past its bound. */
function inflated(body: Uint8Array): Uint8Array {
  const room = new Uint8Array(UNPACKED_BYTES + 1);
  let unpacked: Uint8Array;
  try {
    unpacked = inflateSync(body, { dictionary, out: room });
  } catch {
    throw new LinkError("no-plan");
  }
  if (unpacked.length > UNPACKED_BYTES) throw new LinkError("too-long");
  return unpacked;
}

/** Only the one spelling of a plan is taken, so that nothing can be read in two ways. */
function planOf(bytes: Uint8Array): Plan {
  try {
    const text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
    const plan = checkedPlan(JSON.parse(text));
    if (plan && canonical(plan) === text) return plan;
  } catch {
    // No text, no JSON, or brackets without end.
  }
  throw new LinkError("no-plan");
}

export function base64url(bytes: Uint8Array): string {
  const letters = Array.from(bytes, (byte) => String.fromCharCode(byte)).join("");
  return btoa(letters).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
}

function fromBase64url(text: string): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(atob(text.replaceAll("-", "+").replaceAll("_", "/")), (letter) => letter.charCodeAt(0));
}
