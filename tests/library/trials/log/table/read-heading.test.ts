import { describe, expect, it } from "vitest";
import { LOG_FIELDS, logHeading } from "../../../../../kernel-lib/library/src/trials/log/log-fields";
import { readHeading } from "../../../../../kernel-lib/library/src/trials/log/table/read-heading";

const read = (heading: string): readonly [string | undefined, string | null] => {
  const { field, unit, expected } = readHeading(heading);
  return expected === null ? [field?.name, unit] : [`expected ${expected}`, null];
};

describe("readHeading", () => {
  it("knows the heading of every column in both units, and every synonym with and without its unit", () => {
    for (const field of LOG_FIELDS) {
      for (const units of ["us", "metric"] as const) expect(read(logHeading(field, units))[0]).toBe(field.name);
      for (const name of field.also) {
        expect(read(name)[0], name).toBe(field.name);
        if (field.endings !== null)
          expect(read(`${name.toUpperCase()} (${field.endings.us})`)[0], name).toBe(field.name);
      }
    }
  });

  it("lets no heading stand for two columns", () => {
    const words = LOG_FIELDS.flatMap(({ column, also }) => [column.replaceAll("_", " "), ...also]);
    expect(words.filter((word, at) => words.indexOf(word) !== at)).toEqual([]);
  });

  it.each([
    ["Setpoint (°F)", "setpointC", "°F"],
    ["thickness [mm]", "probesMm", "mm"],
    ["Thickness, in", "probesMm", "in"],
    ["thickness in mm", "probesMm", "mm"],
    ["Batch, g", "batchG", "g"],
    ["Batch (lb oz)", "batchG", null],
    ["Core temp C", "coresC", "°C"],
    ["CORE TEMP deg F", "coresC", "°F"],
    ["setpointC", "setpointC", "°C"],
    ["notCrispMin", "notCrispMin", "min"],
    ["time (mm:ss)", "timeMin", "min:s"],
    ["Load %", "loadFraction", "%"],
    ["Date (MM/DD/YYYY)", "date", "m/d/y"],
    ["date_dmy", "date", "d/m/y"],
    ["Trial #", "trialId", null],
    ["Crispness (0-9)", "crispScores", null],
    ["Notes (anything)", "note", null],
    ["crisp", "crispMin", null],
    ["age (days)", "ageDays", "day"],
  ])("reads %j", (heading, name, unit) => expect(read(heading)).toEqual([name, unit]));

  it.each([
    ["thickness_g", "expected a unit of length, such as thickness_mm"],
    ["Core (%)", "expected a unit of temperature, such as core_c"],
    ["Crispness (0-10)", "expected the heading crisp_scores, scores from 0 to 9"],
  ])("refuses %j", (heading, expected) => expect(read(heading)).toEqual([expected, null]));

  it.each(["weather", "oven_note", "temperature", "", "thick", "setpont_c"])("leaves %j as it is", (heading) =>
    expect(read(heading)).toEqual([undefined, null]),
  );
});
