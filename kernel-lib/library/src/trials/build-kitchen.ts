import { failAll } from "../check/csv";
import { examineKitchen } from "./check-kitchen";
import type { Kitchen, KitchenFiles } from "./kitchen";

/**
 * Puts a kitchen together from the texts of its files and holds them against each other, as `checkKitchen` does. Throws
 * one error that lists every problem of every file; doubts that do not stop the work (probes against batch mass) become
 * `notices`.
 */
export function buildKitchen(files: KitchenFiles): Kitchen {
  const { name, units, language, traces = [], ...parts } = files;
  const about = { file: "kitchen.json", text: JSON.stringify({ name, units, language }) };
  const { kitchen, problems } = examineKitchen({ about, ...parts, traces, folder: { slips: [], notices: [] } });
  failAll(problems);
  return kitchen as Kitchen;
}
