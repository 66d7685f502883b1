/** The chosen theme where a script can read it before anything is painted; the choice itself stands in data/preferences. */

export const THEMES = ["device", "light", "dark"] as const;
export type Theme = (typeof THEMES)[number];

const KEY = "slipway-theme";

/** The theme chosen last; `device` where none was, or nothing can be read. */
export function mirroredTheme(): Theme {
  try {
    const found = globalThis.localStorage?.getItem(KEY);
    return THEMES.find((theme) => theme === found) ?? "device";
  } catch {
    return "device";
  }
}

/** Leaves the theme for the next first paint; where nothing can be stored that one follows the device. */
export function mirrorTheme(theme: Theme): void {
  try {
    globalThis.localStorage?.setItem(KEY, theme);
  } catch {
    // A browser that stores nothing forgets the choice itself too.
  }
}
