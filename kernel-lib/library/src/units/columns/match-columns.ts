import { nearestName } from "../../check/nearest-name";
import { findUnit, isUnit } from "../find-unit";
import type { KitchenUnits } from "../unit-table";
import type { ColumnPlan, ColumnPlans } from "./column-plan";
import { headingIn } from "./heading-in";
import { headingUnit } from "./heading-unit";
import { wordsOf } from "./words-of";

/** Which heading, in which unit, holds each field of a record, and what is wrong with the others. */
export interface MatchedColumns<T> {
  readonly headingOf: { readonly [Field in keyof T]?: { readonly heading: string; readonly unit: string | null } };
  readonly strange: readonly StrangeHeading<T>[];
}

/** A heading that stands for no field. */
export interface StrangeHeading<T> {
  readonly heading: string;
  readonly expected: string;
  /** a heading that would do, where one is near */
  readonly nearest: string | null;
  /** the field that it most likely stands for */
  readonly field: (keyof T & string) | null;
  /** the unit that its cells are in, `null` for a field without; left out when it cannot be told */
  readonly unit?: string | null;
}

/** What `matchColumns` works from. */
export interface MatchColumnsOptions<T> {
  readonly headings: readonly string[];
  readonly plans: ColumnPlans<T>;
  /** units of the headings that are proposed; metric unless given */
  readonly units?: KitchenUnits;
  /** the rows below: a heading without its unit is good where each of its cells has its own */
  readonly rows?: readonly { readonly cells: Readonly<Record<string, string>> }[];
}

/**
 * Holds the headings of a CSV file against the columns that a record has. `Depth (in)`, `depth in` and `depth_in` are one.
 */
export function matchColumns<T>({
  headings,
  plans,
  units = "metric",
  rows = [],
}: MatchColumnsOptions<T>): MatchedColumns<T> {
  const fields = Object.entries(plans) as [keyof T & string, ColumnPlan][];
  const headingOf: { [Field in keyof T]?: { heading: string; unit: string | null } } = {};
  const strange: StrangeHeading<T>[] = [];
  for (const heading of headings) {
    if (heading === "") continue; // readCsv lists it
    const cellsOf = (): readonly string[] => rows.flatMap(({ cells }) => cells[heading] || []);
    const matched = matchHeading(heading, fields, units, cellsOf);
    if ("expected" in matched) strange.push(matched);
    else if (headingOf[matched.field]?.heading === heading)
      continue; // so it does a heading that stands twice
    else if (headingOf[matched.field] !== undefined)
      strange.push({
        heading,
        expected: `one column for ${plans[matched.field].column}, got also ${headingOf[matched.field]?.heading}`,
        nearest: null,
        field: matched.field,
      });
    else headingOf[matched.field] = { heading, unit: matched.unit };
  }
  // what stands under a mistyped heading is read all the same, so that its cells are checked in the same reading
  for (const { heading, field, unit } of strange)
    if (field !== null && unit !== undefined && headingOf[field] === undefined) headingOf[field] = { heading, unit };
  return { headingOf, strange };
}

function matchHeading<T>(
  heading: string,
  fields: readonly [keyof T & string, ColumnPlan][],
  units: KitchenUnits,
  cellsOf: () => readonly string[],
): { readonly field: keyof T & string; readonly unit: string | null } | StrangeHeading<T> {
  const strange = (field: keyof T & string, expected: string): StrangeHeading<T> => ({
    heading,
    expected,
    nearest: null,
    field,
  });
  const words = wordsOf(heading);
  const named = (name: string): [keyof T & string, ColumnPlan] | undefined =>
    fields.find(([, { column, also = [] }]) => column === name || also.includes(name));
  const whole = named(words);
  if (whole !== undefined) {
    const [field, plan] = whole;
    if (isBare(plan)) return { field, unit: null };
    const cells = cellsOf();
    if (cells.length > 0 && cells.every((cell) => /[a-z°"”″:]/i.test(cell))) return { field, unit: null };
    return strange(field, `a heading that ends in its unit, such as ${headingIn(plan, units)}`);
  }
  const parts = words.split("_");
  for (const count of [2, 1]) {
    if (parts.length <= count) continue;
    const found = named(parts.slice(0, -count).join("_"));
    if (found === undefined || isBare(found[1])) continue;
    const [field, plan] = found;
    const unit = unitOf(parts.slice(-count).join(" "));
    if (unit === null && count === 2) continue;
    if (unit === null || unit.kind !== plan.holds)
      return strange(field, `a unit of ${plan.holds}, such as ${headingIn(plan, units)}`);
    return { field, unit: unit.unit };
  }
  const known = fields.map(([field, plan]) => ({ field, name: nameLike(heading, plan, units) }));
  const nearest = nearestName(
    heading,
    known.map(({ name }) => name),
  );
  return {
    heading,
    expected:
      nearest === null ? `one of ${fields.map(([, plan]) => headingIn(plan, units)).join(", ")}` : "a known heading",
    nearest,
    field: known.find(({ name }) => name === nearest)?.field ?? null,
    unit: nearest === null ? undefined : (unitOf(nearest.slice(nearest.lastIndexOf("_") + 1))?.unit ?? null),
  };
}

/** A plan's heading, in the unit that a mistyped heading ends in where that unit fits. */
function nameLike(heading: string, plan: ColumnPlan, units: KitchenUnits): string {
  const ending = heading.slice(heading.lastIndexOf("_") + 1).toLowerCase();
  const unit = heading.includes("_") ? unitOf(ending) : null;
  return unit === null || unit.kind !== plan.holds ? headingIn(plan, units) : `${plan.column}_${ending}`;
}

/** Whether a plan's heading carries no unit. */
function isBare({ holds }: ColumnPlan): boolean {
  return holds === "text" || holds === "id" || holds === "number";
}

/** The unit that an ending names; pounds and ounces stand in the cells themselves. */
function unitOf(ending: string): { readonly unit: string | null; readonly kind: string } | null {
  const unit = headingUnit(ending);
  if (unit === "lb oz") return { unit: null, kind: "mass" };
  return unit === null || !isUnit(unit) ? null : { unit, kind: findUnit(unit, "matchColumns: heading").kind };
}
