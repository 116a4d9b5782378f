import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { loadKitchen } from "../../../kernel-lib/library/src/notebook/load-kitchen";
import { newKitchen } from "../../../kernel-lib/library/src/notebook/new-kitchen";

/** A kitchen to begin with, in a new folder, with as many trials of its one variant as asked for. */
export function youngKitchen(trials: number): string {
  const folder = join(mkdtempSync(join(tmpdir(), "slabwright-test-")), "corner");
  newKitchen({ folder, units: "metric" });
  const [{ variantId, panId, applianceId, batchG, setpointC }] = loadKitchen(folder).variants;
  const headings =
    "trial,date,variant,pan,appliance,batch_g,setpoint_c,load_fraction,start_c,time_min,not_crisp_min,crisp_min,core_c,crisp_scores,brown_scores";
  const rows = Array.from({ length: trials }, (_, at) => {
    const share = [1, 1.3, 0.75][at % 3];
    const crispMin = Math.round(12 * share);
    const wet = at % 4 === 3; // never crisp
    const seen = wet ? `${crispMin - 4},` : `${crispMin - 1},${crispMin}`;
    const scores = wet ? "3;4,1;1" : "8;7,3;3";
    const took = wet ? crispMin - 4 : crispMin;
    return `A-${at + 1},2026-03-0${at + 1},${variantId},${panId},${applianceId},${Math.round(batchG * share)},${setpointC},0.5,-18,${took},${seen},${wet ? 70 : 92},${scores}`;
  });
  writeFileSync(join(folder, "trials", "first-log.csv"), `${[headings, ...rows].join("\n")}\n`);
  return folder;
}
