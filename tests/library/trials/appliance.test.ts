import { describe, expect, it } from "vitest";
import { readAppliances } from "../../../kernel-lib/library/src/trials/appliance";

const HEADINGS = "appliance,name,kind,floor_cm2,power_w,note";
const read = (row: string) => readAppliances(`${HEADINGS}\n${row}\n`, "appliances.csv");

describe("readAppliances", () => {
  it("reads a row as it stands, and one whose power and note nobody knows", () => {
    expect(read("small-basket,small basket,air fryer,420,1500,by the door").records).toEqual([
      {
        applianceId: "small-basket",
        name: "small basket",
        kind: "air fryer",
        floorCm2: 420,
        floorShape: null,
        floorSides: null,
        count: 1,
        powerW: 1500,
        note: "by the door",
      },
    ]);
    expect(read("oven,oven,still oven,2000,,").records[0]).toMatchObject({ powerW: null, note: null });
    const inches = readAppliances("appliance,name,kind,floor_in2,power_w,note\noven,oven,fan oven,100,,\n", "a.csv");
    expect(inches.records[0].floorCm2).toBeCloseTo(645.16, 9);
  });

  it("knows a floor's shape where its sides or its diameter are typed, in the floor's own cell or beside it", () => {
    const shapes = (headings: string, cells: string) =>
      readAppliances(`appliance,name,kind,${headings}\nb,b,air fryer,${cells}\n`, "a.csv").records[0];
    const inches = shapes("floor_in2", "9 x 9 1/2");
    expect(inches.floorCm2).toBeCloseTo(85.5 * 6.4516, 6);
    expect(inches.floorShape).toEqual({
      shape: "rectangle",
      lengthMm: expect.closeTo(241.3, 9),
      widthMm: expect.closeTo(228.6, 9),
    });
    const round = shapes("floor_cm2", "round 22.8");
    expect(round.floorShape).toEqual({ shape: "round", diameterMm: expect.closeTo(228, 9) });
    expect(round.floorCm2).toBeCloseTo(408.28, 2);
    expect(shapes("floor_cm2,floor_sides,count", "408,round 228 mm,2")).toMatchObject({
      floorCm2: 408,
      floorShape: { shape: "round", diameterMm: 228 },
      count: 2,
    });
    expect(shapes("floor_cm2,floor_sides", "420,").floorShape).toBeNull();
    expect(readAppliances("appliance,kind,floor_cm2,floor_sides\nb,air fryer,420,oval\n", "a.csv").problems[0]).toMatch(
      /column floor_sides: expected two sides such as 21 x 20 cm, or a diameter such as round 22 cm, got "oval"/,
    );
  });

  it("takes floors of 20 to 20000 cm² and powers up to 200 kW, and nothing past them", () => {
    const problems = (floor: string, power: string) => read(`oven,oven,fan oven,${floor},${power},`).problems;
    for (const floor of ["20", "20000"]) expect(problems(floor, "200000")).toEqual([]);
    for (const floor of ["19.9", "20000.1"])
      expect(problems(floor, "")).toEqual([
        `appliances.csv row 2, column floor_cm2: expected a floor of 20 to 20000 cm² (3 to 3100 in²), the part that pieces lie on, got "${floor}"`,
      ]);
    expect(problems("400", "0")[0]).toContain("expected a power above 0 W");
    expect(problems("400", "200001")[0]).toContain("expected a power up to 200000 W");
  });
});
