/** What the facts about a person may be, as in the planner's limits. */
export type Fact = "age" | "mass_kg" | "heart_rate_rest" | "heart_rate_max";

export const FACT_BOUNDS: Readonly<Record<Fact, { low: number; high: number; whole: boolean }>> = {
  age: { low: 8, high: 100, whole: true },
  mass_kg: { low: 20, high: 250, whole: false },
  heart_rate_rest: { low: 25, high: 120, whole: true },
  heart_rate_max: { low: 90, high: 230, whole: true },
};
