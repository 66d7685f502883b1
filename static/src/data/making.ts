/** Sessions made for a piece by the server, kept on this device like every other plan. */
import type { Level } from "../plan/types.js";
import type { Piece } from "../plan/wire.js";
import { fetchSession } from "./api.js";
import { sentOf, type AthleteRecord } from "./athlete.js";
import { compiled } from "./compiling.js";
import { keepMine, type PlanRecord } from "./plans.js";
import type { Settings } from "./settings.js";

/** What a session is made from, besides the athlete. */
export interface Making extends Pick<Settings, "room" | "warmup_minutes"> {
  piece: Piece;
  /** As it is shown where the piece is chosen. */
  level: Level;
  /** The way up to the piece, without the piece. */
  only_warm_up: boolean;
}

/** Has a session made and keeps it. Throws Refused or NoAnswer. */
export async function makeSession(making: Making, rower: AthleteRecord): Promise<PlanRecord> {
  const athlete = sentOf(rower);
  const { plan, reasons } = await fetchSession({ ...making, ...(athlete ? { athlete } : {}) });
  return keepMine({ ...(await compiled(plan, rower)), reasons });
}
