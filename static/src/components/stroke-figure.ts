/** The drawing of a position of the stroke or of a drill, by its name. Attribute `name`.
 *
 * The pose that it comes to is drawn in full, those it comes from as thin lines; two bars mark a stop.
 */
import { LitElement, css, nothing, svg, type SVGTemplateResult } from "lit";
import { DRAWINGS, type Drawing } from "./figure-poses.js";
import { HEAD_RADIUS, HIP_HEIGHT, between, floorLeg, jointsOf, restingArm, type Joints, type Point } from "./figure-geometry.js";

const TOP = 128;
const CHAIN: Point = { x: -74, y: 62 };
const SEAT = HIP_HEIGHT - 10;
/** How far the plate lies under the sole, held by a strap and not. */
const PLATE = 4.5;
const LOOSE = 9;

export class StrokeFigure extends LitElement {
  static override properties = { name: {} };
  declare name: string;

  constructor() {
    super();
    this.name = "";
  }

  static override styles = css`
    :host { display: block; }
    svg { display: block; width: 100%; height: 100%; }
    path, circle { fill: none; stroke-linecap: round; stroke-linejoin: round; }
    .machine { stroke: var(--edge); stroke-width: 3; }
    .wheel { fill: var(--gap); }
    .chain { stroke: var(--edge); stroke-width: 1.5; }
    .seat { stroke: var(--edge); stroke-width: 5; }
    .body { stroke: var(--ink); }
    .rim { stroke: var(--figure-ground, var(--water)); stroke-linecap: butt; }
    .head { fill: var(--ink); }
    .trace { stroke: var(--edge); stroke-width: 2.5; }
    .grip { fill: var(--figure-ground, var(--water)); }
    .handle { fill: var(--catch); }
    .mark { stroke: var(--catch); stroke-width: 4; }
  `;

  override render() {
    const drawing = DRAWINGS[this.name];
    if (!drawing) return nothing;
    const all = drawing.poses.map(jointsOf);
    const now = all[all.length - 1]!;
    return svg`<svg viewBox="-122 0 252 ${TOP}" role="img" aria-label=${`Drawing: ${this.name}`}>
      ${MACHINE}
      <path class="machine" d=${line(now.heel, now.toe, drawing.limb === "feet loose" ? LOOSE : PLATE)} />
      ${all.slice(0, -1).map(trace)}
      <path class="chain" d=${path([CHAIN, now.hand])} />
      <path class="seat" d=${path([{ x: now.hip.x - 11, y: SEAT }, { x: now.hip.x + 11, y: SEAT }])} />
      ${rower(now, drawing.limb)}
      ${drawing.mark ? mark(drawing.mark, now.hand) : nothing}
    </svg>`;
  }
}
customElements.define("stroke-figure", StrokeFigure);

const MACHINE = svg`<g class="machine">
  <circle class="wheel" cx="-92" cy="92" r="26" /><circle cx="-92" cy="92" r="5" />
  <path d="M-66 98H118M-60 98V126M-72 126H-48M110 98V126M98 126H122" />
</g>`;

function rower(at: Joints, other: Drawing["limb"]): SVGTemplateResult {
  const resting = restingArm(at);
  const floor = floorLeg(at.hip);
  return svg`
    ${other === "foot on floor" ? [limb([at.hip, floor.knee], 13), limb([floor.knee, floor.ankle, floor.toe], 10)] : nothing}
    ${limb([at.hip, at.shoulder], 20)}
    ${limb([at.shoulder, at.head], 9)}
    <circle class="head" cx=${at.head.x} cy=${up(at.head.y)} r=${HEAD_RADIUS * 0.92} />
    ${limb([at.heel, at.toe], 6)}
    ${limb([at.knee, at.ankle, at.heel], 10)}
    ${limb([at.hip, at.knee], 13, 0.35)}
    ${other === "feet loose" ? nothing : svg`<path class="rim" stroke-width="2.5" d=${strap(at)} />`}
    ${other === "hand on thigh" ? limb([at.shoulder, resting.elbow, resting.hand], 8, 0.4) : nothing}
    ${limb([at.shoulder, at.elbow, at.hand], 8, 0.3)}
    <circle class="handle" cx=${at.hand.x} cy=${up(at.hand.y)} r="4.5" />`;
}

/** A limb; from that share of its first part on it has a rim in the colour of the ground, and stands out. */
function limb(points: readonly Point[], width: number, rimFrom?: number): SVGTemplateResult {
  const [first, second, ...others] = points;
  const rim = rimFrom === undefined ? nothing
    : svg`<path class="rim" stroke-width=${width + 3} d=${path([between(first!, second!, rimFrom), second!, ...others])} />`;
  return svg`${rim}<path class="body" stroke-width=${width} d=${path(points)} />`;
}

/** Across the foot, where it is held. */
function strap({ heel, toe }: Joints): string {
  const at = between(heel, toe, 0.62);
  const across = { x: (toe.y - heel.y) * 0.18, y: (heel.x - toe.x) * 0.18 };
  return path([{ x: at.x + across.x, y: at.y + across.y }, { x: at.x - across.x, y: at.y - across.y }]);
}

function trace({ ankle, knee, hip, shoulder, elbow, hand, head }: Joints): SVGTemplateResult {
  return svg`<g class="trace"><path d=${path([ankle, knee, hip, shoulder, elbow, hand]) + path([shoulder, between(shoulder, head, 0.5)])} />
    <circle cx=${head.x} cy=${up(head.y)} r=${HEAD_RADIUS * 0.8} /><circle class="grip" cx=${hand.x} cy=${up(hand.y)} r="3" /></g>`;
}

function mark(kind: NonNullable<Drawing["mark"]>, hand: Point): SVGTemplateResult {
  if (kind === "pause") return svg`<path class="mark" d="M-98 6v18M-86 6v18" />`;
  const left = kind === "to finish" ? "" : "m7-6l-7 6l7 6m-7-6";
  const right = kind === "to catch" ? "" : "m-7-6l7 6l-7 6";
  return svg`<path class="mark" d=${`M${round(Math.max(hand.x - 44, -62))} ${up(hand.y) + 12}${left}h34${right}`} />`;
}

function path(points: readonly Point[]): string {
  return `M${points.map(({ x, y }) => `${round(x)} ${round(up(y))}`).join("L")}`;
}

/** The plate under the foot, that far from the sole. */
function line(heel: Point, toe: Point, away: number): string {
  const [a, b] = [between(heel, toe, -0.15), between(heel, toe, 1.1)];
  const across = away / Math.hypot(toe.x - heel.x, toe.y - heel.y);
  const off = { x: (heel.y - toe.y) * across, y: (toe.x - heel.x) * across };
  return path([{ x: a.x + off.x, y: a.y + off.y }, { x: b.x + off.x, y: b.y + off.y }]);
}

function up(y: number): number {
  return TOP - y;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
