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
means *not known*, never zero. After every step, in the project's folder:

    npm run check-kitchen -- FOLDER

reads everything, runs nothing, and names every slip with its file, row and column. FOLDER is this folder, as seen from there.

## In this order

1. **\`pans.csv\`: measure your pan.** The inside bottom, with a ruler, and the depth from bottom to rim; makers print the outer
   size. Then write \`measured\` in place of \`nominal\`. One row a kind of pan; \`wall_taper_deg\` is the lean of the wall.
2. **\`appliances.csv\`: measure the floor** of the basket or rack that pieces can lie on (${us ? "square inches" : "cm²"}).
3. **\`formulas/first-formula.json\`: put in your own.** Copy the file, one a formula: \`id\`, \`name\`, the lines of the \`mix\`
   (\`"250 g"\`, \`"3 lb 2 oz"\`, \`"1 1/2 tsp"\`, \`"1.5 % of mix"\`), what goes on, and in \`note\` what a cook must know.
   Is the mix boiled down first? \`"cookedG": ${us ? '"2 lb 3 oz"' : "990"}\` is what it weighs then; the rest has boiled off as water.
   An ingredient goes by its \`id\` in \`ingredients.csv\`. One that is not there is a row that you add, from its label: values
   per 100 g, blank where the label is silent, water by difference. (The table holds public values from USDA SR28, 2015.)
   Its \`class\` says what it is: \`poultry\`, \`ground meat\`, \`whole meat\`, \`fish\` or \`egg\` when it is raw, else \`plant\`,
   \`cooked\`, \`dried\` or \`pasteurised\`. What the core must reach follows from that.
4. **\`variants.csv\`: say what you make of it**: formula, pan, batch, cut in rows and columns (columns along the longer
   side), appliance and setpoint, and the longest reheat that you accept.
5. **\`trials/first-log.csv\`: log a reheat a row**, as soon as there is one. It must have ${heading("trial")} (a name, used once),
   ${heading("date")} (2026-03-14), ${heading("variant")}, ${heading("pan")}, ${heading("appliance")}, ${heading("setpoint")}, ${heading("start")} (of the pieces as they go in), ${heading("time")} (when
   they came out), and ${heading("thickness")} (probe readings parted by semicolons) or ${heading("batch")} (what was spread on the pan).
   Worth the most after that: ${heading("not_crisp")} and ${heading("crisp")} (the last look at which they were not yet crisp, the first at which
   they were), ${heading("core")} (highest core in the thickest piece), ${heading("before")}, ${heading("after")} and ${heading("pieces")} (the same pieces, weighed
   coated as they go in, and as they come out; how many), and ${heading("crisp_scores")} and ${heading("brown_scores")} (0 to 9, one a
   taster: \`AB:7; CD:6.5\`): without scores nobody can say when a piece is crisp or overdone, and no card is ever ready.
   Or log it in one line, or cell by cell: \`npm run log -- --kitchen FOLDER\`; with a timer: \`log a trial\` on the page that
   \`npm run notebook\` opens. A day such as 11/3/2026 needs the heading \`date (m/d/y)\`, or d/m/y.
   Two thicknesses tell more than one thickness twice. A logger's file, with a probe in a piece, goes into a folder
   \`traces\`, named after its trial: \`traces/T-07.csv\` with headings such as \`time_s,core_c,air_c\`.
6. **\`npm start -- --kitchen FOLDER\`** runs the notebooks and writes \`out/report.html\` here. It needs a kitchen without slips
   and a variant; with no trials it has little to say, and each trial gives it more. \`npm run notebook -- --kitchen FOLDER\`
   opens the notebooks in the browser.

**Crisp is not safe.** Times are calculated: probe the thickest piece. A filling with raw meat, fish or egg is raw until its
core has reached its limit; allergens and macros are estimates, and the labels of what you buy come first.

The project's \`data/README.md\` says what every column of every file holds.
`;
}
