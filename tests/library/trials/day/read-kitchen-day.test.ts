import { describe, expect, test } from "vitest";
import { readKitchenDay } from "../../../../kernel-lib/library/src/trials/day/read-kitchen-day";

const read = (lines: string, units: "us" | "metric" = "metric") =>
  readKitchenDay(`what,value\n${lines}\n`, "day.csv", units);

describe("readKitchenDay", () => {
  test("reads hours, breaks, shelves and minutes in the kitchen's own units or in the ones typed", () => {
    const { day, slips } = read(
      "Opens,8:00 am\ncloses,5:00 pm\nbreak,12:00 to 12:45\nbreak,15:00-15:15\nfreezer,0\nshelf,24 x 18\nshelf height,8 1/4 in\nfood in the freezer,40\ncoat a piece,0.2\nfreezer-airflow,yes\nhands,2",
      "us",
    );
    expect(slips).toEqual([]);
    expect(day).toMatchObject({
      opens: "8:00 am",
      closes: "5:00 pm",
      breaks: [
        { from: "12:00", until: "12:45" },
        { from: "15:00", until: "15:15" },
      ],
      airflow: "fan",
      hands: 2,
      minutes: { coatPiece: 0.2 },
    });
    expect(day.freezerC).toBeCloseTo(-17.78, 2);
    expect(day.shelf?.lengthMm).toBeCloseTo(609.6, 9);
    expect(day.shelfClearMm).toBeCloseTo(209.55, 9);
    expect(day.storedKg).toBeCloseTo(18.14, 2);
    expect(read("freezer,0 F").day.freezerC).toBeCloseTo(-17.78, 2);
    expect(read("shelf,600 x 450 mm", "us").day.shelf).toEqual({ lengthMm: 600, widthMm: 450 });
  });

  test("a pull-down is whole or none", () => {
    const lines = ["pull-down water,2 kg", "pull-down from,15 C", "pull-down to,-10 C", "pull-down time,5 h"];
    expect(read(lines.join("\n")).day.pullDown).toEqual({ waterKg: 2, fromC: 15, toC: -10, minutes: 300 });
    expect(read(lines.slice(1).join("\n")).slips).toMatchObject([
      { expected: expect.stringMatching(/all four lines/) },
    ]);
  });

  test("names every slip with its row, what was expected and the nearest line", () => {
    const { slips, day } = read(
      "freezer plases,4\nbreak,12:45 to 12:00\nhands,0\nopens,8:00\nopens,9:00\ncloses,7:00\nfreezer,5 C\nroom,",
    );
    expect(slips.map(({ row, nearest, expected }) => [row, nearest, expected.slice(0, 20)])).toEqual([
      [2, "freezer places", "one of opens, closes"],
      [3, null, "two times of day, su"],
      [4, null, "a whole number from "],
      [6, null, "each line once, and "],
      [8, null, "the freezer's air, -"],
      [null, null, "closes later than op"],
    ]);
    expect(day.roomC).toBeUndefined();
    expect(readKitchenDay("opens,closes\n8:00,17:00\n", "day.csv", "metric").slips[0].expected).toBe(
      "the headings what,value",
    );
  });
});
