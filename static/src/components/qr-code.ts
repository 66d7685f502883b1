/** A QR code, drawn here: dark on light in either theme, with the quiet zone that readers need.
 *
 * Properties: `text` (what it says), `label` (what it is, for those who cannot see it).
 */
import { LitElement, css, html, nothing } from "lit";
import { correction, generate, type Bitmap2D } from "lean-qr";
import { type } from "./look.js";

/** 117 modules a side: what a phone reads across a desk. */
const LARGEST_VERSION = 25;
/** The quiet zone that the standard asks for (ISO/IEC 18004). */
const BORDER = 4;

/** Pixels a module of a saved picture: sharp on paper at the size of a hand. */
const PIXELS = 12;

/** Whether a code of this text can be read by a phone across a desk. */
export function fitsCode(text: string): boolean {
  return codeOf(text) !== undefined;
}

export class QrCode extends LitElement {
  static override properties = { text: {}, label: {} };
  declare text: string;
  declare label: string;

  constructor() {
    super();
    this.text = "";
    this.label = "";
  }

  static override styles = [type, css`
    svg { display: block; width: 100%; height: auto; background: #fff; border-radius: 6px; shape-rendering: crispEdges; }
    @media (forced-colors: active) { svg { forced-color-adjust: none; } }
  `];

  override render() {
    const code = codeOf(this.text);
    if (!code) return nothing;
    const side = code.size + 2 * BORDER;
    return html`<svg viewBox="0 0 ${side} ${side}" role="img" aria-label=${this.label}><path fill="#000" d=${pathOf(code)} /></svg>`;
  }
}
customElements.define("qr-code", QrCode);

function codeOf(text: string): Bitmap2D | undefined {
  try {
    return generate(text, { minCorrectionLevel: correction.L, maxVersion: LARGEST_VERSION });
  } catch {
    return undefined;
  }
}

/** The code as an SVG picture (a file of its own), of a text that fits one. */
export function svgOf(text: string): Blob {
  const code = codeOf(text)!;
  const side = code.size + 2 * BORDER;
  const picture = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${side} ${side}"><path fill="#fff" d="M0 0h${side}v${side}H0z"/><path d="${pathOf(code)}"/></svg>\n`;
  return new Blob([picture], { type: "image/svg+xml" });
}

/** The code as a PNG picture, of a text that fits one. */
export async function pngOf(text: string): Promise<Blob> {
  const code = codeOf(text)!;
  const canvas = document.createElement("canvas");
  canvas.width = canvas.height = (code.size + 2 * BORDER) * PIXELS;
  const brush = canvas.getContext("2d", { alpha: false })!;
  brush.fillStyle = "#fff";
  brush.fillRect(0, 0, canvas.width, canvas.height);
  brush.scale(PIXELS, PIXELS);
  brush.fillStyle = "#000";
  brush.fill(new Path2D(pathOf(code)));
  return new Promise((made) => canvas.toBlob((picture) => made(picture!), "image/png"));
}

/** The dark modules, in runs along each row. */
function pathOf(code: Bitmap2D): string {
  const runs: string[] = [];
  for (let y = 0; y < code.size; y += 1) {
    for (let x = 0; x < code.size; x += 1) {
      const from = x;
      while (x < code.size && code.get(x, y)) x += 1;
      if (x > from) runs.push(`M${from + BORDER} ${y + BORDER}h${x - from}v1h${from - x}z`);
    }
  }
  return runs.join("");
}
