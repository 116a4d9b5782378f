/**
 * Holds cards against the truth of drawn kitchens: `node tests/worlds/card/run.mjs [kitchens] [first] [file]`; 60 kitchens from the first
 * unless given. With a file, each is kept there as a line of JSON, and kitchens that stand in it already are not run again; several
 * runs with other firsts may share one file.
 */
import { appendFileSync, existsSync, readFileSync } from "node:fs";
import { withModule } from "../load.mjs";

const [kitchens = "60", first = "0", file] = process.argv.slice(2);
const kept =
  file !== undefined && existsSync(file)
    ? readFileSync(file, "utf8")
        .trim()
        .split("\n")
        .map((line) => JSON.parse(line))
    : [];
const known = new Set(kept.map(({ seed }) => seed));
await withModule("card/card-rows.ts", ({ holdCard, cardRows }) => {
  for (let seed = Number(first); seed < Number(first) + Number(kitchens); seed++) {
    if (known.has(seed)) continue;
    const card = holdCard(seed);
    kept.push(card);
    if (file !== undefined) appendFileSync(file, `${JSON.stringify(card)}\n`);
  }
  for (const { name, value, unit, note } of cardRows(kept))
    console.log(`${name.padEnd(22)} ${value === null ? "–" : value.toFixed(4)} ${unit}  ${note}`);
});
