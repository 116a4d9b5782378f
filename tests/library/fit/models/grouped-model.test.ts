import { compareNested, curves, fitCurve, fitLinear, groupedModel, predictCurve } from "slabwright/fit";
import { seededRandom } from "slabwright/statistics";
import { describe, expect, it } from "vitest";

// Invented trials of two invented appliances.
const L = [6, 9, 12, 16, 20];
const random = seededRandom(5);
const points = ["small", "large", "deck"].flatMap((group) => [...L, ...L].map((x) => ({ x, group })));
const FACTOR: Record<string, number> = { small: 1, large: 1.25, deck: 1.6 };
const y = points.map(({ x, group }) => FACTOR[group] * (3 + 0.6 * x + 0.02 * x * x) * (1 + random.normal(0, 0.01)));

describe("groupedModel", () => {
  const model = groupedModel(curves.slabTime, { groups: ["small", "large", "deck"] });
  const fit = fitCurve(model, { x: points, y });
  it("finds each group's factor with its doubt", () => {
    for (const group of ["large", "deck"]) {
      const own = fit.parameters[`factor[${group}]`];
      expect(Math.abs(own.estimate - FACTOR[group])).toBeLessThan(4 * (own.standardError ?? 0));
      expect(own.standardError).toBeGreaterThan(0);
    }
    expect(fit.names).toEqual(["c0", "a", "b", "factor[large]", "factor[deck]"]);
  });
  it("predicts a group and flags a thickness outside the trials", () => {
    const at = predictCurve(model, fit, { x: 10, group: "deck" });
    expect(Math.abs(at.value - 1.6 * 11)).toBeLessThan(0.5);
    expect(at.extrapolated).toBe(false);
    expect(predictCurve(model, fit, { x: 25, group: "deck" }).extrapolated).toBe(true);
    expect(() => predictCurve(model, fit, { x: 10, group: "barbecue" })).toThrow(
      "groupedModel: group must be one of small, large, deck",
    );
  });
  it("with separate intercept and slope is one regression a group", () => {
    const apart = groupedModel(curves.line, {
      groups: ["small", "large", "deck"],
      factor: false,
      separate: ["a", "b"],
    });
    const joint = fitCurve(apart, { x: points, y });
    for (const group of ["small", "large", "deck"]) {
      const own = points.map((_, i) => i).filter((i) => points[i].group === group);
      const alone = fitLinear({ covariates: { L: own.map((i) => points[i].x) }, y: own.map((i) => y[i]) });
      expect(joint.parameters[`b[${group}]`].estimate).toBeCloseTo(alone.parameters.L.estimate, 8);
      expect(joint.parameters[`a[${group}]`].estimate).toBeCloseTo(alone.parameters.intercept.estimate, 7);
    }
  });
  it("lets an F test ask whether groups need a slope of their own", () => {
    const shared = fitCurve(
      groupedModel(curves.line, { groups: ["small", "large", "deck"], factor: false, separate: ["a"] }),
      { x: points, y },
    );
    const apart = fitCurve(
      groupedModel(curves.line, { groups: ["small", "large", "deck"], factor: false, separate: ["a", "b"] }),
      { x: points, y },
    );
    const test = compareNested(shared, apart);
    expect(test.numeratorDf).toBe(2);
    expect(test.pValue).toBeLessThan(1e-6);
    expect(test.reading).toContain("the 2 extra terms are supported");
  });
  it("refuses a group without trials and a lone group", () => {
    expect(() =>
      fitCurve(groupedModel(curves.line, { groups: ["small", "large", "deck", "spare"] }), { x: points, y }),
    ).toThrow("must have trials of every group");
    expect(() => groupedModel(curves.line, { groups: ["small"] })).toThrow("at least two groups");
    expect(() => groupedModel(curves.line, { groups: ["small", "small"] })).toThrow("must differ");
  });
});
