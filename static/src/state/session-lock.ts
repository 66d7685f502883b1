/**
 * One tab has the session. Where there are Web Locks they see to it; on plain http, which has none, tabs ask each
 * other over a channel. A tab that is taken over from is told, and must stop.
 */
import { newId } from "../data/ids.js";

export interface SessionLock {
  /** True when this tab has the session now; false when another one has it and is alive. */
  take(): Promise<boolean>;
  /** Takes it from whichever tab has it. */
  takeOver(): Promise<void>;
  release(): void;
}

const NAME = "slipway-session";
/** A page that is just being reloaded may hold the lock for a moment longer. */
const RELOAD_MS = 750;
/** Another tab answers within this time, hidden or not; one that is frozen does not. */
const ANSWER_MS = 500;

/** The lock of this tab; `lost` is called when another tab takes it over. */
export function makeSessionLock(lost: () => void): SessionLock {
  const locks = (globalThis.navigator as { locks?: LockManager } | undefined)?.locks;
  if (locks) return webLock(locks, lost);
  return "BroadcastChannel" in globalThis ? channelLock(lost) : onlyTab();
}

/** Whether any tab of this browser has a session running. */
export async function sessionRunsSomewhere(): Promise<boolean> {
  const lock = makeSessionLock(() => undefined);
  const free = await lock.take();
  if (free) lock.release();
  return !free;
}

function webLock(locks: LockManager, lost: () => void): SessionLock {
  let letGo: (() => void) | undefined;
  let asking: Promise<boolean> | undefined;
  let wanted = false;

  function request(options: LockOptions): Promise<boolean> {
    return new Promise((answer) => {
      let had = false;
      const held = locks.request(NAME, options, () => {
        had = true;
        answer(wanted);
        return wanted ? new Promise<void>((release) => (letGo = release)) : undefined;
      });
      held.catch(() => {
        if (!had) return answer(false);
        letGo = undefined;
        lost();
      });
    });
  }

  return {
    /** Asked for twice at once it is one question, and given up before the answer it is let go with it. */
    async take() {
      wanted = true;
      if (letGo) return true;
      asking ??= request({ signal: AbortSignal.timeout(RELOAD_MS) }).finally(() => (asking = undefined));
      return asking;
    },
    async takeOver() {
      wanted = true;
      await request({ steal: true });
    },
    release() {
      wanted = false;
      letGo?.();
      letGo = undefined;
    },
  };
}

type Word = { kind: "who-has-it" | "i-have-it" | "taken-over"; from: string };

function channelLock(lost: () => void): SessionLock {
  const me = newId();
  let channel: BroadcastChannel | undefined;
  let mine = false;
  let answered: (() => void) | undefined;

  function say(kind: Word["kind"]): void {
    channel ??= listen();
    channel.postMessage({ kind, from: me } satisfies Word);
  }

  function listen(): BroadcastChannel {
    const opened = new BroadcastChannel(NAME);
    opened.onmessage = ({ data }: MessageEvent<Word>) => hear(data);
    return opened;
  }

  function hear({ kind, from }: Word): void {
    if (kind === "who-has-it" && mine) say("i-have-it");
    if (kind === "i-have-it") answered?.();
    // Two tabs that took it in the same moment: the smaller name keeps it.
    if (mine && (kind === "taken-over" || (kind === "i-have-it" && from < me))) {
      letGo();
      lost();
    }
  }

  function letGo(): void {
    mine = false;
    channel?.close();
    channel = undefined;
  }

  return {
    async take() {
      if (mine) return true;
      const other = new Promise<true>((answer) => (answered = () => answer(true)));
      say("who-has-it");
      const taken = await Promise.race([other, pause(ANSWER_MS)]);
      answered = undefined;
      if (taken) return letGo(), false;
      mine = true;
      say("i-have-it");
      return true;
    },
    async takeOver() {
      say("taken-over");
      mine = true;
    },
    release: letGo,
  };
}

/** A browser that can tell tabs nothing of each other. */
function onlyTab(): SessionLock {
  return { take: async () => true, takeOver: async () => undefined, release: () => undefined };
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((done) => setTimeout(done, milliseconds));
}
