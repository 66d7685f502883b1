/** The voice of a session: says what is due, one thing at a time, and is silent before every change. */
import { Voice } from "../audio/voice.js";
import type { Spoken } from "../timeline/spoken.js";

/** What the voice has to know. */
export interface Told {
  /** What is to be said between two moments of the session. */
  spoken(from_s: number, to_s: number): Spoken[];
  /** Undefined where no voice is wanted. */
  wish(): { uri: string; volume: number } | undefined;
}

/** Later than this it is left out: it would run into what follows. */
const LATE_S = 1;

export class SessionSpeech {
  private looked_s: number | undefined;
  private silent_s = Infinity;

  constructor(
    private readonly told: Told,
    private readonly voice = new Voice(),
  ) {}

  /** In a tap: lets the page speak. */
  wake(): void {
    if (this.told.wish()) this.voice.wake();
  }

  /** A wake-up at a moment of the session. */
  tick(now_s: number): void {
    if (now_s >= this.silent_s) this.silence();
    const from_s = Math.max(this.looked_s ?? now_s, now_s - LATE_S);
    this.looked_s = now_s;
    const wish = this.told.wish();
    if (!wish) return this.silence();
    for (const { kind, text, silent_s } of this.told.spoken(from_s, now_s)) {
      if (kind === "call" && this.voice.busy) continue;
      this.silence();
      if (this.voice.say(text, wish.uri, wish.volume)) this.silent_s = silent_s;
    }
  }

  /** The session has changed: what is being said may no longer hold, nor what was looked at. */
  replan(now_s: number): void {
    this.silence();
    this.looked_s = now_s;
  }

  silence(): void {
    this.silent_s = Infinity;
    this.voice.silence();
  }
}

/** The voices to choose from on this device, by name and address. */
export async function voicesHere(): Promise<{ name: string; uri: string }[]> {
  return (await new Voice().voices()).map(({ name, voiceURI }) => ({ name, uri: voiceURI }));
}
