import { expect, test } from "vitest";
import { airAt, breakTimes, faceAir, sameFaces } from "../../../../kernel-lib/library/src/heat/box/face-air";

const jump = { timeS: [0, 60, 60, 120], airC: [200, 200, 100, 180], coefficientWm2K: 40 };

test("air runs straight between its points, holds after them, and a jump goes by the stretch at hand", () => {
  expect(airAt(jump, 30, 30)).toBe(200);
  expect(airAt(jump, 60, 30)).toBe(200);
  expect(airAt(jump, 60, 90)).toBe(100);
  expect(airAt(jump, 90, 90)).toBe(140);
  expect(airAt(jump, 500, 500)).toBe(180);
  expect(airAt({ ...jump, timeS: [30, 60, 60, 120] }, 10, 10)).toBe(200);
});

test("a run breaks where air or flips do, once each, inside its own time", () => {
  expect(breakTimes([jump, jump], [90, 400], 300)).toEqual([0, 60, 90, 120, 300]);
});

test("faces are the same only in air, time and coefficient alike", () => {
  expect(sameFaces(jump, { ...jump })).toBe(true);
  expect(sameFaces(jump, { ...jump, coefficientWm2K: 41 })).toBe(false);
  expect(sameFaces(jump, { ...jump, airC: [200, 200, 100, 181] })).toBe(false);
});

test("air comes to SI, jumps allowed, going back refused", () => {
  const door = [
    { timeMin: 0, airC: 204 },
    { timeMin: 5, airC: 204 },
    { timeMin: 5, airC: 150 },
  ];
  expect(faceAir(door, 40, "test", "").timeS).toEqual([0, 300, 300]);
  expect(() => faceAir([door[1], door[0]], 40, "test", "")).toThrow("test: air[1].timeMin must not be before");
  expect(() => faceAir(900, 40, "test", "")).toThrow("test: air must be between -200 and 450 °C, got 900");
});
