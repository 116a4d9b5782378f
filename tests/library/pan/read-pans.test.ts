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

  it("needs of a pan its id, bottom and depth; the rest has a default", () => {
    const { records, problems } = readPans(
      'pan,length_in,width_in,diameter_in,depth_in\nBig Sheet,17 1/4",12 1/8,,1\npie,,,9,1 1/2\n',
      "pans.csv",
    );
    expect(problems).toEqual([]);
    expect(records[0]).toEqual({
      id: "Big-Sheet",
      name: "Big Sheet",
      shape: "rectangle",
      bottomLengthMm: expect.closeTo(438.15, 9),
      bottomWidthMm: expect.closeTo(307.975, 9),
      depthMm: 25.4,
      cornerRadiusMm: 0,
      wallTaperDeg: 0,
      count: 1,
      standing: "nominal",
    });
    expect(records[1]).toMatchObject({ shape: "round", bottomDiameterMm: expect.closeTo(228.6, 9) });
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
      'pans.csv row 2, column bottom_width_mm: expected a size, as the shape is rectangle, got ""',
      'pans.csv row 3, column bottom_diameter_mm: expected a size, as the shape is round, got ""',
      'pans.csv row 4, column wells: expected a whole number >= 1, got "2.5"',
      'pans.csv row 5, column corner_radius_mm: expected at most half the shorter side (146.5 mm), got "200"',
    ]);
  });
});
