/**
 * Holds the library's plan against other plans in simulated kitchens: `node tests/worlds/plan/run.mjs [kitchens] [trials] [policy…]`; 16
 * kitchens of 12 trials unless given. `PLAN_WAYS=file` keeps every way, a line of JSON each; `PLAN_QUESTION=thickness` asks for the
 * thickness too, `PLAN_FROM=16` begins with the seventeenth kitchen.
 */
import { appendFileSync } from "node:fs";
import { withModule } from "../load.mjs";

const [kitchens = "16", trials = "12", ...policies] = process.argv.slice(2);
await withModule("plan/plan-ways.ts", async ({ planWays, planRows }) => {
  const ways = planWays({
    kitchens: Number(kitchens),
    from: Number(process.env.PLAN_FROM ?? 0),
    trials: Number(trials),
    policies: policies.length === 0 ? undefined : policies,
    question: process.env.PLAN_QUESTION,
    tell: (line, way) => {
      console.error(line);
      if (process.env.PLAN_WAYS !== undefined) appendFileSync(process.env.PLAN_WAYS, `${JSON.stringify(way)}\n`);
    },
  });
  for (const { name, value, unit, note } of planRows(ways))
    console.log(`${name.padEnd(20)} ${value === null ? "–" : value.toFixed(3)} ${unit}  ${note}`);
});
