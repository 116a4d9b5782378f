import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayOrder, readDay } from "../../../../../kernel-lib/library/src/trials/log/cell/read-day";

const dayOf = (cell: string, order: Parameters<typeof readDay>[1] = null): string => {
  const read = readDay(cell, order);
  return "day" in read ? read.day : `expected ${read.expected}`;
};

describe("readDay", () => {
  it.each([
    ["2026-03-14", "2026-03-14"],
    ["2026/3/14", "2026-03-14"],
    ["2026.03.14", "2026-03-14"],
    ["3/14/2026", "2026-03-14"],
    ["14.3.2026", "2026-03-14"],
    ["14-3-26", "2026-03-14"],
    ["5/5/2026", "2026-05-05"],
    ["14 Mar 2026", "2026-03-14"],
    ["14-Mar-26", "2026-03-14"],
    ["Sat, 14 March 2026", "2026-03-14"],
    ["March 14, 2026", "2026-03-14"],
    ["Mar. 14th, 2026", "2026-03-14"],
    ["2026-03-14T00:00:00Z", "2026-03-14"],
    ["2026-03-14 08:30", "2026-03-14"],
  ])("reads %j as %s", (cell, day) => expect(dayOf(cell)).toBe(day));

  it.each(["2026-02-30", "31/4/2026", "14 Foo 2026", "46095", "2026", "yesterday", "14/3", "1/2/3/2026", ""])(
    "refuses %j",
    (cell) => expect(dayOf(cell)).toBe("expected a day such as 2026-03-14"),
  );

  it("says what a day of two meanings may be, and takes the file's order", () => {
    expect(dayOf("11/3/2026")).toBe(
      'expected a day such as 2026-03-14; this may be 2026-11-03 or 2026-03-11, and the heading "date (m/d/y)" or "date (d/m/y)" says which',
    );
    expect(dayOf("11/3/2026", "d/m/y")).toBe("2026-03-11");
    expect(dayOf("11/3/2026", "m/d/y")).toBe("2026-11-03");
  });

  it("says how it read a day, unless it stood as 2026-03-14", () => {
    expect(readDay("2026-03-14", null)).toEqual({ day: "2026-03-14", says: null });
    expect(readDay("2026-03-14 00:00", null)).toEqual({ day: "2026-03-14", says: null });
    expect(readDay("2026-03-14 08:30", null)).toMatchObject({ says: "the time of day was left out" });
    expect(readDay("3/14/2026", null)).toMatchObject({ says: "was taken as month, day and year" });
  });
});

describe("dayOrder", () => {
  const text = (date: Date, order: string): string => {
    const [day, month] = [date.getUTCDate(), date.getUTCMonth() + 1];
    return `${order === "d/m/y" ? `${day}/${month}` : `${month}/${day}`}/${date.getUTCFullYear()}`;
  };

  it("finds the order of any file that shows it, and none where it does not", () => {
    const days = fc.array(fc.date({ min: new Date("2000-01-01"), max: new Date("2099-12-31"), noInvalidDate: true }), {
      minLength: 1,
    });
    fc.assert(
      fc.property(days, fc.constantFrom("d/m/y" as const, "m/d/y" as const), (dates, order) => {
        const shows = dates.some((date) => date.getUTCDate() > 12);
        expect(dayOrder(dates.map((date) => text(date, order)))).toBe(shows ? order : null);
      }),
    );
  });

  it("finds none where days contradict each other", () => {
    expect(dayOrder(["14/3/2026", "3/14/2026"])).toBeNull();
  });
});
