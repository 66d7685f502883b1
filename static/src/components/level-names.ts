/** How much rowing lies behind a person, in words to choose from. */
import type { Level } from "../plan/types.js";
import type { Option } from "./choice-look.js";

export const LEVELS: readonly Option<Level>[] = [
  { value: "novice", name: "New to it" },
  { value: "club", name: "Regular" },
  { value: "trained", name: "Trained" },
];
