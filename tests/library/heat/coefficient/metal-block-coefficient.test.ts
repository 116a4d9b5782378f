import { fitLinear } from "slabwright/fit";
import { expect, test } from "vitest";
import { metalBlockCoefficient } from "../../../../kernel-lib/library/src/heat/coefficient/metal-block-coefficient";

const block = { massG: 100, areaMm2: 11300, airC: 204 };
const at = (seconds: number, noiseK = 0) => ({
  timeMin: seconds / 60,
  temperatureC: 204 - 184 * Math.exp(-seconds / 199.11504424778764) + noiseK,
});

test("readings with scatter give an interval that holds the true 40 W/(m²·K)", () => {
  const noise = [0.3, -0.4, 0.2, 0.5, -0.3, -0.2, 0.4];
  const found = metalBlockCoefficient({ ...block, readings: noise.map((noiseK, row) => at(30 * row, noiseK)) });
  expect(found.intervalWm2K?.[0]).toBeLessThan(40);
  expect(found.intervalWm2K?.[1]).toBeGreaterThan(40);
  expect(found.standardErrorWm2K).toBeGreaterThan(0.02);
  expect(found.standardErrorWm2K).toBeLessThan(1);
  expect(found.n).toBe(7);
});

test("two readings give no standard error, and say so", () => {
  const found = metalBlockCoefficient({ ...block, readings: [at(0), at(120)] });
  expect(found.standardErrorWm2K).toBeUndefined();
  expect(found.notes[0]).toContain("Two readings give no scatter");
});

test("a cooling block works alike", () => {
  const readings = [0, 60, 120].map((seconds) => ({
    timeMin: seconds / 60,
    temperatureC: -18 + 38 * Math.exp(-seconds / 199.11504424778764),
  }));
  expect(metalBlockCoefficient({ ...block, airC: -18, readings }).coefficientWm2K).toBeCloseTo(40, 6);
});

test("a block too thick to be even inside is flagged; readings that cannot be are refused", () => {
  const thick = metalBlockCoefficient({ ...block, massG: 20000, conductivityWmK: 15, readings: [at(0), at(120)] });
  expect(thick.notes[0]).toContain("is above 0.1");
  expect(() => metalBlockCoefficient({ ...block, readings: [at(0)] })).toThrow(
    "must hold at least two readings, got 1",
  );
  expect(() => metalBlockCoefficient({ ...block, readings: [at(60), at(60)] })).toThrow(
    "must be later than the reading before",
  );
  expect(() => metalBlockCoefficient({ ...block, readings: [at(0), { timeMin: 9, temperatureC: 210 }] })).toThrow(
    "must stay at least 1 K from the air at 204 °C, got 210",
  );
  expect(() => metalBlockCoefficient({ ...block, readings: [at(120), { timeMin: 3, temperatureC: 60 }] })).toThrow(
    "must move towards the air",
  );
});

test("the standard error is that of the regression of log differences on time, and the interval goes by Student's t", () => {
  const noise = [0.3, -0.4, 0.2, 0.5, -0.3, -0.2, 0.4];
  const readings = noise.map((noiseK, row) => at(30 * row, noiseK));
  const { parameters } = fitLinear({
    covariates: { seconds: readings.map(({ timeMin }) => 60 * timeMin) },
    y: readings.map(({ temperatureC }) => -Math.log(204 - temperatureC)),
  });
  // m·c/A of 100 g of aluminium of 0.9 kJ/(kg·K) on 11,300 mm²
  const perSlope = (0.1 * 900) / 0.0113;
  for (const [confidence, t] of [
    [0.95, 2.570581836], // qt(.975, 5)
    [0.8, 1.475884049], // qt(.9, 5)
  ]) {
    const found = metalBlockCoefficient({ ...block, readings, confidence });
    expect(found.coefficientWm2K).toBeCloseTo(parameters.seconds.estimate * perSlope, 8);
    expect(found.standardErrorWm2K! / ((parameters.seconds.standardError ?? 0) * perSlope)).toBeCloseTo(1, 9);
    expect(found.intervalWm2K![1] - found.coefficientWm2K).toBeCloseTo(t * found.standardErrorWm2K!, 6);
    expect(found.coefficientWm2K - found.intervalWm2K![0]).toBeCloseTo(t * found.standardErrorWm2K!, 6);
  }
});

test("readings that stand still are refused", () => {
  expect(() => metalBlockCoefficient({ ...block, readings: [at(60), { ...at(60), timeMin: 3 }] })).toThrow(
    "must move towards the air",
  );
});

test("a block within 1 K of the air no longer tells, one at 1 K still does", () => {
  const readings = [at(60), { timeMin: 30, temperatureC: 203 }];
  expect(metalBlockCoefficient({ ...block, readings }).coefficientWm2K).toBeGreaterThan(0);
  expect(() => metalBlockCoefficient({ ...block, readings: [at(60), { timeMin: 30, temperatureC: 203.1 }] })).toThrow(
    "must stay at least 1 K from the air",
  );
});
