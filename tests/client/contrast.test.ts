/** Bars can be told from the page: 3:1, as WCAG 2.2 asks of graphics (success criterion 1.4.11).
 *
 * Luminance and ratio as WCAG 2.2 defines them; oklch to linear sRGB by the matrices of CSS Color Module Level 4, section 10.
 */
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

const LEAST_CONTRAST = 3;
const tokens = readFileSync("static/styles/tokens.css", "utf8");
const blocks = {
  dark: /^:root \{(.*?)^\}/ms,
  light: /^:root\[data-theme="light"\] \{(.*?)^\}/ms,
  "light before the page runs": /:root:not\(\[data-theme\]\) \{(.*?)^  \}/ms,
};

function luminance(lightness: number, chroma: number, hue: number): number {
  const [a, b] = [chroma * Math.cos((hue * Math.PI) / 180), chroma * Math.sin((hue * Math.PI) / 180)];
  const l = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (lightness - 0.0894841775 * a - 1.291485548 * b) ** 3;
  const red = 4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s;
  const green = -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s;
  const blue = -0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s;
  const [r, g, c] = [red, green, blue].map((part) => Math.min(1, Math.max(0, part))) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * c;
}

function contrast(one: number, other: number): number {
  return (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
}

function colours(block: string): Map<string, number> {
  const found = [...block.matchAll(/--([\w-]+): oklch\(([\d.]+) ([\d.]+) ([\d.]+)\)/g)];
  return new Map(found.map(([, name, ...numbers]) => [name!, luminance(...(numbers.map(Number) as [number, number, number]))]));
}

test("black on white is 21 to 1, as WCAG says", () => {
  assert.ok(Math.abs(contrast(luminance(1, 0, 0), luminance(0, 0, 0)) - 21) < 0.01);
});

for (const [theme, pattern] of Object.entries(blocks)) {
  const found = colours(pattern.exec(tokens)![1]!);
  // Lighter bars on the light page have the outline, which the next test holds.
  const bars = theme === "dark" ? ["light", "half", "three-quarter", "full", "race"] : ["three-quarter", "full", "race"];
  for (const ground of ["water", "hull"]) {
    for (const bar of bars) {
      test(`${theme}: a bar of ${bar} pressure stands out from ${ground}`, () => {
        const ratio = contrast(found.get(`p-${bar}`)!, found.get(ground)!);
        assert.ok(ratio >= LEAST_CONTRAST, `${ratio.toFixed(2)} to 1`);
      });
    }
    test(`${theme}: the outline stands out from ${ground}`, () => {
      assert.ok(contrast(found.get("edge")!, found.get(ground)!) >= LEAST_CONTRAST);
    });
  }
  test(`${theme}: text on the row screen has 7 to 1, as WCAG 2.2 asks at level AAA (success criterion 1.4.6)`, () => {
    for (const ground of ["water", "hull"]) {
      for (const ink of ["ink", "ink-2"]) {
        const ratio = contrast(found.get(ink)!, found.get(ground)!);
        assert.ok(ratio >= 7, `${ink} on ${ground}: ${ratio.toFixed(2)} to 1`);
      }
    }
  });
  test(`${theme}: what there is to press is read at 4.5 to 1 as large type (1.4.6, AAA), and the seat is seen at 3 to 1`, () => {
    const pressed = contrast(found.get("on-catch")!, found.get("catch")!);
    assert.ok(pressed >= 4.5, `${pressed.toFixed(2)} to 1`);
    for (const ground of ["water", "hull"]) assert.ok(contrast(found.get("catch")!, found.get(ground)!) >= LEAST_CONTRAST);
  });
  test(`${theme}: a harder bar is darker than every easier one`, () => {
    const depths = ["light", "half", "three-quarter", "full", "race"].map((bar) => found.get(`p-${bar}`)!);
    assert.deepEqual(depths, [...depths].sort((a, b) => b - a));
  });
}
