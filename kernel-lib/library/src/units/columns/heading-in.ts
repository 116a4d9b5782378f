import type { UnitKind } from "../unit-table";
import type { ColumnPlan } from "./column-plan";

/** The unit that a heading ends in, for people who think in US units; all other kinds are the same everywhere. */
const US_ENDING: Partial<Readonly<Record<UnitKind, string>>> = {
  length: "in",
  area: "in2",
  mass: "oz",
  temperature: "f",
};
const METRIC_ENDING: Readonly<Record<UnitKind, string>> = {
  length: "mm",
  area: "cm2",
  mass: "g",
  volume: "ml",
  time: "min",
  energy: "kcal",
  temperature: "c",
  temperatureDifference: "k",
};

/**
 * The heading of a column, in US or in metric units: `thickness_in`, `thickness_mm`; a column of text or of bare numbers
 * has one heading.
 */
export function headingIn({ column, holds }: ColumnPlan, units: "us" | "metric"): string {
  if (holds === "text" || holds === "id" || holds === "number") return column;
  return `${column}_${(units === "us" ? US_ENDING[holds] : undefined) ?? METRIC_ENDING[holds]}`;
}
