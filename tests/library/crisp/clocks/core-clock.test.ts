import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clockBasis } from "../../../../kernel-lib/library/src/crisp/clocks/clock-basis";
import {
  coreAtC,
  coreElasticity,
  coreMin,
  coreReadingC,
} from "../../../../kernel-lib/library/src/crisp/clocks/core-clock";
import { edgeSpeed } from "../../../../kernel-lib/library/src/crisp/clocks/edge-speed";
import { timeWhen } from "../../../../kernel-lib/library/src/heat/solver/heat-run";
import { simulateSlab } from "../../../../kernel-lib/library/src/heat/solver/simulate-slab";
import { bareSlab, food } from "../sample-food";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const basisTo = (limitC: number, startC = -18) => clockBasis({ food, startC, airC: 200, limitC });
const bite = { ...bareSlab, sides: { lengthMm: 45, widthMm: 30 }, sideShare: 0.8 };

/** When a rising curve passes a value within the first hour, by halving. */
function timeOf(curve: (minutes: number) => number, value: number): number {
  let [low, high] = [0, 60];
  for (let halving = 0; halving < 60; halving++) {
    const middle = (low + high) / 2;
    if (curve(middle) < value) low = middle;
    else high = middle;
  }
  return low;
}

describe("coreMin", () => {
  it("is never for a limit at the plateau or above it", () => {
    const wet = { ...bareSlab, plateauC: 80 };
    expect(coreMin(basisTo(80), wet, 10)).toBe(Number.POSITIVE_INFINITY);
    expect(coreMin(basisTo(85), wet, 10)).toBe(Number.POSITIVE_INFINITY);
    expect(coreMin(basisTo(79), wet, 10)).toBeLessThan(1e3);
  });

  it("adds the slower climb within 12 K of the plateau, and nothing below that", () => {
    const at = (plateauC: number) => coreMin(basisTo(74), { ...bareSlab, plateauC }, 10);
    expect(at(100)).toBe(at(86));
    expect(at(85.9)).toBeGreaterThan(at(86));
    expect(at(85.9) / at(86)).toBeCloseTo(1, 2);
    expect(at(78)).toBeGreaterThan(at(82));
  });

  it("is undone by coreAtC from 40 °C up to the plateau, for pieces with a core of their own pace too", () => {
    fc.assert(
      fc.property(
        between(62, 88),
        between(79, 99),
        between(6, 20),
        between(0.8, 1.6),
        between(0.8, 2.2),
        (limitC, plateauC, mm, coreFactor, coreBend) => {
          fc.pre(limitC < plateauC - 0.5);
          const basis = basisTo(limitC);
          const piece = { ...bite, plateauC, coreFactor, coreBend };
          expect(coreAtC(basis, piece, mm, coreMin(basis, piece, mm))).toBeCloseTo(limitC, 6);
        },
      ),
    );
  });

  it("comes to 74 °C at the same time however the heating slackens, and to less the sooner the more it does", () => {
    const at = (limitC: number, coreBend: number, startC = -18) =>
      coreMin(basisTo(limitC, startC), { ...bareSlab, coreBend }, 10);
    expect(at(74, 1.6)).toBe(at(74, 1));
    expect(at(68.5, 1.6)).toBeLessThan(at(68.5, 1));
    // a power of the share: in halves of the power, the middle one is their geometric mean
    expect(at(68.5, 1.5) ** 2 / (at(68.5, 1) * at(68.5, 2))).toBeCloseTo(1, 9);
    // from chilled it is 0.78 of the power
    expect(at(68.5, 1, 4)).toBeGreaterThan(at(68.5, 1.2, 4));
    expect(Math.log(at(68.5, 1.2, 4) / at(74, 1.2, 4)) / Math.log(at(68.5, 1, 4) / at(74, 1, 4))).toBeCloseTo(1.2, 9);
  });

  it("is divided by what the edges speed up, and follows its own factor and power of the thickness", () => {
    for (const startC of [-18, 4]) {
      const basis = basisTo(70, startC);
      const slab = coreMin(basis, bareSlab, 12);
      const biot = (40 * 0.006) / 0.49;
      const faster = edgeSpeed(bite.sides, 12, biot, 0.8, startC < 0);
      expect(slab / coreMin(basis, bite, 12)).toBeCloseTo(faster, 9);
      expect(coreMin(basis, { ...bareSlab, coreFactor: 1.3, coreByThickness: 0.5 }, 12) / slab).toBeCloseTo(
        1.3 * Math.sqrt(1.2),
        9,
      );
    }
  });
});

