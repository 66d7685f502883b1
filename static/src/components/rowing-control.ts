/** Other ways to steer a session than its buttons: keys of a keyboard or a clicker, of headphones and the lock screen. */
import type { ReactiveController, ReactiveControllerHost } from "lit";
import { chosen } from "../state/chosen.js";
import { MediaKeys } from "../state/media-keys.js";
import { player } from "../state/player.js";
import type { Snapshot } from "../state/snapshot.js";
import { actionOf, dialogIsOpen, isTaken, type RowingAction } from "./rowing-keys.js";
import { whatWords } from "./segment-words.js";

const UNDER_WAY: readonly Snapshot["phase"][] = ["count-in", "running", "waiting", "held"];

export class RowingControl implements ReactiveController {
  private readonly media = new MediaKeys({
    hold: () => player.hold(), goOn: () => player.goOn(), back: () => this.do("back"), next: () => this.do("next"),
  });
  private stop = (): void => {};
  private readonly onKey = (event: KeyboardEvent) => this.key(event);
  private readonly onClick = (event: MouseEvent) => this.clicked(event);

  constructor(
    private readonly host: ReactiveControllerHost & HTMLElement,
    private readonly does: Readonly<Record<RowingAction, () => void>>,
  ) {
    host.addController(this);
  }

  hostConnected(): void {
    addEventListener("keydown", this.onKey);
    this.host.addEventListener("click", this.onClick);
    this.stop = player.subscribe((snapshot) => this.follow(snapshot));
  }

  hostDisconnected(): void {
    removeEventListener("keydown", this.onKey);
    this.host.removeEventListener("click", this.onClick);
    this.stop();
    this.media.release();
  }

  /** Takes the keys of headphones, if that is chosen; in the tap that starts a session. */
  takeMediaKeys(): void {
    if (chosen.now.media_keys) void this.media.take().then(() => this.follow(player.snapshot()));
  }

  private do(action: RowingAction): void {
    if (UNDER_WAY.includes(player.snapshot().phase)) this.does[action]();
  }

  private key(event: KeyboardEvent): void {
    const action = chosen.now.keys ? actionOf(event) : undefined;
    const underWay = UNDER_WAY.includes(player.snapshot().phase);
    if (!action || !underWay || isTaken(event) || dialogIsOpen(this.host.shadowRoot!)) return;
    event.preventDefault();
    this.does[action]();
  }

  /** A button that was hit by hand lets go of the keyboard, or the space bar would press it again instead of holding. */
  private clicked(event: MouseEvent): void {
    if (UNDER_WAY.includes(player.snapshot().phase)) this.takeMediaKeys();
    if (!event.detail) return;
    const button = event.composedPath().find((node) => node instanceof HTMLButtonElement);
    if (button && !button.closest("dialog")) button.blur();
  }

  /** The keys are taken in the tap that starts a session, which is a moment before there is one. */
  private follow({ phase, segment, timeline }: Snapshot): void {
    if (phase === "finished" || phase === "elsewhere" || !chosen.now.media_keys) return this.media.release();
    if (!UNDER_WAY.includes(phase)) return;
    this.media.show({ title: whatWords(segment!), artist: timeline!.plan.title, held: phase === "held" });
  }
}
