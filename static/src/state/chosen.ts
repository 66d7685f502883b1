/** What the person has chosen, as it stands now: read once, changed at once, followed when another tab changes it. */
import { changePreferences, readPreferences, USUAL, type Preferences } from "../data/preferences.js";
import { mirroredTheme, mirrorTheme } from "../data/theme-mirror.js";

/** Tells other tabs, and hears of them. */
export type Channel = Pick<BroadcastChannel, "postMessage" | "onmessage">;

export class Chosen {
  /** Until storage has answered: the usual, with the theme that is on the page already. */
  now: Preferences = { ...USUAL, theme: mirroredTheme() };
  /** Settled once what is stored has been read. */
  readonly ready: Promise<void>;
  private changes = 0;
  private readonly listeners = new Set<() => void>();

  constructor(private readonly channel: Channel | undefined = channelOfThePage()) {
    this.ready = this.follow();
    if (channel) channel.onmessage = () => void this.follow();
    globalThis.document?.addEventListener("visibilitychange", () => void (document.hidden || this.follow()));
  }

  /** Calls `listener` whenever something has changed; the answer stops that. */
  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Changes some of it from now on; false when the device could not keep that. */
  async change(changes: Partial<Preferences>): Promise<boolean> {
    this.changes += 1;
    this.take({ ...this.now, ...changes });
    const kept = await changePreferences(changes).then(() => true, () => false);
    this.channel?.postMessage("changed");
    return kept;
  }

  /** Takes what is stored now; a reading that was overtaken by a change of our own is out of date. */
  async follow(): Promise<void> {
    const before = this.changes;
    const stored = await readPreferences().catch(() => this.now);
    if (before === this.changes) this.take(stored);
  }

  private take(next: Preferences): void {
    const names = Object.keys(next) as (keyof Preferences)[];
    if (names.every((name) => next[name] === this.now[name])) return;
    this.now = next;
    mirrorTheme(next.theme);
    this.listeners.forEach((tell) => tell());
  }
}

function channelOfThePage(): Channel | undefined {
  return "document" in globalThis && "BroadcastChannel" in globalThis ? new BroadcastChannel("slipway-preferences") : undefined;
}

/** What is chosen on this device. */
export const chosen = new Chosen();
