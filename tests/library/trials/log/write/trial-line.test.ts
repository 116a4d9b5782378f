import { describe, expect, it } from "vitest";
import { readTrials } from "../../../../../kernel-lib/library/src/trials/log/read-trials";
import { trialLine } from "../../../../../kernel-lib/library/src/trials/log/write/trial-line";

const HEADINGS =
  "trial,date,variant,pan,appliance,batch_g,thickness_mm,setpoint_c,load_fraction,start_c,flip_min,time_min,not_crisp_min,crisp_min,core_c,before_g,after_g,pieces,crisp_scores,brown_scores,note";
const GOOD = "T-1,2026-02-03,beet,half,basket,1150,8.1;8.3,200,0.6,-18,,11,9,10,81.5,120.4,101.2,8,6.5;7,4;5,";
const log = (...rows: string[]): string => [HEADINGS, ...rows].join("\n");

describe("trialLine", () => {
  it("writes a trial logged in metric units into a log in inches, ounces and °F as a person would", () => {
    const headings = HEADINGS.replace("batch_g", "batch_lb")
      .replace("thickness_mm", "thickness_in")
      .replace("setpoint_c", "setpoint_f")
      .replace("core_c", "core_f")
      .replace("before_g", "before_oz")
      .replace("after_g", "after_oz")
      .split(",");
    const [trial] = readTrials(log(GOOD.replace("1150", "230")), "log.csv").records;
    expect(trialLine(trial, headings, "us.csv")).toBe(
      "T-1,2026-02-03,beet,half,basket,0.50706,0.3189;0.3268,392,0.6,-18,,11,9,10,178.7,4.247,3.5697,8,6.5;7,4;5,",
    );
  });
});
