import { describe, expect, it } from "vitest";
import { readTrials } from "../../../../kernel-lib/library/src/trials/log/read-trials";
import { clockDoubt, trialDoubts } from "../../../../kernel-lib/library/src/trials/log/trial-doubts";
import type { Trial } from "../../../../kernel-lib/library/src/trials/trial";

const [sound] = readTrials(
  "trial,date,variant,pan,appliance,thickness_mm,setpoint_c,load_fraction,start_c,time_min,not_crisp_min,crisp_min,core_c,before_g,after_g,pieces,crisp_scores,brown_scores\n" +
    "T-1,2026-03-01,rice,half,basket,8.1;8.3;8.4,200,0.6,-18,12,9,11,81,120,100,8,7;6;8,4;4;5",
  "log.csv",
).records;
const doubts = (change: Partial<Trial>): readonly string[] =>
  trialDoubts({ ...sound, ...change }, { today: "2026-11-26" }).map(({ name }) => name);

describe("trialDoubts", () => {
  it("says nothing of an ordinary trial, nor of what ordinary trials hold at the ends", () => {
    expect(doubts({})).toEqual([]);
    expect(
      doubts({ coreC: 99.5, loadFraction: 1, startC: -24, timeMin: 2.5, crispMin: null, notCrispMin: null }),
    ).toEqual([]);
    expect(doubts({ startC: 4 })).toEqual([]);
    expect(doubts({ crispScores: [9, 9, 9], brownScores: [0, 0, 0] })).toEqual([]);
    expect(doubts({ coreC: 12, timeMin: 4, crispMin: null, notCrispMin: 4 })).toEqual([]);
    expect(doubts({ date: "2026-11-27" })).toEqual([]);
  });

  it.each<[string, Partial<Trial>, string]>([
    ["a core above boiling", { coreC: 104 }, "coresC"],
    ["a core above the air", { coreC: 110, setpointC: 105 }, "coresC"],
    ["a core of 0 °C", { coreC: 0 }, "coresC"],
    ["75 °F read as 23.9 °C", { coreC: (75 - 32) / 1.8 }, "coresC"],
    ["a rested core above boiling", { restedCoreC: 104 }, "restedCoreC"],
    ["-18 under °F", { startC: (-18 - 32) / 1.8 }, "startC"],
    ["a minus sign that is missing", { startC: 18 }, "startC"],
    ["a thickness of 0.3 mm", { probesMm: [0.3, 0.4] }, "probesMm"],
    ["probes that differ", { probesMm: [8, 14] }, "probesMm"],
    ["a slab of 45 mm", { probesMm: [45] }, "probesMm"],
    ["12 seconds", { timeMin: 0.2, crispMin: null, notCrispMin: null }, "timeMin"],
    ["crisp after seconds", { crispMin: 0.2, notCrispMin: 0 }, "crispMin"],
    ["a load over 1", { loadFraction: 1.1 }, "loadFraction"],
    ["a panel of one score", { crispScores: [6, 6, 6], brownScores: [4, 4, 4] }, "crispScores"],
    ["a third left", { massAfterG: 40 }, "massAfterG"],
    ["pieces of half a gram", { massBeforeG: 4, massAfterG: 3 }, "massBeforeG"],
    ["a coating that weighs less than nothing", { barePieceG: 20, coatedPieceG: 18 }, "coatedPieceG"],
    ["tomorrow's tomorrow", { date: "2026-11-28" }, "date"],
    ["the year 2013", { date: "2013-03-01" }, "date"],
  ])("asks about %s", (_, change, name) => expect(doubts(change)).toEqual([name]));

  it("holds no day against a day that it is not told", () => {
    expect(trialDoubts({ ...sound, date: "2062-01-01" })).toEqual([]);
  });
});

describe("clockDoubt", () => {
  it("asks about decimals that look like seconds", () => {
    expect(["12.30", "9.15", "12,45", "8.05"].filter(clockDoubt)).toHaveLength(4);
    expect(["12.3", "12.25", "12.5", "12.50", "12.75", "12.67", "12.333", "12"].filter(clockDoubt)).toEqual([]);
  });
});
