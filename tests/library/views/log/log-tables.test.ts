import { describe, expect, it } from "vitest";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import { groupTrials } from "../../../../kernel-lib/library/src/trials/questions/group-trials";
import { readingRows } from "../../../../kernel-lib/library/src/trials/questions/reading-rows";
import { photosTable } from "../../../../kernel-lib/library/src/views/log/photos-table";
import { readingsTable } from "../../../../kernel-lib/library/src/views/log/readings-table";
import { trialGroupsTable } from "../../../../kernel-lib/library/src/views/log/trial-groups-table";

const kitchen = loadKitchen();
const { trials } = kitchen;

describe("trialGroupsTable", () => {
  it("has the numbers of groupTrials, bands and settings from low to high", () => {
    const table = trialGroupsTable({ trials, units: "metric", by: ["thickness band"], of: "coreC" });
    const groups = groupTrials(trials, { by: ["thickness band"], of: "coreC" });
    const bands = table.rows.map(([band]) => Number.parseFloat(String(band)));
    expect(bands).toEqual(bands.toSorted((a, b) => a - b));
    for (const [band, n, mean, sd, low, high] of table.rows) {
      const group = groups.find(({ key }) => key[0] === band)!;
      expect([n, mean, low, high]).toEqual([group.n, group.mean, ...(group.confidence95 ?? [null, null])]);
      if (group.sd === null) expect(sd).toBeNull();
      else expect(sd as number).toBeCloseTo(group.sd, 9);
    }
  });

  it("turns a mean of °C into °F by 1.8 and 32, its deviation by 1.8 alone", () => {
    const [metric, us] = (["metric", "us"] as const).map(
      (units) => trialGroupsTable({ trials, units, by: ["variant"], of: "coreC" }).rows[0] as readonly number[],
    );
    expect(us[2]).toBeCloseTo(1.8 * metric[2] + 32, 9);
    expect(us[3]).toBeCloseTo(1.8 * metric[3], 9);
  });

  it("names settings and bands in the kitchen's units", () => {
    const rows = trialGroupsTable({ trials, units: "us", by: ["setpoint", "thickness band"], of: "timeMin" }).rows;
    expect(rows[0][0]).toMatch(/^\d+ °F$/);
    expect(rows[0][1]).toMatch(/in \(.* mm\)$/);
  });

  it("names the silent, and asks for the number where all are", () => {
    const some = trials.map((trial, at) => (at === 0 ? { ...trial, coreC: null } : trial));
    expect(trialGroupsTable({ trials: some, units: "metric", by: ["variant"], of: "coreC" }).rows[0].at(-1)).toBe(
      "BL-01",
    );
    const none = trials.map((trial) => ({ ...trial, massAfterG: null }));
    expect(() => trialGroupsTable({ trials: none, units: "metric", by: ["variant"], of: "lossPercent" })).toThrow(
      "log it",
    );
  });
});

describe("readingsTable", () => {
  it("has a row for every reading, in the kitchen's units", () => {
    const readings = readingRows(trials.slice(0, 3));
    const table = readingsTable(readings, "us");
    expect(table.rows).toHaveLength(readings.length);
    const [depth] = table.rows;
    expect([depth[3], depth[6]]).toEqual(["depth", "in"]);
    expect(25.4 * Number(depth[5])).toBeCloseTo(trials[0].probesMm[0], 9);
  });
});

describe("photosTable", () => {
  const pictured = {
    ...kitchen,
    trials: trials.map((trial, at) => ({ ...trial, photos: at < 3 ? [`${at}.jpg`] : [] })),
  };

  it("lists pictures that are there, thin slabs first, and names what is missing or belongs to none", () => {
    const table = photosTable({ kitchen: pictured, present: ["0.jpg", "2.jpg", "cat.jpg"] });
    expect(table.rows.map(([file]) => file).toSorted()).toEqual(["photos/0.jpg", "photos/2.jpg"]);
    const thick = table.rows.map((row) => Number(row[2]));
    expect(thick).toEqual(thick.toSorted((a, b) => a - b));
    expect(table.notes.join(" ")).toContain("not in the folder photos: 1.jpg");
    expect(table.notes.join(" ")).toContain("named by no trial: cat.jpg");
  });

  it("asks for a picture where the log names none", () => {
    expect(() => photosTable({ kitchen, present: [] })).toThrow("log its file name under photo");
  });
});
