import { NUTRIENT_LABELS, type NutrientName } from "../../food/ingredient/nutrients";
import type { FoundFood } from "../../food/ingredient/search-foods";
import type { Table } from "../table/table";

const SHOWN: readonly NutrientName[] = [
  "waterG",
  "energyKcal",
  "proteinG",
  "fatG",
  "carbohydrateG",
  "fibreG",
  "sodiumMg",
];

/** Foods that a search found, best first, per 100 g, with their household weights. */
export function foodTable(found: readonly FoundFood[]): Table {
  return {
    kind: "table",
    title: `${found.length} foods, best match first (per 100 g)`,
    columns: [
      { heading: "number" },
      { heading: "food" },
      ...SHOWN.map((name) => ({ heading: NUTRIENT_LABELS[name] })),
      { heading: "household weights" },
    ],
    rows: found.map(({ food }) => [
      food.ndb,
      food.description,
      ...SHOWN.map((name) => food.per100G[name]),
      food.householdWeights.map((weight) => `${weight.measure} = ${weight.massG} g`).join("; ") || null,
    ]),
    notes: [
      "USDA National Nutrient Database for Standard Reference, Release 28 (2015). A dash is not known, never zero.",
    ],
  };
}
