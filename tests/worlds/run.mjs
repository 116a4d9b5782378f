/**
 * Holds the library, read from source, against the stored worlds: `node tests/worlds/run.mjs`; a word after it picks
 * the products whose name holds it.
 */
import { withModule } from "./load.mjs";

await withModule("hold-worlds.ts", ({ worldRows }) => {
  for (const { name, value, unit, note } of worldRows(process.argv[2], (line) => console.error(line)))
    console.log(`${name.padEnd(24)} ${value === null ? "–" : value.toFixed(3)} ${unit}  ${note}`);
});
