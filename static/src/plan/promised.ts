import type { Athlete, Finding, Plan, Timeline as PlainTimeline } from "./wire.js";

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
export type Piece =
  | { test: { metres?: number; seconds?: number; rate_cap?: number } }
  | { intervals: { times: number; metres?: number; seconds?: number; rest_seconds: number; leave_percent?: number } }
  | { steady: { seconds: number } }
  | { technique: { seconds: number } };
export type Room = "cold" | "normal" | "hot";
export type Level = NonNullable<Athlete["level"]>;
export interface SessionRequest { piece: Piece; warmup_minutes?: number; athlete?: Athlete; level?: Level; room?: Room; only_warm_up?: boolean }
export interface SessionAnswer { plan: Plan; reasons: string[] }

export interface Custom { custom: "power law" | "five seconds a doubling" | "critical power"; seconds_s?: number; metres?: number; within_range: boolean }
export interface Prediction {
  name: string; metres?: number; seconds?: number;
  low_s?: number; likely_s?: number; high_s?: number; low_metres?: number; likely_metres?: number; high_metres?: number;
  split_s: number; by: Custom[];
}
export interface Band {
  name: string; sense: string; pressure?: string; rate_low: number; rate_high: number;
  power_low_percent?: number; power_high_percent?: number; split_slow_s?: number; split_quick_s?: number;
  heart_rate_low?: number; heart_rate_high?: number; cr10_low?: number; cr10_high?: number; talk?: string;
}
export interface CriticalPower {
  watts: number; watts_error: number; reserve_kj: number; reserve_kj_error: number; split_s: number;
  metres_per_second: number; reserve_metres: number; form: string; used: number[]; left_out: number[];
}
export interface AthleteAnswer {
  two_k?: { split_s: number; low_s: number; high_s: number; watts: number };
  predictions: Prediction[];
  critical_power?: CriticalPower;
  bands: Band[];
  heart_rate?: { max: number; rest?: number; max_from: "given" | "age"; error: number };
  findings: Finding[];
}
