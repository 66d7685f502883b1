/** Moving rows by a handle, with finger or mouse: where a row would be put, and that it was. Rows carry `data-place`. */
import type { ReactiveController, ReactiveControllerHost } from "lit";
import { following } from "../plan/reshape.js";

/** How near to the edge of the window it begins to scroll, and by how much at a time, in pixels. */
const EDGE = 90;
const SCROLL = 14;

type Host = ReactiveControllerHost & { renderRoot: HTMLElement | DocumentFragment };

export class Dragging implements ReactiveController {
  /** What is dragged, and before what it would be put; "" for neither. */
  from = "";
  to = "";

  constructor(
    private readonly host: Host,
    private readonly drop: (from: string, to: string) => void,
  ) {
    host.addController(this);
  }

  hostDisconnected(): void {
    this.from = this.to = "";
  }

  begin(event: PointerEvent, place: string): void {
    if (event.button) return;
    event.preventDefault();
    (event.target as Element).setPointerCapture(event.pointerId);
    this.from = place;
    this.host.requestUpdate();
  }

  over({ clientX, clientY }: PointerEvent): void {
    if (!this.from) return;
    if (clientY < EDGE) scrollBy(0, -SCROLL);
    else if (clientY > innerHeight - EDGE) scrollBy(0, SCROLL);
    const row = (this.host.renderRoot as ShadowRoot).elementFromPoint(clientX, clientY)?.closest<HTMLElement>("[data-place]");
    if (!row) return;
    const { top, height } = row.getBoundingClientRect();
    const place = row.dataset["place"]!;
    this.to = clientY < top + height / 2 ? place : following(place);
    this.host.requestUpdate();
  }

  end(): void {
    const { from, to } = this;
    this.cancel();
    if (from && to && to !== from && to !== following(from)) this.drop(from, to);
  }

  cancel(): void {
    this.from = this.to = "";
    this.host.requestUpdate();
  }
}
