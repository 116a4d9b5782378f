import { fail } from "../check/check";
import type { KitchenUnits } from "../units/unit-table";
import { DAY_LINES } from "./day/read-kitchen-day";
import type { KitchenFile } from "./kitchen";
import { logHeadings } from "./log/log-fields";
import { starterReadme } from "./starter-readme";

/** What `starterKitchen` works from. */
export interface StarterKitchenOptions {
  /** the kitchen's name, as pages will print it */
  readonly name: string;
  readonly units: KitchenUnits;
  /** text of the table of ingredients to begin with */
  readonly ingredientsCsv: string;
}

/** Rows of the first files, in the units that a kitchen thinks in: sizes of a half sheet as sold, to be measured. */
const FIRST = {
  metric: {
    pans: [
      "pan,name,shape,bottom_length_mm,bottom_width_mm,bottom_diameter_mm,depth_mm,corner_radius_mm,wall_taper_deg,wells,count,standing",
      "half-sheet,half sheet pan,rectangle,419,292,,25,15,6,,1,nominal",
    ],
    appliances: [
      "appliance,name,kind,floor_cm2,power_w,note",
      "air-fryer,air fryer,air fryer,550,,measure the floor of the basket",
    ],
    variants: [
      "variant,name,formula,form,pan,batch_g,rows,columns,trim_mm,appliance,setpoint_c,start_c,longest_min,note",
      "first-variant,first variant,first-formula,slab,half-sheet,1150,6,8,3,air-fryer,200,-18,20,",
    ],
    amounts: ["700 g", "250 g", "90 g", "30 g", "1 tbsp", "2 tsp", "1/2 tsp"],
  },
  us: {
    pans: [
      "pan,name,shape,bottom_length_in,bottom_width_in,bottom_diameter_in,depth_in,corner_radius_in,wall_taper_deg,wells,count,standing",
      "half-sheet,half sheet pan,rectangle,16.5,11.5,,1,0.6,6,,1,nominal",
    ],
    appliances: [
      "appliance,name,kind,floor_in2,power_w,note",
      "air-fryer,air fryer,air fryer,85,,measure the floor of the basket",
    ],
    variants: [
      "variant,name,formula,form,pan,batch_oz,rows,columns,trim_in,appliance,setpoint_f,start_f,longest_min,note",
      "first-variant,first variant,first-formula,slab,half-sheet,40,6,8,0.125,air-fryer,390,0,20,",
    ],
    amounts: ["1 lb 9 oz", "9 oz", "3 oz", "1 oz", "1 tbsp", "2 tsp", "1/2 tsp"],
  },
} as const;

const IN_MIX = ["potato-boiled", "peas-frozen", "oats-rolled", "cornstarch", "oil-canola", "salt-fine", "pepper-black"];

/**
 * The files of a kitchen to begin with: valid as they stand, one of each thing, no trial, and a page that says what to do
 * next. Headings and numbers are in the kitchen's own units.
 */
export function starterKitchen(options: StarterKitchenOptions): readonly KitchenFile[] {
  const { name, units, ingredientsCsv } = options;
  if (units !== "us" && units !== "metric") fail("starterKitchen: units", "must be us or metric", units);
  const first = FIRST[units];
  const csv = (rows: readonly string[]): string => `${rows.join("\n")}\n`;
  return [
    { file: "README.md", text: starterReadme(name, units) },
    { file: "kitchen.json", text: `${JSON.stringify({ name, units }, null, 2)}\n` },
    { file: "pans.csv", text: csv(first.pans) },
    { file: "appliances.csv", text: csv(first.appliances) },
    { file: "ingredients.csv", text: ingredientsCsv },
    { file: "labels.csv", text: firstLabels(units) },
    { file: "day.csv", text: firstDay(units) },
    { file: "pantry.csv", text: firstPantry(units) },
    { file: "packs.csv", text: firstPacks(units) },
    { file: "formulas/first-formula.csv", text: firstFormula(first.amounts) },
    { file: "variants.csv", text: csv(first.variants) },
    { file: "trials/first-log.csv", text: csv([logHeadings(units).join(",")]) },
  ];
}

/** The foods of a kitchen's packs, in the order in which US and EU packs print them. */
const LABEL_HEADINGS: Readonly<Record<KitchenUnits, string>> = {
  us: "id,class,serving,calories,fat_g,saturated_fat_g,cholesterol_mg,sodium_mg,carbohydrate_g,fibre_g,sugars_g,protein_g,allergens_us",
  metric:
    "id,class,serving,energy_kcal,fat_g,saturated_fat_g,carbohydrate_without_fibre_g,sugars_g,fibre_g,protein_g,salt_g,allergens_eu",
};
const LABEL_EXAMPLE: Readonly<Record<KitchenUnits, string>> = {
  us: "# house-crumbs,plant,1/4 cup (30 g),110,1,0,0,60,23,<1,1,3,wheat",
  metric: "# house-crumbs,plant,100 g,362,2.1,0.4,74,3.2,4.1,11,0.9,gluten (wheat)",
};

function firstLabels(units: KitchenUnits): string {
  return `# A food a row, copied from its pack; blank where the pack is silent. serving: what its values are of. For example:
${LABEL_EXAMPLE[units]}
${LABEL_HEADINGS[units]}
`;
}

function firstDay(units: KitchenUnits): string {
  const us = units === "us";
  return `# What there is on a batch day. Blank: as usual, and said. Times such as ${us ? "8:00 am" : "8:00"}, a break ${us ? "12:00 pm to 12:45 pm" : "12:00 to 12:45"}
# (one a line, several lines), a shelf by its sides, ${us ? "24 x 18 in" : "600 x 450 mm"}; what the hands do, in minutes.
what,value
${DAY_LINES.map((line) => `${line},\n`).join("")}`;
}

function firstPantry(units: KitchenUnits): string {
  const us = units === "us";
  return `# An ingredient a row: a pack as it is sold, its price and the day of it, what is on the shelf. For example:
# oats-rolled,${us ? "1 lb 2 oz,2.50,2026-05-02,9 oz" : "500 g,2.50,2026-05-02,250 g"}
ingredient,pack_${us ? "oz" : "g"},price,priced,stock_${us ? "oz" : "g"},note
`;
}

function firstPacks(units: KitchenUnits): string {
  const us = units === "us";
  return `# A pack in the freezer a row; a warm spell is a temperature and so many days at it. For example:
# May first,first-variant,2026-05-02,24,${us ? "0,14" : "-18,-10"},1.5,tight,
pack,variant,packed,pieces,kept_${us ? "f" : "c"},warm_${us ? "f" : "c"},warm_days,packing,note
`;
}

function firstFormula(amounts: readonly string[]): string {
  const mix = IN_MIX.map((ingredient, at) => `mix,${ingredient},${amounts[at]},\n`).join("");
  return `name,first formula
origin,"an example, to be replaced by your own"
air_percent,3
pieces_per_serving,4
note,"Mixed, spread and frozen; the pieces go from the freezer straight into the hot air."
part,ingredient,amount,pickup_percent
${mix}spray oil,oil-canola,100 g,2
`;
}
