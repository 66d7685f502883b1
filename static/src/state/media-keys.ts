/**
 * The keys of headphones and of the lock screen, where the system gives them (Media Session).
 *
 * It gives them to whoever plays media, and may then stop other music: so they are taken only by choice.
 */
import { quietLoop } from "../audio/quiet-loop.js";

/** What the keys do. */
export interface MediaActions {
  hold(): void;
  goOn(): void;
  back(): void;
  next(): void;
}

/** What the lock screen shows. */
export interface Shown {
  title: string;
  artist: string;
  held: boolean;
}

/** Whether this browser knows of such keys; the system may still give none. */
export function mediaKeysKnown(): boolean {
  return "mediaSession" in navigator && "MediaMetadata" in globalThis;
}

export class MediaKeys {
  private element: HTMLAudioElement | undefined;
  private last = "";

  constructor(
    private readonly actions: MediaActions,
    private readonly makeElement: () => HTMLAudioElement = quietLoop,
  ) {}

  /** Takes the keys; to be called in a tap. Where playing is refused there are none. */
  async take(): Promise<void> {
    if (this.element || !mediaKeysKnown()) return;
    this.element = this.makeElement();
    this.handle({ play: () => this.actions.goOn(), pause: () => this.actions.hold(), previoustrack: () => this.actions.back(), nexttrack: () => this.actions.next() });
    await this.element.play().catch(() => this.release());
  }

  /** Shows what is rowed; cheap when nothing has changed. */
  show(shown: Shown): void {
    const key = JSON.stringify(shown);
    if (!this.element || key === this.last) return;
    this.last = key;
    navigator.mediaSession.metadata = new MediaMetadata({ title: shown.title, artist: shown.artist, album: "Slipway" });
    navigator.mediaSession.playbackState = shown.held ? "paused" : "playing";
  }

  release(): void {
    if (!this.element) return;
    this.element.pause();
    URL.revokeObjectURL(this.element.src);
    this.element = undefined;
    this.last = "";
    this.handle({ play: null, pause: null, previoustrack: null, nexttrack: null });
    navigator.mediaSession.metadata = null;
    navigator.mediaSession.playbackState = "none";
  }

  /** A browser that does not know one of the keys says so by throwing; it then has the others. */
  private handle(handlers: Partial<Record<MediaSessionAction, (() => void) | null>>): void {
    for (const [action, handler] of Object.entries(handlers)) {
      try {
        navigator.mediaSession.setActionHandler(action as MediaSessionAction, handler);
      } catch {
        continue;
      }
    }
  }
}
