import { intraclassCorrelation, kendallW } from "slabwright/statistics";
import { describe, expect, it } from "vitest";
import { comparison } from "./comparison";

// P. E. Shrout, J. L. Fleiss, Intraclass correlations: uses in assessing rater reliability, Psychological Bulletin 86 (1979)
// 420 to 428, table 2: six subjects, four judges; the paper gives ICC(2,1) 0.29, ICC(3,1) 0.71, ICC(2,4) 0.62, ICC(3,4) 0.91
// and the mean squares 11.24, 32.49, 1.02. Values from memory.
const SHROUT_FLEISS = [
  [9, 2, 5, 8],
  [6, 1, 3, 2],
  [8, 4, 6, 8],
  [7, 1, 2, 6],
  [10, 5, 6, 9],
  [6, 2, 4, 7],
];

// Eight invented pieces, four invented tasters; every figure below from R 4.2: friedman.test(t(s)) divided by k(n - 1), the mean
// squares of anova(lm(y ~ r + c)), and the formulas of McGraw & Wong (1996) with R's qf.
const TASTERS = [
  [7, 6.5, 8, 6],
  [4, 5, 6.5, 4],
  [9, 8.5, 9, 9],
  [3, 2.5, 5, 2],
  [6, 6, 6, 5],
  [8, 7, 9, 7.5],
  [1, 2, 4, 0.5],
  [5, 5.5, 7, 6],
];

// Ties within every judge; R 4.2 as above.
const TIED = [
  [1, 1, 2],
  [2, 2, 2],
  [3, 3, 1],
  [3, 4, 4],
  [5, 4, 5],
  [5, 6, 5.5],
  [7, 7, 7],
];

const agreement = (what: string, against: string, source: string) =>
  comparison({ page: "calibration-and-doubt", what, against, source });
const kendall = agreement(
  "`kendallW` with and without ties",
  "R's friedman.test",
  "R Core Team, R 4.2.2; Kendall M.G., Gibbons J.D., Rank Correlation Methods",
);
const icc = agreement(
  "`intraclassCorrelation` and its intervals",
  "R's anova with McGraw & Wong's formulas",
  "McGraw K.O., Wong S.P. (1996), Psychological Methods 1:30-46",
);

describe("kendallW", () => {
  it.each([
    ["Shrout & Fleiss' table", SHROUT_FLEISS, 0.887037037037, 17.7407407407, 0.003289509],
    ["tasters", TASTERS, 0.965568862275, 27.0359281437, 0.000328353796498],
    ["ties", TIED, 0.922764227642, 16.6097560976, 0.0108296889278],
  ])("agrees with R's friedman.test: %s", (_, scores, w, chiSquared, pValue) => {
    const found = kendallW(scores);
    kendall.absolute(found.w, w, 0.5e-11, "-");
    expect(found.chiSquared).toBeCloseTo(chiSquared, 9);
    kendall.absolute(found.pValue, pValue, 0.5e-9, "-");
    expect(found.df).toBe(scores.length - 1);
  });
});

describe("intraclassCorrelation", () => {
  it("gives what Shrout and Fleiss printed", () => {
    const { agreement, consistency, agreementOfMean, consistencyOfMean, meanSquares } =
      intraclassCorrelation(SHROUT_FLEISS);
    expect(
      [agreement.value, consistency.value, agreementOfMean, consistencyOfMean].map((icc) => icc.toFixed(2)),
    ).toEqual(["0.29", "0.71", "0.62", "0.91"]);
    expect([meanSquares.things, meanSquares.judges, meanSquares.rest].map((square) => square.toFixed(2))).toEqual([
      "11.24",
      "32.49",
      "1.02",
    ]);
  });

  it("agrees with R to eleven digits, intervals too", () => {
    const { agreement, consistency, meanSquares } = intraclassCorrelation(TASTERS);
    const found = [agreement.value, ...agreement.confidence95, consistency.value, ...consistency.confidence95];
    const wanted = [0.84205591045, 0.503628249843, 0.964157935413, 0.928345286554, 0.80763512314, 0.98320537319];
    found.forEach((value, at) => {
      icc.absolute(value, wanted[at], 0.5e-8, "-");
    });
    expect([meanSquares.things, meanSquares.judges, meanSquares.rest].map((square) => +square.toFixed(11))).toEqual([
      +(21.793526785714).toFixed(11),
      5.1328125,
      +(0.412574404762).toFixed(11),
    ]);
  });
});
