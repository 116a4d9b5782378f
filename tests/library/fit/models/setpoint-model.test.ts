import { curves, fitCurve, groupedModel, predictCurve, setpointModel } from "slabwright/fit";
import { describe, expect, it } from "vitest";

const L = [6, 9, 12, 16, 20];

describe("setpointModel", () => {
  const rows = [180, 190, 200].flatMap((setpointC) => L.map((x) => ({ x, setpointC })));
  const times = rows.map(
    ({ x, setpointC }, i) => (2 + 0.8 * x) * (150 / (setpointC - 40)) * (1 + 0.004 * Math.cos(7 * i)),
  );
  const model = setpointModel(curves.line, { referenceC: 190 });
  it("finds the temperature the air works against from trials at three setpoints", () => {
    const fit = fitCurve(model, { x: rows, y: times });
    const own = fit.parameters.middleC;
    expect(Math.abs(own.estimate - 40)).toBeLessThan(3 * (own.standardError ?? 0));
    expect(own.standardError).toBeLessThan(10);
    expect(predictCurve(model, fit, { x: 10, setpointC: 210 }).extrapolated).toBe(true);
  });
  it("leaves it undetermined at one setpoint, and fits when it is held", () => {
    const one = rows.map((row) => ({ ...row, setpointC: 190 }));
    const flat = rows.map(({ x }, i) => (2 + 0.8 * x) * (1 + 0.004 * Math.cos(7 * i)));
    const loose = fitCurve(model, { x: one, y: flat });
    expect(loose.parameters.middleC.standardError).toBeNull();
    expect(loose.notices.join(" ")).toContain("undetermined");
    const held = fitCurve(model, { x: one, y: flat }, { fixed: { middleC: 15 } });
    expect(held.converged).toBe(true);
    expect(held.parameters.b.estimate).toBeCloseTo(0.8, 1);
  });
  it("goes inside a grouped model", () => {
    const both = groupedModel(model, { groups: ["small", "large"] });
    const x = [...rows.map((row) => ({ ...row, group: "small" })), ...rows.map((row) => ({ ...row, group: "large" }))];
    const fit = fitCurve(both, { x, y: [...times, ...times.map((time) => 1.3 * time)] });
    expect(fit.parameters["factor[large]"].estimate).toBeCloseTo(1.3, 6);
  });
});
