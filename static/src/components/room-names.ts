/** How warm it is where one rows, in words to choose from. */
import type { Room } from "../plan/types.js";
import type { Option } from "./choice-look.js";

export const ROOMS: readonly Option<Room>[] = [{ value: "cold", name: "Cold" }, { value: "normal", name: "Normal" }, { value: "hot", name: "Hot" }];
