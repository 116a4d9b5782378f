import { fail } from "../../check/check";
import type { FreezeToCutRow } from "../../heat/freezing/freeze-to-cut";
import { ownTemperatureText } from "../../units/temperature-text";
import type { KitchenUnits } from "../../units/unit-table";
import type { Table } from "../table/table";
import { tableIn } from "../table/table-in";

/**
 * When slabs can be cut: firm, brittle outside and hard through, each with the range of the coefficients' doubt.
 *
 * @param rows slabs with what `freezeToCut` says of them
 * @param units the kitchen's own; default metric
 *
 * @example
 * const food = { densityKgM3: 1050, waterFraction: 0.735, freezingPointC: -1, latentKJkg: 216.1728, thawedSpecificHeatKJkgK: 3.5, frozenSpecificHeatKJkgK: 2, thawedConductivityWmK: 0.49, frozenConductivityWmK: 1.5 };
 * const freezing = freezeToCut({ food, thicknessMm: 10, airC: -18, coefficientWm2K: 9, coefficientBelowWm2K: 4 });
 * freezeToCutTable([{ label: "rack", thicknessMm: 10, freezing }]).rows.length; // → 1
 */
export function freezeToCutTable(rows: readonly FreezeToCutRow[], units: KitchenUnits = "metric"): Table {
  if (rows.length === 0) fail("freezeToCutTable: rows", "must hold at least one slab", rows);
  const { limits, limitsFrom } = rows[0].freezing;
  const table: Table = {
    kind: "table",
    title: "When the slab can be cut",
    columns: [
      { heading: "place" },
      { heading: "thickness (mm)", decimals: 1 },
      { heading: "firm (min)", decimals: 0 },
      { heading: "earliest (min)", decimals: 0 },
      { heading: "latest (min)", decimals: 0 },
      { heading: "brittle outside (min)", decimals: 0 },
      { heading: "hard through (min)", decimals: 0 },
      { heading: "cut on the way" },
    ],
    rows: rows.map(({ label, thicknessMm, freezing }) => [
      label,
      thicknessMm,
      freezing.firm.timeMin,
      freezing.firm.earliestMin,
      freezing.firm.latestMin,
      freezing.brittle?.timeMin ?? null,
      freezing.hardThrough?.timeMin ?? null,
      freezing.cutsOnTheWay ? "yes" : "no: freeze hard, then temper",
    ]),
    notes: [
      `Firm: mean at ${ownTemperatureText(limits.softAboveC, units)}. Brittle: some part at ${ownTemperatureText(limits.brittleBelowC, units)}. Limits from ${limitsFrom === "caller" ? "the caller" : "common practice, no source"}.`,
      ...new Set(rows.flatMap((row) => row.freezing.notes).filter((note) => !note.startsWith("Cutting limits"))),
    ],
  };
  return tableIn(table, units);
}
