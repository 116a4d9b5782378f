import { expect, it } from "vitest";
import { covarianceOf, directEstimates } from "../../../../kernel-lib/library/src/fit/least-squares/direct-estimates";

it("gives the mean of 1, 2, 3 its textbook standard error, likelihood and interval", () => {
  const direct = directEstimates({
    names: ["mean"],
    estimates: [2],
    root: [[1 / Math.sqrt(3)]],
    rss: 2,
    weights: [1, 1, 1],
  });
  const { mean } = direct.parameters;
  expect(mean.standardError).toBeCloseTo(1 / Math.sqrt(3), 12);
  // Student's t with 2 degrees of freedom at 0.975: 4.302653 (R's qt)
  expect(mean.interval95?.[1]).toBeCloseTo(2 + 4.302653 / Math.sqrt(3), 6);
  expect(direct.logLikelihood).toBeCloseTo(-1.5 * (Math.log((2 * Math.PI * 2) / 3) + 1), 12);
  expect(direct.correlation).toEqual([[1]]);
});

it("multiplies a square root of the inverse back together", () => {
  expect(
    covarianceOf(
      [
        [1, 0],
        [2, 3],
      ],
      2,
    ),
  ).toEqual([
    [4, 8],
    [8, 52],
  ]);
});
