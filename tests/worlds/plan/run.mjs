/**
 * Holds the library's plan against other plans in simulated kitchens: `node tests/worlds/plan/run.mjs [kitchens] [trials] [policy…]`; 16
 * kitchens of 12 trials unless given. `PLAN_WAYS=file` keeps every way as JSON.
 */
import { writeFileSync } from "node:fs";
import { withModule } from "../load.mjs";

const [kitchens = "16", trials = "12", ...policies] = process.argv.slice(2);
await withModule("plan/plan-ways.ts", async ({ planWays, planRows }) => {
  const ways = planWays({
    kitchens: Number(kitchens),
    trials: Number(trials),
    policies: policies.length === 0 ? undefined : policies,
    tell: (line) => console.error(line),
  });
  if (process.env.PLAN_WAYS !== undefined) writeFileSync(process.env.PLAN_WAYS, JSON.stringify(ways));
  for (const { name, value, unit, note } of planRows(ways))
    console.log(`${name.padEnd(20)} ${value === null ? "–" : value.toFixed(3)} ${unit}  ${note}`);
});
