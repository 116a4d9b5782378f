import type { KitchenUnits } from "../units/unit-table";
import { logHeadings } from "./log/log-fields";

/** The page that lies in a new kitchen: what to do next, in order. */
export function starterReadme(name: string, units: KitchenUnits): string {
  const us = units === "us";
  const heading = (stem: string): string =>
    `\`${logHeadings(units).find((one) => one === stem || one.replace(/_[^_]+$/, "") === stem) ?? stem}\``;
  return `# ${name}

Everything this kitchen knows stands in the files of this folder. Change them with a text editor or a spreadsheet program
(save as CSV, UTF-8, parted by commas). Units stand in the headings: ${us ? "change `depth_in` to `depth_mm` and type millimetres, if you like" : "change `depth_mm` to `depth_in` and type inches, if you like"}. An empty cell
means *not known*, never zero. Once or often, as you like, in the project's folder:

    npm run check-kitchen -- FOLDER

reads everything, runs nothing, and names every slip with its file, row and column. FOLDER is this folder, as seen from there.

## In this order

1. **\`pans.csv\`: measure your pan.** The inside bottom, with a ruler, and the depth from bottom to rim; makers print the outer
   size. Then write \`measured\` in place of \`nominal\`. One row a kind of pan. It needs \`pan\`, its two sides (or a diameter)
   and the depth; what else is blank counts as square corners, a straight wall, one pan.
2. **\`appliances.csv\`: measure the floor** of the basket or rack that pieces can lie on: ${us ? "`85` square inches, or `9 x 9 1/2`" : "`550` cm², or `22 x 25`"}.
3. **\`formulas/first-formula.csv\`: put in your own.** One file a formula; its name is the formula's id. Below
   \`part,ingredient,amount\` a line an ingredient: \`mix\`, or the coating that it is in (\`predust\`, \`wash\`, \`breading\`,
   \`spray oil\`, \`fryer oil\`, with its \`pickup_percent\`: what goes on, in % of the piece). Amounts as you write them:
   \`250 g\`, \`3 lb 2 oz\`, \`1 1/2 tsp\`, \`2 large\`, \`1.5 % of mix\`. Is the mix boiled down first? A line
   \`cooked,${us ? "2 lb 3 oz" : "990 g"}\` above says what it weighs then; \`state,par-cooked\` or
   \`state,cooked and cooled\`, that pieces are cooked before they are frozen. An ingredient goes by its \`id\` or \`name\` in
   \`ingredients.csv\` (public values, USDA SR28 of 2015) or in \`labels.csv\`. Where it is in neither, \`check-kitchen\` prints the
   row to paste, if USDA's 8,789 foods hold it.
   **\`labels.csv\`: what you buy in packs**, a row each, copied as the pack prints it: the serving (\`1/4 cup (30 g)\`), then its
   values; blank where it is silent. No pack prints water: it is taken as what is left, and said so. \`class\` says what
   the food is: \`poultry\`, \`ground meat\`, \`whole meat\`, \`fish\` or \`egg\` when it is raw, else \`plant\`, \`cooked\`, \`dried\` or
   \`pasteurised\`. What the core must reach follows from that; left blank, the strictest limit stands.
4. **\`variants.csv\`: say what you make of it**: formula, pan, batch (${us ? "`2 lb 10 oz` will do" : "`1.2 kg` will do"}), cut in rows and columns (columns along
   the longer side), appliance and setpoint, and the longest reheat that you accept.
5. **\`trials/first-log.csv\`: log a reheat a row**, as soon as there is one. It must have ${heading("trial")} (a name, used once),
   ${heading("date")} (2026-03-14), ${heading("variant")}, ${heading("pan")}, ${heading("appliance")}, ${heading("setpoint")}, ${heading("start")} (of the pieces as they go in), ${heading("time")} (when
   they came out), and ${heading("thickness")} (probe readings parted by semicolons) or ${heading("batch")} (what was spread on the pan).
   Worth the most after that: ${heading("not_crisp")} and ${heading("crisp")} (the last look at which they were not yet crisp, the first at which
   they were), ${heading("core")} (highest core in the thickest piece), ${heading("before")}, ${heading("after")} and ${heading("pieces")} (the same pieces, weighed
   coated as they go in, and as they come out; how many), and ${heading("crisp_scores")} (0 soft, 6 crisp, 9 as crisp as can be)
   and ${heading("brown_scores")} (0 pale, 7 too brown, 9 burnt), one a taster: \`AB:7; CD:6.5\`: without scores nobody can say when a piece is crisp or overdone, and no card is ever ready.
   Or log it in one line, or cell by cell: \`npm run log -- --kitchen FOLDER\`; with a timer: \`log a trial\` on the page that
   \`npm run notebook\` opens. A day such as 11/3/2026 needs the heading \`date (m/d/y)\`, or d/m/y.
   Two thicknesses tell more than one thickness twice. A logger's file, with a probe in a piece, goes into a folder
   \`traces\`, named after its trial: \`traces/T-07.csv\` with headings such as \`time_s,core_c,air_c\`.
6. **When you like: \`day.csv\`** (hours, hands, shelves and minutes of a batch day), **\`pantry.csv\`** (packs, prices and stock of
   what you buy) and **\`packs.csv\`** (packs in the freezer): then the day is planned with what you have, the shopping list takes
   off what is there, a piece has its cost, and the packs go in the right order. Blank lines and empty files ask for nothing.
7. **\`npm start -- --kitchen FOLDER\`** runs the notebooks and writes \`out/report.html\` here. It needs a kitchen without slips
   and a variant; with no trials it has little to say, and each trial gives it more. \`npm run notebook -- --kitchen FOLDER\`
   opens the notebooks in the browser.

**Crisp is not safe.** Times are calculated: probe the thickest piece. A filling with raw meat, fish or egg is raw until its
core has reached its limit; allergens and macros are estimates, and the labels of what you buy come first.

The project's \`data/README.md\` says what every column of every file holds.
`;
}
