import { describe, expect, test } from "vitest";
import { loadKitchen } from "../../../kernel-lib/library/src/notebook/load-kitchen";
import { daysBetween, lastDay } from "../../../kernel-lib/library/src/trials/last-day";

describe("lastDay", () => {
  test("is the latest day of trials, prices and packs, and none where there are none", () => {
    const kitchen = { ...loadKitchen(), trials: [], packs: [], pantry: [] };
    expect(lastDay(kitchen)).toBeNull();
    const item = { ingredientId: "a", packG: 1, packPrice: 1, pricedOn: "2026-05-01", stockG: null, note: null };
    expect(lastDay({ ...kitchen, pantry: [item, { ...item, pricedOn: null }] })).toBe("2026-05-01");
    expect(lastDay({ ...loadKitchen(), pantry: [{ ...item, pricedOn: "2020-01-01" }] }) as string).toMatch(/^2026-/);
  });

  test("days are counted over months and leap years", () => {
    expect(daysBetween("2024-02-28", "2024-03-01")).toBe(2);
    expect(daysBetween("2026-03-01", "2026-02-28")).toBe(-1);
  });
});
