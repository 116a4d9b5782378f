import { describe, expect, test } from "vitest";
import {
  freezingFront,
  freezingFrontC,
  freezingFrontMm,
} from "../../../../kernel-lib/library/src/heat/formulas/freezing-front";

describe("freezingFront", () => {
  const body = {
    frozenConductivityWmK: 1.5,
    frozenSpecificHeatKJkgK: 2,
    thawedConductivityWmK: 0.5,
    thawedSpecificHeatKJkgK: 3.5,
    densityKgM3: 1050,
    latentKJkg: 230,
    faceC: -18,
    freezingPointC: -1,
    startC: 5,
  };

  test("a face that is not cold, and a body that is frozen, are refused", () => {
    expect(() => freezingFront({ ...body, faceC: 1 })).toThrow("faceC must be below");
    expect(() => freezingFront({ ...body, faceC: -1 })).toThrow(
      "faceC must be below the freezing point of -1 °C, got -1",
    );
    expect(() => freezingFront({ ...body, startC: -2 })).toThrow("startC must be at least the freezing point of -1 °C");
    expect(() => freezingFrontMm(freezingFront(body), 0)).toThrow("timeMin must be > 0 min");
    expect(() => freezingFrontC(freezingFront(body), 3, 0)).toThrow("timeMin must be > 0 min");
  });

  test("runs from the face's temperature through the freezing point at the front to the body's, and moves with √t", () => {
    const front = freezingFront(body);
    const atMm = freezingFrontMm(front, 20);
    expect(freezingFrontMm(front, 80)).toBeCloseTo(2 * atMm, 9);
    expect(freezingFrontC(front, 0, 20)).toBeCloseTo(-18, 9);
    expect(freezingFrontC(front, atMm, 20)).toBeCloseTo(-1, 9);
    expect(freezingFrontC(front, atMm * (1 + 1e-9), 20)).toBeCloseTo(-1, 6);
    expect(freezingFrontC(front, 40 * atMm, 20)).toBeCloseTo(5, 9);
  });
});
