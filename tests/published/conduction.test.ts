import { describe, expect, test } from "vitest";
import {
  freezingFront,
  freezingFrontC,
  freezingFrontMm,
} from "../../kernel-lib/library/src/heat/formulas/freezing-front";
import { semiInfiniteSolution } from "../../kernel-lib/library/src/heat/formulas/semi-infinite-solution";
import { brickSeriesSolution, seriesSolution } from "../../kernel-lib/library/src/heat/formulas/series-solution";
import { seriesTerms } from "../../kernel-lib/library/src/heat/formulas/series-terms";
import { comparison } from "./comparison";
import reference from "./conduction/reference.json";

/** Absolute, as reference.json states. */
const TOLERANCE = 1e-7;
const exact = comparison({
  page: "heating-and-freezing",
  what: "roots, coefficients, temperatures and freezing fronts of the closed solutions",
  against: "the equations solved apart from the library",
  source: "Carslaw H.S., Jaeger J.C. (1959), Conduction of Heat in Solids, 2nd ed.",
});
const near = (found: number, certified: number): void => exact.absolute(found, certified, TOLERANCE, "-");

describe("roots and coefficients (Carslaw & Jaeger 1959)", () => {
  for (const certified of reference.roots)
    test(`Bi ${certified.biot}`, () => {
      const slab = seriesTerms("slab", certified.biot, 4);
      certified.slab.forEach((root, term) => {
        near(slab[term].root, root);
      });
      certified.slabC.forEach((coefficient, term) => {
        near(slab[term].coefficient, coefficient);
      });
      const [cylinder] = seriesTerms("cylinder", certified.biot, 1);
      near(cylinder.root, certified.cylinder);
      near(cylinder.coefficient, certified.cylinderC);
      const [sphere] = seriesTerms("sphere", certified.biot, 1);
      near(sphere.root, certified.sphere);
      near(sphere.coefficient, certified.sphereC);
    });
});

describe("series solutions", () => {
  for (const { biot, fourier, ...certified } of reference.theta)
    test(`Bi ${biot}, Fo ${fourier}`, () => {
      const slab = seriesSolution({ biot, fourier, position: 0.5 });
      near(slab.centre, certified.centre);
      near(slab.here, certified.half);
      near(slab.surface, certified.surface);
      near(slab.mean, certified.mean);
      near(seriesSolution({ shape: "cylinder", biot, fourier }).centre, certified.cylinderCentre);
    });

  test("a box is the product of its slabs", () => {
    const { startC, airC, theta, centreC, ...box } = reference.brick;
    const found = brickSeriesSolution(box);
    near(found.centre, theta);
    exact.absolute(airC + (startC - airC) * found.centre, centreC, 1e-5, "K");
  });

  test("a thick body", () => {
    const body = { timeMin: 1, coefficientWm2K: 25, conductivityWmK: 0.45, diffusivityMm2s: 0.13 };
    near(semiInfiniteSolution({ ...body, depthMm: 5 }), reference.semiInfinite["5mm"]);
    near(semiInfiniteSolution({ ...body, depthMm: 0 }), reference.semiInfinite["0mm"]);
  });
});

describe("freezing fronts", () => {
  for (const { stefan, lambda } of reference.stefan)
    test(`one phase, St ${stefan}`, () => {
      const front = freezingFront({
        frozenConductivityWmK: 1,
        frozenSpecificHeatKJkgK: 1,
        thawedConductivityWmK: 1,
        thawedSpecificHeatKJkgK: 1,
        densityKgM3: 1000,
        latentKJkg: 10 / stefan,
        faceC: -10,
        freezingPointC: 0,
        startC: 0,
      });
      near(front.lambda, lambda);
    });

  const ice = {
    frozenConductivityWmK: 2.22,
    frozenSpecificHeatKJkgK: 2.05,
    thawedConductivityWmK: 0.58,
    thawedSpecificHeatKJkgK: 4.186,
    densityKgM3: 1000,
    latentKJkg: 333.5,
    faceC: -18,
    freezingPointC: 0,
    startC: 20,
  };
  const food = {
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
  for (const [name, options, certified] of [
    ["ice", ice, reference.neumannIce],
    ["food", food, reference.neumannFood],
  ] as const)
    test(`two phases, ${name}`, () => {
      const front = freezingFront(options);
      near(front.lambda, certified.lambda);
      for (const seconds of ["600", "3600"] as const) {
        const timeMin = Number(seconds) / 60;
        exact.absolute(freezingFrontMm(front, timeMin), certified[seconds].frontMm, 1e-6, "mm");
        for (const [depth, temperatureC] of Object.entries(certified[seconds].temperatureC))
          exact.absolute(freezingFrontC(front, Number(depth), timeMin), temperatureC, 1e-6, "K");
      }
    });
});

const handbook = comparison({
  page: "heating-and-freezing",
  what: "first root and lag of a slab",
  against: "cooling-curve factors of the handbooks",
  source: "Lacroix C., Castaigne F. (1987), as in ASHRAE Handbook - Refrigeration, chapter 10",
});

describe("cooling-curve factors of the handbooks against the exact roots", () => {
  for (const { biot, root, lag } of reference.lacroixCastaigne)
    test(`slab, Bi ${biot}: Lacroix & Castaigne (1987) within 0.1 % of ours`, () => {
      const [first] = seriesTerms("slab", biot, 1);
      handbook.relative(first.root, root, 1e-3);
      handbook.relative(first.coefficient, lag, 1e-3);
    });

  for (const { biot, ratios, linRate, exactRate, exactLag } of reference.lin)
    test(`brick ${ratios}, Bi ${biot}: our product's decay, and Lin et al. (1993) within 6 % of it`, () => {
      const slabs = [1, ...ratios].map((ratio) => ({ ratio, term: seriesTerms("slab", biot * ratio, 1)[0] }));
      const rate = slabs.reduce((sum, { ratio, term }) => sum + (term.root / ratio) ** 2, 0);
      near(rate, exactRate);
      near(
        slabs.reduce((product, { term }) => product * term.coefficient, 1),
        exactLag,
      );
      expect(Math.abs(linRate / rate - 1)).toBeLessThan(0.06);
    });
});
