/** How the beat of the strokes sounds: each leaves out more than the one before it. */
export const BEATS = ["whole", "catch-finish", "catch", "none"] as const;
export type Beat = (typeof BEATS)[number];
