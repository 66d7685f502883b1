/** What keys ask for, and the keys of headphones over a pretended system. */
import assert from "node:assert/strict";
import { afterEach, beforeEach, test } from "node:test";
import { silence } from "../../static/src/audio/quiet-loop.js";
import { actionOf, BINDINGS } from "../../static/src/components/rowing-keys.js";
import { MediaKeys, mediaKeysKnown } from "../../static/src/state/media-keys.js";

const press = (key: string, more: object = {}) => actionOf({ key, repeat: false, ctrlKey: false, metaKey: false, altKey: false, ...more });

test("each key does one thing", () => {
  const all = BINDINGS.flatMap(({ keys }) => keys);
  assert.equal(new Set(all).size, all.length);
  assert.deepEqual([" ", "ArrowLeft", "ArrowRight", "+", "Escape", "PageDown", "PageUp", "."].map((key) => press(key)),
    ["hold", "back", "skip", "minute", "end", "next", "back", "hold"]);
});

test("a key that is held down, or goes with another, is none of ours", () => {
  assert.equal(press(" ", { repeat: true }), undefined);
  assert.equal(press("+", { ctrlKey: true }), undefined, "that is zoom");
  assert.equal(press("ArrowLeft", { altKey: true }), undefined, "that is the page before");
  assert.equal(press("b", { metaKey: true }), undefined);
  assert.equal(press("x"), undefined);
});

test("the silence is a sound file of ten seconds at rest", () => {
  // The header as in "Multimedia Programming Interface and Data Specifications 1.0" (1991): PCM, 8 bit, centred on 128.
  const file = new DataView(silence());
  const text = (at: number) => String.fromCharCode(...[0, 1, 2, 3].map((step) => file.getUint8(at + step)));
  assert.deepEqual([text(0), text(8), text(12), text(36)], ["RIFF", "WAVE", "fmt ", "data"]);
  assert.equal(file.getUint32(4, true) + 8, file.byteLength);
  assert.equal(file.getUint32(40, true) / file.getUint32(28, true), 10);
  assert.ok(new Uint8Array(file.buffer, 44).every((sample) => sample === 128));
});

const handlers = new Map<string, (() => void) | null>();
const session = {
  metadata: null as { title: string } | null,
  playbackState: "none",
  setActionHandler(action: string, handler: (() => void) | null) {
    if (action === "previoustrack") throw new TypeError("not known here");
    handlers.set(action, handler);
  },
};
const real = Object.getOwnPropertyDescriptor(globalThis, "navigator");
let playing = false;
const element = (refused = false) => ({
  src: "blob:nowhere",
  play: async () => {
    if (refused) throw new DOMException("not in a tap", "NotAllowedError");
    playing = true;
  },
  pause: () => void (playing = false),
}) as unknown as HTMLAudioElement;

beforeEach(() => {
  Object.defineProperty(globalThis, "navigator", { value: { mediaSession: session }, configurable: true });
  Object.assign(globalThis, { MediaMetadata: class { constructor(shown: object) { Object.assign(this, shown); } } });
  handlers.clear();
});
afterEach(() => {
  if (real) Object.defineProperty(globalThis, "navigator", real);
  else Reflect.deleteProperty(globalThis, "navigator");
  Reflect.deleteProperty(globalThis, "MediaMetadata");
});

function taken(refused = false) {
  const did: string[] = [];
  const note = (what: string) => () => void did.push(what);
  const keys = new MediaKeys({ hold: note("hold"), goOn: note("go on"), back: note("back"), next: note("next") }, () => element(refused));
  return { keys, did };
}

test("the keys of headphones hold, go on and go to what is next; one that a system does not know costs no other", async () => {
  const { keys, did } = taken();
  await keys.take();
  assert.equal(playing, true);
  for (const action of ["pause", "play", "nexttrack"]) handlers.get(action)!();
  assert.deepEqual(did, ["hold", "go on", "next"]);
});

test("the lock screen shows what is rowed and whether it is held", async () => {
  const { keys } = taken();
  keys.show({ title: "r24 half", artist: "A plan", held: false });
  assert.equal(session.metadata, null, "nothing is taken yet");
  await keys.take();
  keys.show({ title: "r24 half", artist: "A plan", held: true });
  assert.deepEqual([session.metadata!.title, session.playbackState], ["r24 half", "paused"]);
  keys.release();
  assert.deepEqual([session.metadata, session.playbackState, handlers.get("play"), playing], [null, "none", null, false]);
});

test("where playing is refused no key is taken", async () => {
  const { keys } = taken(true);
  await keys.take();
  assert.equal(handlers.get("play"), null);
});

test("a browser without such keys is known", () => {
  assert.equal(mediaKeysKnown(), true);
  Object.defineProperty(globalThis, "navigator", { value: {}, configurable: true });
  assert.equal(mediaKeysKnown(), false);
});
