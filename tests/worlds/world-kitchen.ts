import { readFileSync } from "node:fs";
import type { Kitchen } from "slabwright";
import { buildKitchen } from "slabwright/trials";
import type { CookedTrial } from "./cook-trial";
import { PRODUCTS, type Product } from "./products";
import type { StoredWorld } from "./stored-world";
import { TRIM_MM } from "./world";

/** A cooked trial as it is logged: a core may be left unread; a slab has its own name where a session has several. */
export interface LoggedTrial extends Omit<CookedTrial, "outCoreC" | "restedCoreC"> {
  readonly outCoreC: number | null;
  readonly restedCoreC: number | null;
  readonly slab?: string;
}

type Column = readonly [heading: string, of: (trial: LoggedTrial, row: number, product: Product) => unknown];

const COMMON: readonly Column[] = [
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
  ["before_g", ({ beforeG }) => beforeG],
  ["after_g", ({ afterG }) => afterG],
  ["pieces", ({ pieces }) => pieces],
  ["crisp_scores", ({ crispScores }) => crispScores.join(";")],
  ["brown_scores", ({ brownScores }) => brownScores.join(";")],
  ["note", ({ note }) => note],
];

/**
 * The columns of the worlds' logs, in one place: what a heading means is decided here and nowhere else. A short log has the
 * highest core within two minutes of taking out, and no more; a full one tells the core at taking out and the rested one
 * apart, and keeps looks, slab and session.
 */
export const LOG_COLUMNS: Readonly<Record<"short" | "full", readonly Column[]>> = {
  short: [...COMMON, ["core_c", ({ restedCoreC }) => restedCoreC]],
  full: [
    ...COMMON,
    ["core_c", ({ outCoreC }) => outCoreC],
    ["rested_core_c", ({ restedCoreC }) => restedCoreC],
    ["rest_min", ({ restMin, restedCoreC }) => (restedCoreC === null ? null : restMin)],
    ["looks_min", ({ looksMin }) => looksMin.join(";")],
    ["slab", ({ slab, date }) => slab ?? `S-${date}`],
    ["session", ({ date }) => date],
  ],
};

/** A log as a kitchen keeps it. */
export function logText(trials: readonly LoggedTrial[], product: Product, style: keyof typeof LOG_COLUMNS): string {
  const columns = LOG_COLUMNS[style];
  const rows = trials.map((trial, row) => columns.map(([, of]) => of(trial, row, product) ?? "").join(","));
  return `${[columns.map(([heading]) => heading).join(","), ...rows].join("\n")}\n`;
}

/**
 * The kitchen that has logged the first `trials` trials of a world, read from text as every kitchen is. Worlds of odd seeds
 * keep short logs, those of even seeds full ones.
 */
export function worldKitchen(
  world: Omit<StoredWorld, "trials"> & { readonly trials: readonly LoggedTrial[] },
  trials: number,
): Kitchen {
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
    trials: [
      {
        file: `trials/${id}.csv`,
        text: logText(world.trials.slice(0, trials), product, world.seed % 2 === 1 ? "short" : "full"),
      },
    ],
  });
}