describe("coreElasticity", () => {
  it("is 1 where the film decides and less where the inside does, never below 0.3", () => {
    const basis = basisTo(74);
    const at = (coefficientWm2K: number, mm: number) => coreElasticity(basis, { ...bareSlab, coefficientWm2K }, mm);
    expect(at(1, 3)).toBeCloseTo(1, 2);
    // t = a·L + b·L²: the share of a·L
    const { fittedSurface, fittedInside } = basis;
    const share = fittedSurface / 40 / (fittedSurface / 40 + fittedInside * 12);
    expect(at(40, 12)).toBeCloseTo(share, 2);
    expect(at(400, 40)).toBe(0.3);
    expect(coreElasticity(basis, { ...bareSlab, plateauC: 70 }, 12)).toBe(1);
  });
});

describe("coreAtC", () => {
  it("starts at the start, thaws at the freezing point, rises to the plateau and never past it", () => {
    fc.assert(
      fc.property(between(6, 18), between(77, 99), between(0, 30), (mm, plateauC, minute) => {
        const basis = basisTo(74);
        const piece = { ...bite, plateauC };
        expect(coreAtC(basis, piece, mm, 0)).toBeCloseTo(-18, 6);
        const now = coreAtC(basis, piece, mm, minute);
        expect(now).toBeLessThanOrEqual(plateauC);
        expect(coreAtC(basis, piece, mm, minute + 0.1)).toBeGreaterThanOrEqual(now - 1e-9);
      }),
    );
    expect(coreAtC(basisTo(74), bite, 9, 1e3)).toBeCloseTo(100, 6);
  });

  it("goes on at its own pace where its slow climb sets in, in a thin piece that its inside does not hold back", () => {
    const basis = basisTo(74);
    const slopes = (plateauC: number): readonly [number, number] => {
      const piece = { ...bareSlab, coefficientWm2K: 15, plateauC };
      const slowC = Math.min(74, plateauC - 12);
      const core = (minutes: number): number => coreAtC(basis, piece, 3, minutes);
      const at = timeOf(core, slowC);
      return [(core(at) - core(at - 1e-5)) / 1e-5, (core(at + 1e-5) - core(at)) / 1e-5];
    };
    const [before, after] = slopes(79);
    expect(after / before).toBeCloseTo(1, 2);
    // at 74 °C that of the heat: what it took to get there over the time and the thawed food's 3.5 kJ/(kg·K)
    const even = basis.fittedHeatKJkg / 3.5 / coreMin(basis, { ...bareSlab, coefficientWm2K: 15 }, 3);
    expect(slopes(100)[1] / even).toBeCloseTo(1, 2);
  });

  it("goes on at the pace of its slackened heat where its slow climb sets in", () => {
    const basis = basisTo(74);
    for (const coreBend of [1, 1.5, 2]) {
      const piece = { ...bareSlab, coefficientWm2K: 15, plateauC: 79, coreBend };
      const core = (minutes: number): number => coreAtC(basis, piece, 3, minutes);
      const at = timeOf(core, 67);
      expect((core(at + 1e-5) - core(at)) / (core(at) - core(at - 1e-5))).toBeCloseTo(1, 2);
    }
  });

  it("slackens as the slab solver's cores do: hardly under a front at 100 °C, by a power of 1.6 and more under a wet face", () => {
    for (const [airC, coefficientWm2K, mm] of [
      [180, 30, 14],
      [200, 45, 8],
      [205, 60, 16],
    ]) {
      const basis = clockBasis({ food, startC: -18, airC, limitC: 74 });
      const clock = (coreBend: number) => (coreC: number) =>
        timeOf((minutes) => coreAtC(basis, { ...bareSlab, coefficientWm2K, coreBend }, mm, minutes), coreC);
      const powers = (law: "receding-front" | "wet-front"): number[] => {
        const run = simulateSlab({
          food,
          thicknessMm: mm,
          startC: -18,
          airC,
          coefficientWm2K,
          endMin: 90,
          stopCoreC: 75,
          drying: { law, crustWaterKgM3: 500, convectionShare: 0.6, vapourPa: 4000 },
        });
        const when = (value: number): number => timeWhen(run, { column: "coreC", value });
        return [35, 48, 64].map((coreC) => Math.log(when(coreC) / when(74)) / Math.log(clock(1)(coreC) / clock(1)(74)));
      };
      for (const power of powers("receding-front")) expect(Math.abs(power - 1)).toBeLessThan(0.1);
      for (const power of powers("wet-front")) expect(power).toBeGreaterThan(1.6);
    }
  });

  it("has no step where its slow climb sets in", () => {
    const basis = basisTo(74);
    for (const plateauC of [80, 100]) {
      const piece = { ...bite, plateauC };
      let last = coreAtC(basis, piece, 10, 0);
      for (let minute = 0.005; minute < 20; minute += 0.005) {
        const now = coreAtC(basis, piece, 10, minute);
        expect(now - last).toBeLessThan(0.35);
        last = now;
      }
    }
  });
});

