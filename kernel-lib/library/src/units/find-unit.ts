import { fail } from "../check/check";
import { UNITS, type Unit, type UnitKind } from "./unit-table";

const BY_NAME: ReadonlyMap<string, Unit> = new Map(
  UNITS.flatMap((unit) => [unit.name.toLowerCase(), ...unit.alsoWritten].map((name) => [name, unit] as const)),
);

/** The unit written as `name`, whatever its case; throws, naming `where` and the units of `kind` (or all), when unknown. */
export function findUnit(name: string, where: string, kind?: UnitKind): Unit {
  const tidy = name.trim().toLowerCase().replace(/\s+/g, " ").replace(/\.$/, "");
  const found = BY_NAME.get(tidy);
  if (!found) fail(where, `must use one of the units ${unitNames(kind)}`, name);
  return found;
}

/** Whether `name` is a unit of the table. */
export function isUnit(name: string): boolean {
  return BY_NAME.has(name.trim().toLowerCase().replace(/\s+/g, " ").replace(/\.$/, ""));
}

/** The names of all units of a kind, or of all kinds, as a comma list for messages. */
export function unitNames(kind?: UnitKind): string {
  return UNITS.filter((unit) => !kind || unit.kind === kind)
    .map((unit) => unit.name)
    .join(", ");
}
