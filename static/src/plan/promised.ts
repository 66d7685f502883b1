import type { Timeline as PlainTimeline } from "./wire.js";

export interface Range { low: number; middle: number; high: number }
export interface AtStart { reserve: Range; phosphocreatine: Range; oxygen: Range; warmth: Range }
export interface Readiness {
  basis: "fit" | "result" | "level";
  gap_s: number | null;
  advised_gap: { low_s: number; best_s: number; high_s: number };
  at_start: AtStart;
  by_gap: (AtStart & { gap_s: number })[];
  series: { step_s: number; reserve: number[]; reserve_low: number[]; reserve_high: number[]; oxygen: number[]; warmth: number[] };
  sentence: string;
  notes: string[];
  capacity?: { watts: number; watts_low: number; watts_high: number; reserve_kj: number; reserve_kj_low: number; reserve_kj_high: number };
}
export type Timeline = PlainTimeline & { readiness?: Readiness };
