import { readFileSync } from "node:fs";
import { buildKitchen, type Kitchen } from "slabwright";
import type { CookedTrial } from "./cook-trial";
import { PRODUCTS, type Product } from "./products";
import type { StoredWorld } from "./stored-world";
import { TRIM_MM } from "./world";

/**
 * The columns of a world's log, in one place: what a heading means is decided here and nowhere else. `core_c` is the
 * highest reading within two minutes of taking out. A log that tells more apart adds `rested_core_c` and `rest_min` and
 * lets `core_c` be `outCoreC`: the stored trials hold all three.
 */
export const LOG_COLUMNS: readonly (readonly [
  string,
  (trial: CookedTrial, row: number, product: Product) => unknown,
])[] = [
  ["trial", (_, row) => `T-${String(row + 1).padStart(2, "0")}`],
  ["date", ({ date }) => date],
  ["variant", (_, __, product) => product.id],
  ["pan", () => "own"],
  ["appliance", ({ applianceId }) => applianceId],
  ["batch_g", ({ batchG }) => batchG],
  ["thickness_mm", ({ probesMm }) => probesMm.join(";")],
  ["setpoint_c", ({ setpointC }) => setpointC],
  ["load_fraction", ({ loadFraction }) => loadFraction],
  ["start_c", () => -18],
  ["flip_min", ({ flipMin }) => flipMin],
  ["time_min", ({ timeMin }) => timeMin],
  ["not_crisp_min", ({ notCrispMin }) => notCrispMin],
  ["crisp_min", ({ crispMin }) => crispMin],
  ["core_c", ({ restedCoreC }) => restedCoreC],
  ["before_g", ({ beforeG }) => beforeG],
  ["after_g", ({ afterG }) => afterG],
  ["pieces", ({ pieces }) => pieces],
  ["crisp_scores", ({ crispScores }) => crispScores.join(";")],
  ["brown_scores", ({ brownScores }) => brownScores.join(";")],
  ["note", ({ note }) => note],
];

/** A log as a kitchen keeps it. */
export function logText(trials: readonly CookedTrial[], product: Product): string {
  const rows = trials.map((trial, row) => LOG_COLUMNS.map(([, of]) => of(trial, row, product) ?? "").join(","));
  return `${[LOG_COLUMNS.map(([heading]) => heading).join(","), ...rows].join("\n")}\n`;
}

/** The kitchen that has logged the first `trials` trials of a world: read from text, as every kitchen is. */
export function worldKitchen(world: StoredWorld, trials: number): Kitchen {
  const product = PRODUCTS.find(({ id }) => id === world.product) as Product;
  const { id, name, formula, pan, thicknessMm, rows, columns, appliance, setpointC } = product;
  const line = (...cells: readonly unknown[]): string => `${cells.join(",")}\n`;
  const panHeading =
    "pan,name,shape,bottom_length_mm,bottom_width_mm,bottom_diameter_mm,depth_mm,corner_radius_mm,wall_taper_deg,wells,count,standing\n";
  const pans = [{ id: "own", ...pan }, ...world.pans];
  const batchG = Math.round(world.densityKgM3 * thicknessMm * pan.lengthMm * pan.widthMm * 1e-6);
  return buildKitchen({
    name: `world ${world.product} ${world.seed}`,
    pans: {
      file: "pans.csv",
      text:
        panHeading +
        pans
          .map((each) =>
            line(each.id, `${each.id} pan`, "rectangle", each.lengthMm, each.widthMm, "", 45, 0, 0, "", 4, "measured"),
          )
          .join(""),
    },
    appliances: {
      file: "appliances.csv",
      text:
        line("appliance,name,kind,floor_cm2,power_w,note") +
        line("basket,basket,air fryer", world.floorsCm2.basket, 1600, "") +
        line("oven,oven,fan oven", world.floorsCm2.oven, 3000, ""),
    },
    ingredients: {
      file: "ingredients.csv",
      text: readFileSync(new URL("../../data/ingredients.csv", import.meta.url), "utf8"),
    },
    variants: {
      file: "variants.csv",
      text:
        line(
          "variant,name,formula,form,pan,batch_g,rows,columns,trim_mm,appliance,setpoint_c,start_c,longest_min,note",
        ) +
        line(id, name, formula.id, "slab", "own", batchG, rows, columns, TRIM_MM, appliance, setpointC, -18, 60, ""),
    },
    formulas: [{ file: `formulas/${formula.id}.json`, text: JSON.stringify(formula) }],
    trials: [{ file: `trials/${id}.csv`, text: logText(world.trials.slice(0, trials), product) }],
  });
}
