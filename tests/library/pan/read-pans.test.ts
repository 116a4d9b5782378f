import { describe, expect, it } from "vitest";
import { readPans } from "../../../kernel-lib/library/src/pan/read-pans";

const HEADINGS =
  "pan,name,shape,bottom_length_mm,bottom_width_mm,bottom_diameter_mm,depth_mm,corner_radius_mm,wall_taper_deg,wells,count,standing";
const read = (...rows: string[]) => readPans([HEADINGS, ...rows].join("\n"), "pans.csv");

describe("readPans", () => {
  it("reads each shape with its own sizes", () => {
    const { records, problems } = read(
      "a,a,rectangle,420,293,,25,14,6,,4,measured",
      "b,b,round,,,200,50,,0,,1,nominal",
      "c,c,wells,,,32,19,,18,24,2,measured",
    );
    expect(problems).toEqual([]);
    expect(records.map((pan) => pan.shape)).toEqual(["rectangle", "round", "wells"]);
    expect(records[2]).toMatchObject({ wells: 24, bottomDiameterMm: 32, count: 2 });
  });

  it("says which size a shape lacks, and which size cannot be", () => {
    const { records, problems } = read(
      "a,a,rectangle,420,,,25,14,6,,4,measured",
      "b,b,round,,,,50,,0,,1,nominal",
      "c,c,wells,,,32,19,,18,2.5,2,measured",
      "d,d,rectangle,420,293,,25,200,6,,4,measured",
    );
    expect(records).toEqual([]);
    expect(problems).toEqual([
      'pans.csv row 2, column bottom_width_mm: expected a value, as the shape is rectangle, got ""',
      'pans.csv row 3, column bottom_diameter_mm: expected a value, as the shape is round, got ""',
      'pans.csv row 4, column wells: expected a whole number >= 1, got "2.5"',
      'pans.csv row 5, column corner_radius_mm: expected at most half the shorter side (146.5 mm), got "200"',
    ]);
  });
});