describe("coreReadingC", () => {
  const basis = basisTo(74);
  const reading = (change: Partial<typeof bite>, minutes: number, rested: boolean) =>
    coreReadingC(basis, { ...bite, ...change }, 12, minutes, rested);

  it("is the core for a fine probe at taking out, and warmer by what the probe misses it, less so near the plateau", () => {
    for (const minutes of [3, 6, 9]) expect(reading({}, minutes, false)).toBe(coreAtC(basis, bite, 12, minutes));
    const warm = (minutes: number) => reading({ probeWarmK: 2 }, minutes, false) - coreAtC(basis, bite, 12, minutes);
    expect(warm(3)).toBeCloseTo(2, 9);
    // 10 K below the plateau half of it is left, 20 K below all of it
    const when = (coreC: number): number => timeOf((minutes) => coreAtC(basis, bite, 12, minutes), coreC);
    expect(warm(when(90))).toBeCloseTo(1, 6);
    expect(warm(when(80))).toBeCloseTo(2, 6);
    expect(warm(when(79))).toBeCloseTo(2, 6);
    expect(warm(1e3)).toBeCloseTo(0, 6);
  });

  it("rises while it rests by half the gain times rate times the soak-up lag, the less the nearer its plateau, at most 12 K", () => {
    const minutes = 7;
    const out = reading({}, minutes, false);
    expect(reading({ restGain: 0 }, minutes, true)).toBe(out);
    const gained = reading({}, minutes, true) - out;
    const step = 0.05;
    const perMin = (coreAtC(basis, bite, 12, minutes + step) - coreAtC(basis, bite, 12, minutes)) / step;
    // ℓ²/3α in minutes
    const soakMin = 0.006 ** 2 / (3 * (0.49 / (1050 * 3500))) / 60;
    expect(gained / (0.5 * perMin * soakMin * ((100 - out) / 40))).toBeCloseTo(1, 1);
    expect(reading({ restGain: 0.5 }, minutes, true) - out).toBeCloseTo(gained / 2, 9);
    // a probe beside the coldest point reads warmer after the rest too
    expect(reading({ probeWarmK: 2 }, minutes, true) - reading({}, minutes, true)).toBeCloseTo(
      reading({ probeWarmK: 2 }, minutes, false) - out,
      9,
    );
    expect(reading({ probeWarmK: 2 }, minutes, false)).toBeGreaterThan(out + 0.5);
    expect(reading({ restGain: 80 }, minutes, true) - out).toBeCloseTo(12, 9);
  });
});
