import { describe, expect, it } from "vitest";
import { PLACE_CORE_SPREAD, SLAB_SPREAD } from "../../../../kernel-lib/library/src/crisp/calibration/crisp-noise";
import { coreElasticity } from "../../../../kernel-lib/library/src/crisp/clocks/core-clock";
import { modePiece } from "../../../../kernel-lib/library/src/crisp/window/draw-pieces";
import { loadScatter } from "../../../../kernel-lib/library/src/crisp/window/load-safety";
import type { Misfit } from "../../../../kernel-lib/library/src/crisp/window/misfit-at";
import {
  drawnPieces,
  pieceStock,
  piecesAt,
  scatterAt,
  typicalPiece,
} from "../../../../kernel-lib/library/src/crisp/window/success-over-time";
import { basisOf, momentsOf, settle } from "../../../../kernel-lib/library/src/crisp/window/window-setting";
import { calibrationAt, MIDDLE } from "../sample-food";

const none: Misfit = { core: 0, crust: 0, brown: 0, distance: 0, outside: [] };
const setting = settle({ thicknessMm: 9, applianceId: "basket", setpointC: 200, sidesMm: [45, 45] }, "test");
const sure = calibrationAt(MIDDLE, 0);
const still = {
  ...sure,
  unevenness: 0,
  noise: { ...sure.noise, run: 0, session: 0, crispTime: 0 },
};
const basis = basisOf(sure, setting);
const own = modePiece(sure, setting);
const moments = momentsOf(basis, own, 9, setting);
const spreadOf = (values: Float64Array): number => {
  const logs = Array.from(values, Math.log);
  const mean = logs.reduce((sum, value) => sum + value, 0) / logs.length;
  return Math.sqrt(logs.reduce((sum, value) => sum + (value - mean) ** 2, 0) / logs.length);
};
const at = (calibration: typeof still, misfit: Misfit = none) =>
  piecesAt(pieceStock(calibration, { count: 4000, seed: 2 }), basis, setting, misfit);

describe("piecesAt", () => {
  it("is the same piece over and over where nothing scatters, but for its slab and the core's own place", () => {
    const times = at(still);
    for (const value of times.typicalCoreMin) expect(value).toBeCloseTo(moments.coreMin, 9);
    const slab = momentsOf(basis, own, 9 * (1 + SLAB_SPREAD), setting);
    const bySlab = (of: "coreMin" | "crispMin"): number => Math.log(slab[of] / moments[of]);
    // 4,000 draws tell a spread within 5 %
    expect(Math.abs(spreadOf(times.crispMin) / bySlab("crispMin") - 1)).toBeLessThan(0.05);
    expect(Math.abs(spreadOf(times.coreMin) / Math.hypot(PLACE_CORE_SPREAD, bySlab("coreMin")) - 1)).toBeLessThan(0.05);
    times.opensMin.forEach((opens, piece) => {
      expect(opens).toBe(Math.max(times.coreMin[piece], times.crispMin[piece]));
    });
  });

  it("spreads crisp times by their scatter, and all of them by runs, sessions and the slab's unevenness", () => {
    const looks = at({ ...still, noise: { ...still.noise, crispTime: 0.08 } });
    const bySlab = Math.log(momentsOf(basis, own, 9 * (1 + SLAB_SPREAD), setting).crispMin / moments.crispMin);
    expect(Math.abs(spreadOf(looks.crispMin) / Math.hypot(0.08, bySlab) - 1)).toBeLessThan(0.05);
    const runs = at({ ...still, noise: { ...still.noise, run: 0.06, session: 0.08 } });
    const hotter = momentsOf(basis, { ...own, coefficientWm2K: own.coefficientWm2K * Math.exp(0.1) }, 9, setting);
    const perRun = Math.log(moments.crispMin / hotter.crispMin);
    expect(Math.abs(spreadOf(runs.crispMin) / Math.hypot(perRun, bySlab) - 1)).toBeLessThan(0.06);
    // the typical piece of a draw is of no run
    expect(spreadOf(runs.typicalCoreMin)).toBeLessThan(1e-9);
    const uneven = at({ ...still, unevenness: 0.05 });
    const thicker = momentsOf(basis, own, 9 * (1 + Math.hypot(0.05, SLAB_SPREAD)), setting);
    expect(Math.abs(spreadOf(uneven.crispMin) / Math.log(thicker.crispMin / moments.crispMin) - 1)).toBeLessThan(0.1);
    expect(spreadOf(uneven.typicalCoreMin)).toBeLessThan(1e-9);
  });

  it("counts what each clock misses, in the typical piece too", () => {
    const core = at(still, { ...none, core: 0.1 });
    expect(Math.abs(spreadOf(core.typicalCoreMin) / 0.1 - 1)).toBeLessThan(0.05);
    expect([...core.crispMin]).toEqual([...at(still).crispMin]);
    const crust = at(still, { ...none, crust: 0.1 });
    expect(Math.abs(spreadOf(crust.crispMin) / Math.hypot(0.1, spreadOf(core.crispMin)) - 1)).toBeLessThan(0.05);
    expect(spreadOf(crust.typicalCoreMin)).toBeLessThan(1e-9);
    const stock = pieceStock(still, { count: 100, seed: 2 });
    const typical = typicalPiece(stock, own, { ...none, brown: 0.2 }, 7);
    expect(typical).toEqual({ ...own, browningPerS: own.browningPerS * Math.exp(0.2 * stock.missed.brown[7]) });
  });

  it("draws core, crust, browning, runs and pieces apart from each other", () => {
    const { missed, run, thickness, core, crisp } = pieceStock(still, { count: 4000, seed: 2 });
    const all = [missed.core, missed.crust, missed.brown, run, thickness, core, crisp];
    for (const [i, one] of all.entries())
      for (const other of all.slice(i + 1)) {
        const correlation = one.reduce((sum, value, k) => sum + value * other[k], 0) / one.length;
        expect(Math.abs(correlation)).toBeLessThan(0.07);
      }
  });

  it("shares a browning table among activation energies within half a kJ/mol, and no further", () => {
    const vague = calibrationAt(MIDDLE, 0.3);
    const drawn = drawnPieces(pieceStock(vague, { count: 300, seed: 4 }), setting, basis);
    const tables = new Map<number, unknown>();
    for (const { piece, table } of drawn) {
      const key = Math.round(2 * piece.browningKJmol);
      if (tables.has(key)) expect(table).toBe(tables.get(key));
      tables.set(key, table);
    }
    expect(new Set(tables.values()).size).toBe(tables.size);
    expect(tables.size).toBeGreaterThan(5);
    for (const { piece, table } of drawn.slice(0, 40)) {
      const exact = momentsOf(basis, piece, 9, setting).brownMin;
      expect(momentsOf(basis, piece, 9, setting, table).brownMin / exact).toBeCloseTo(1, 2);
    }
  });
});

describe("scatterAt", () => {
  it("is that of the load, with the run through the surface's share", () => {
    const { noise, unevenness } = sure;
    const elasticity = coreElasticity(basis, own, 9);
    const many = { ...setting, piecesPerLoad: 30 };
    expect(scatterAt(sure, basis, many)).toEqual(loadScatter({ noise, unevenness, pieces: 30, elasticity, trials: 0 }));
  });
});
