import type { ThermalModel } from "../../food/thermal/thermal-properties";
import { largestOf, smallestOf } from "../../statistics/extremes";
import { gradedCells, placeNodes, slowestPoint, toCentre } from "./box-grid";
import { type BoxRecord, makeRecorder } from "./box-record";
import { airAt, breakTimes, type FaceAir, sameFaces } from "./face-air";
import { type DiffusiveSystem, stabilisedSteps, stepWorkspace } from "./stabilised-steps";
import { type DryingConstants, type FaceFlow, surfaceBalance } from "./surface-balance";

/** A box of food in SI. Lengths are full, except where a symmetry halves them inside. */
export interface BoxProblem {
  readonly food: ThermalModel;
  readonly startC: number;
  readonly thicknessM: number;
  /** undefined for a slab: no edges */
  readonly sidesM?: readonly [number, number];
  readonly above: FaceAir;
  readonly below: FaceAir;
  readonly sides?: FaceAir;
  /** times at which above and below change places [s] */
  readonly flipsS: readonly number[];
  readonly drying: DryingConstants;
  /** water of dried food by volume [kg/m³] */
  readonly crustWaterKgM3: number;
  /** cells over half the thickness, and over half of each side */
  readonly cells: number;
  /** error of one step, as a share of the heat between start and air [-] */
  readonly tolerance: number;
  readonly fixedStepS?: number;
  readonly endS: number;
  /** stops when the core has passed this [°C] */
  readonly stopCoreC?: number;
}

/** What a run came to. */
export interface BoxOutcome {
  readonly record: BoxRecord;
  readonly steps: number;
  readonly rejected: number;
  readonly evaluations: number;
  /** |heat in − heat stored − heat carried off by water|, as a share of the heat in [-] */
  readonly energyBalanceError: number;
  /** heat from the air over the run [J], for the whole box or for 1 m² of slab */
  readonly heatInJ: number;
  readonly coreReached: boolean;
  readonly coreUsedUp: boolean;
}

/** Least share of the thickness that must stay wet for the run to go on. */
const LEAST_WET = 0.03;

/** Solves the box; see `simulateSlab` and `simulatePiece` for the model. */
export function solveBox(problem: BoxProblem): BoxOutcome {
  const { food, drying, cells } = problem;
  const halfThickness = sameFaces(problem.above, problem.below);
  const isPiece = problem.sidesM !== undefined;
  const nx = isPiece ? cells : 1;
  const ny = nx;
  const nz = halfThickness ? cells : 2 * cells;
  const lengthX = problem.sidesM ? problem.sidesM[0] / 2 : 1;
  const lengthY = problem.sidesM ? problem.sidesM[1] / 2 : 1;
  const lengthZ = halfThickness ? problem.thicknessM / 2 : problem.thicknessM;
  const wx = isPiece ? gradedCells(nx, Math.min(1, problem.thicknessM / 2 / lengthX)) : Float64Array.of(1);
  const wy = isPiece ? gradedCells(ny, Math.min(1, problem.thicknessM / 2 / lengthY)) : Float64Array.of(1);
  const wz = new Float64Array(nz).fill(1 / nz);
  const total = nx * ny * nz;
  const [sBelow, sAbove, sX, sY, heatIn, carried, lost] = [0, 1, 2, 3, 4, 5, 6].map((extra) => total + extra);
  const size = total + 7;

  const rho = food.densityKgM3;
  const cu = food.thawedSpecificHeatKJkgK * 1000;
  const cf = food.frozenSpecificHeatKJkgK * 1000;
  const latent = food.latentKJkg * 1000;
  const tf = food.freezingPointC;
  const ku = food.thawedConductivityWmK;
  const kf = food.frozenConductivityWmK;
  const bBase = cf * tf + latent;
  const fourCfATf = 4 * cf * latent * tf;
  const halfOverCf = 1 / (2 * cf);
  const perCu = 1 / cu;
  const perKu = 1 / ku;
  const kSlope = (ku - kf) * tf;
  const enthalpy = (c: number): number => (c >= tf ? cu * (c - tf) : cf * (c - tf) - latent * (1 - tf / c));

  const temperature = new Float64Array(total);
  /** 1/k [m·K/W] */
  const resistivity = new Float64Array(total);
  /** 1 / (share of the volume) */
  const perShare = new Float64Array(total);
  for (let k = 0, cell = 0; k < nz; k++)
    for (let j = 0; j < ny; j++) for (let i = 0; i < nx; i++, cell++) perShare[cell] = 1 / (wx[i] * wy[j] * wz[k]);
  const specific = new Float64Array(total);
  const recedes = drying.law === "receding-front" || drying.law === "wet-front";
  const flow: FaceFlow = { heatIn: 0, heatToCore: 0, frontC: 0, vapour: 0, guessC: 0 };

  let above = problem.above;
  let below = problem.below;
  const sides = problem.sides;
  let segment = 0;
  let dimX = lengthX;
  let dimY = lengthY;
  let dimZ = lengthZ;
  let surfaceC = problem.startC;
  let belowC = problem.startC;
  let airAboveC = 0;
  let airBelowC = 0;
  let airSidesC = 0;
  const frontAbove = new Float64Array(nx * ny);
  const frontBelow = new Float64Array(nx * ny);
  const frontX = new Float64Array(ny * nz);
  const frontY = new Float64Array(nx * nz);
  for (const front of [frontAbove, frontBelow, frontX, frontY]) front.fill(problem.startC);

  const read = (y: Float64Array): void => {
    dimX = lengthX - y[sX];
    dimY = lengthY - y[sY];
    dimZ = lengthZ - y[sAbove] - y[sBelow];
    const perVolume = 1 / (dimX * dimY * dimZ);
    for (let cell = 0; cell < total; cell++) {
      const h = y[cell] * perVolume * perShare[cell];
      specific[cell] = h;
      if (h >= 0) {
        temperature[cell] = tf + h * perCu;
        resistivity[cell] = perKu;
      } else {
        const b = bBase + h;
        const c = (b - Math.sqrt(b * b - fourCfATf)) * halfOverCf;
        temperature[cell] = c;
        resistivity[cell] = c / (kf * c + kSlope);
      }
    }
  };

  const rates = (t: number, y: Float64Array, f: Float64Array): void => {
    read(y);
    f.fill(0);
    airAboveC = airAt(above, t, segment);
    airBelowC = airAt(below, t, segment);
    if (sides) airSidesC = airAt(sides, t, segment);
    const layer = nx * ny;
    // along the thickness
    const areaPerRho = (dimX * dimY) / rho;
    for (let k = 0; k + 1 < nz; k++) {
      const near = 0.5 * wz[k] * dimZ;
      const far = 0.5 * wz[k + 1] * dimZ;
      for (let j = 0; j < ny; j++) {
        const row = nx * j + layer * k;
        const strip = areaPerRho * wy[j];
        for (let i = 0; i < nx; i++) {
          const one = row + i;
          const other = one + layer;
          const q =
            (strip * wx[i] * (temperature[one] - temperature[other])) /
            (near * resistivity[one] + far * resistivity[other]);
          f[one] -= q;
          f[other] += q;
        }
      }
    }
    if (isPiece) {
      const acrossX = (2 * dimY * dimZ) / (rho * dimX);
      const acrossY = (2 * dimX * dimZ) / (rho * dimY);
      for (let k = 0; k < nz; k++)
        for (let j = 0; j < ny; j++) {
          const row = nx * j + layer * k;
          const strip = acrossX * wy[j] * wz[k];
          for (let i = 0; i + 1 < nx; i++) {
            const one = row + i;
            const q =
              (strip * (temperature[one] - temperature[one + 1])) /
              (wx[i] * resistivity[one] + wx[i + 1] * resistivity[one + 1]);
            f[one] -= q;
            f[one + 1] += q;
          }
          if (j + 1 === ny) continue;
          const slice = acrossY * wz[k];
          for (let i = 0; i < nx; i++) {
            const one = row + i;
            const other = one + nx;
            const q =
              (slice * wx[i] * (temperature[one] - temperature[other])) /
              (wy[j] * resistivity[one] + wy[j + 1] * resistivity[other]);
            f[one] -= q;
            f[other] += q;
          }
        }
    }
    let waterAbove = 0;
    let waterBelow = 0;
    let waterX = 0;
    let waterY = 0;
    const top = layer * (nz - 1);
    const areaZ = dimX * dimY;
    const topGap = 0.5 * wz[nz - 1] * dimZ;
    const bottomGap = 0.5 * wz[0] * dimZ;
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; i++) {
        const at = i + nx * j;
        const area = wx[i] * wy[j] * areaZ;
        flow.guessC = frontAbove[at];
        waterAbove += cross(f, top + at, area, airAboveC, above.coefficientWm2K, recedes ? y[sAbove] : 0, topGap);
        frontAbove[at] = flow.frontC;
        if (at === 0)
          surfaceC = above.coefficientWm2K > 0 ? airAboveC - flow.heatIn / above.coefficientWm2K : flow.frontC;
        if (halfThickness) continue;
        flow.guessC = frontBelow[at];
        waterBelow += cross(f, at, area, airBelowC, below.coefficientWm2K, recedes ? y[sBelow] : 0, bottomGap);
        frontBelow[at] = flow.frontC;
        if (at === 0) belowC = flow.frontC;
      }
    if (sides) {
      const gapX = 0.5 * wx[nx - 1] * dimX;
      const gapY = 0.5 * wy[ny - 1] * dimY;
      for (let k = 0; k < nz; k++) {
        for (let j = 0; j < ny; j++) {
          const cell = nx - 1 + nx * j + layer * k;
          const area = wy[j] * wz[k] * dimY * dimZ;
          flow.guessC = frontX[j + ny * k];
          waterX += cross(f, cell, area, airSidesC, sides.coefficientWm2K, recedes ? y[sX] : 0, gapX);
          frontX[j + ny * k] = flow.frontC;
        }
        for (let i = 0; i < nx; i++) {
          const cell = i + nx * (ny - 1) + layer * k;
          const area = wx[i] * wz[k] * dimX * dimZ;
          flow.guessC = frontY[i + nx * k];
          waterY += cross(f, cell, area, airSidesC, sides.coefficientWm2K, recedes ? y[sY] : 0, gapY);
          frontY[i + nx * k] = flow.frontC;
        }
      }
    }
    if (!recedes) return;
    f[sAbove] = waterAbove / areaZ / problem.crustWaterKgM3;
    f[sBelow] = waterBelow / areaZ / problem.crustWaterKgM3;
    if (sides) {
      f[sX] = waterX / (dimY * dimZ) / problem.crustWaterKgM3;
      f[sY] = waterY / (dimX * dimZ) / problem.crustWaterKgM3;
    }
    moveGrid(f);
  };

  /** Lets heat and vapour cross one face of one cell; returns the vapour [kg/s]. */
  const cross = (
    f: Float64Array,
    cell: number,
    area: number,
    airC: number,
    coefficient: number,
    crustM: number,
    gap: number,
  ): number => {
    surfaceBalance(flow, drying, airC, coefficient, crustM, 1 / (gap * resistivity[cell]), temperature[cell]);
    const vapour = area * flow.vapour;
    f[cell] += (area * flow.heatToCore) / rho;
    f[heatIn] += area * flow.heatIn;
    f[lost] += vapour;
    f[carried] += area * (flow.heatIn - flow.heatToCore);
    return vapour;
  };

  /** Food that the moving grid lines sweep from one cell into its neighbour, and out at the fronts. */
  const moveGrid = (f: Float64Array): void => {
    const layer = nx * ny;
    if (f[sAbove] !== 0 || f[sBelow] !== 0) {
      let place = 0;
      for (let k = 0; k <= nz; k++) {
        const speed = f[sBelow] * (1 - place) - f[sAbove] * place;
        for (let at = 0; at < layer; at++) {
          const j = nx === 1 ? 0 : Math.floor(at / nx);
          const area = wx[at - nx * j] * wy[j] * dimX * dimY * speed;
          if (k === 0) {
            if (halfThickness) continue;
            const h = enthalpy(frontBelow[at]);
            f[at] -= area * h;
            f[carried] += rho * area * h;
          } else if (k === nz) {
            const h = enthalpy(frontAbove[at]);
            f[at + layer * (nz - 1)] += area * h;
            f[carried] -= rho * area * h;
          } else {
            const other = at + layer * k;
            const swept = area * 0.5 * (specific[other - layer] + specific[other]);
            f[other - layer] += swept;
            f[other] -= swept;
          }
        }
        if (k < nz) place += wz[k];
      }
    }
    if (!isPiece) return;
    for (let k = 0; k < nz; k++)
      for (let j = 0; j < ny; j++) {
        const row = nx * j + layer * k;
        const swept = -wy[j] * wz[k] * dimY * dimZ * f[sX];
        let place = 0;
        for (let i = 0; i + 1 < nx; i++) {
          place += wx[i];
          const moved = swept * place * 0.5 * (specific[row + i] + specific[row + i + 1]);
          f[row + i] += moved;
          f[row + i + 1] -= moved;
        }
        const h = enthalpy(frontX[j + ny * k]);
        f[row + nx - 1] += swept * h;
        f[carried] -= rho * swept * h;
      }
    for (let k = 0; k < nz; k++)
      for (let i = 0; i < nx; i++) {
        const column = i + layer * k;
        const swept = -wx[i] * wz[k] * dimX * dimZ * f[sY];
        let place = 0;
        for (let j = 0; j + 1 < ny; j++) {
          place += wy[j];
          const one = column + nx * j;
          const moved = swept * place * 0.5 * (specific[one] + specific[one + nx]);
          f[one] += moved;
          f[one + nx] -= moved;
        }
        const h = enthalpy(frontY[i + nx * k]);
        f[column + nx * (ny - 1)] += swept * h;
        f[carried] -= rho * swept * h;
      }
  };

  /** Gershgorin's bound at the state that `rates` read last. */
  const fastestDecay = (): number => {
    const layer = nx * ny;
    let most = 0;
    for (let k = 0; k < nz; k++)
      for (let j = 0; j < ny; j++)
        for (let i = 0; i < nx; i++) {
          const cell = i + nx * j + layer * k;
          const c = temperature[cell];
          const heat = c >= tf ? cu : Math.min(cu, cf - (latent * tf) / (c * c));
          const bz = wz[k] * dimZ;
          let sum = 2 / (bz * bz);
          // a face half a cell away counts double on its side
          if (k === nz - 1 || (k === 0 && !halfThickness)) sum *= 1.5;
          if (isPiece) {
            const bx = wx[i] * dimX;
            const by = wy[j] * dimY;
            sum += (i === nx - 1 ? 3 : 2) / (bx * bx);
            sum += (j === ny - 1 ? 3 : 2) / (by * by);
          }
          most = Math.max(most, (2 * sum) / (resistivity[cell] * rho * heat));
        }
    return 1.1 * most;
  };

  const heating = !(Math.max(largestOf(problem.above.airC), largestOf(problem.below.airC)) < problem.startC);
  const column = new Float64Array(nz);
  const beside = [0, 0, 0];
  const columnAt = (k: number): number => {
    const layer = nx * ny;
    if (!isPiece) return temperature[k];
    for (let j = 0; j < 3; j++) {
      const row = layer * k + nx * j;
      beside[j] = toCentre(temperature[row], temperature[row + 1], temperature[row + 2], wx);
    }
    return toCentre(beside[0], beside[1], beside[2], wy);
  };
  let meanC = 0;
  let coreC = 0;
  const summarise = (): void => {
    for (let k = 0; k < nz; k++) column[k] = columnAt(k);
    if (halfThickness) coreC = toCentre(column[0], column[1], column[2], wz);
    else {
      // an insulated face mirrors the column
      const bottomC = below.coefficientWm2K > 0 ? belowC : toCentre(column[0], column[1], column[2], wz);
      const topC =
        above.coefficientWm2K > 0 ? frontAbove[0] : toCentre(column[nz - 1], column[nz - 2], column[nz - 3], wz);
      coreC = slowestPoint(column, bottomC, topC, heating);
    }
    let sum = 0;
    let cell = 0;
    for (let k = 0; k < nz; k++)
      for (let j = 0; j < ny; j++) for (let i = 0; i < nx; i++) sum += wx[i] * wy[j] * wz[k] * temperature[cell++];
    meanC = sum;
  };
  const iceNow = (): number => {
    if (latent === 0) return 0;
    let sum = 0;
    let cell = 0;
    for (let k = 0; k < nz; k++)
      for (let j = 0; j < ny; j++)
        for (let i = 0; i < nx; i++) {
          const c = temperature[cell++];
          if (c < tf) sum += wx[i] * wy[j] * wz[k] * (1 - tf / c);
        }
    return (sum * latent * dimX * dimY * dimZ) / (333600 * lengthX * lengthY * lengthZ);
  };

  const y = new Float64Array(size);
  const startH = enthalpy(problem.startC);
  const errorScale = new Float64Array(size);
  let hottest = problem.startC;
  let coldest = problem.startC;
  for (const face of [problem.above, problem.below, problem.sides])
    if (face && face.coefficientWm2K > 0) {
      hottest = Math.max(hottest, largestOf(face.airC));
      coldest = Math.min(coldest, smallestOf(face.airC));
    }
  const span = enthalpy(Math.min(hottest, drying.law === "none" ? hottest : 100)) - enthalpy(coldest);
  {
    let cell = 0;
    for (let k = 0; k < nz; k++)
      for (let j = 0; j < ny; j++)
        for (let i = 0; i < nx; i++, cell++) {
          const volume = wx[i] * wy[j] * wz[k] * lengthX * lengthY * lengthZ;
          y[cell] = startH * volume;
          errorScale[cell] = Math.max(problem.tolerance * span, 1e-9) * volume;
        }
  }
  if (recedes) {
    errorScale[sAbove] = problem.tolerance * problem.thicknessM;
    if (!halfThickness) errorScale[sBelow] = problem.tolerance * problem.thicknessM;
  }

  const recorder = makeRecorder(halfThickness ? 2 * nz + 3 : nz + 2);
  placeNodes(recorder.profilePlace, wz, halfThickness);
  const ahead = new Float64Array(size);
  /** Outer surface and fronts of the middle column for the state that `read` saw last. */
  const readFaces = (state: Float64Array): void => {
    const top = nx * ny * (nz - 1);
    const gap = 0.5 * wz[0] * dimZ;
    flow.guessC = frontAbove[0];
    const crustAbove = recedes ? state[sAbove] : 0;
    const coefficient = above.coefficientWm2K;
    surfaceBalance(flow, drying, airAboveC, coefficient, crustAbove, 1 / (gap * resistivity[top]), temperature[top]);
    surfaceC = coefficient > 0 ? airAboveC - flow.heatIn / coefficient : flow.frontC;
    frontAbove[0] = flow.frontC;
    if (halfThickness) return;
    flow.guessC = frontBelow[0];
    const crustBelow = recedes ? state[sBelow] : 0;
    const under = below.coefficientWm2K;
    surfaceBalance(flow, drying, airBelowC, under, crustBelow, 1 / (gap * resistivity[0]), temperature[0]);
    belowC = flow.frontC;
    frontBelow[0] = flow.frontC;
  };
  /** Writes one row; `rates` must have seen `y` last. */
  const record = (t: number, rates0: Float64Array): void => {
    summarise();
    const row = recorder.next();
    recorder.timeS[row] = t;
    recorder.coreC[row] = coreC;
    recorder.surfaceC[row] = surfaceC;
    recorder.meanC[row] = meanC;
    recorder.waterLostFraction[row] = y[lost] / (rho * lengthX * lengthY * lengthZ);
    recorder.crustAboveM[row] = y[sAbove];
    recorder.crustBelowM[row] = halfThickness ? y[sAbove] : y[sBelow];
    recorder.iceFraction[row] = iceNow();
    const start = row * recorder.nodes;
    if (halfThickness) {
      recorder.profileC[start + nz + 1] = coreC;
      recorder.profileC[start] = frontAbove[0];
      recorder.profileC[start + 2 * nz + 2] = frontAbove[0];
      for (let k = 0; k < nz; k++) {
        recorder.profileC[start + nz - k] = column[k];
        recorder.profileC[start + nz + 2 + k] = column[k];
      }
    } else {
      recorder.profileC[start] = belowC;
      for (let k = 0; k < nz; k++) recorder.profileC[start + 1 + k] = column[k];
      recorder.profileC[start + nz + 1] = frontAbove[0];
    }
    const [core, surface, mean] = [coreC, surfaceC, meanC];
    const nudge = 1e-3;
    for (let i = 0; i < size; i++) ahead[i] = y[i] + nudge * rates0[i];
    read(ahead);
    readFaces(ahead);
    summarise();
    recorder.coreRate[row] = (coreC - core) / nudge;
    recorder.surfaceRate[row] = (surfaceC - surface) / nudge;
    recorder.meanRate[row] = (meanC - mean) / nudge;
  };

  const system: DiffusiveSystem = { y, rates, fastestDecay, errorScale };
  const work = stepWorkspace(size);
  let coreReached = false;
  let coreUsedUp = false;
  const allWater = food.waterFraction;
  const accepted = (t: number, rates0: Float64Array): boolean => {
    record(t, rates0);
    const { stopCoreC } = problem;
    const last = recorder.coreC[recorder.rows() - 1];
    coreReached = stopCoreC !== undefined && (heating ? last >= stopCoreC : last <= stopCoreC);
    const waterKg = allWater * rho * lengthX * lengthY * lengthZ;
    if (y[lost] > waterKg) recorder.cutLastRow("waterLostFraction", allWater);
    const wetShare = Math.min((lengthZ - y[sAbove] - y[sBelow]) / lengthZ, 1 - y[sX] / lengthX, 1 - y[sY] / lengthY);
    coreUsedUp = wetShare < LEAST_WET || (!recedes && drying.law !== "none" && y[lost] >= waterKg);
    return coreReached || coreUsedUp;
  };

  const faces = [problem.above, problem.below, ...(problem.sides ? [problem.sides] : [])];
  const breaks = breakTimes(faces, problem.flipsS, problem.endS);
  let step = problem.fixedStepS ?? Math.min(0.5, problem.endS / 100);
  let [steps, rejected, evaluations] = [0, 0, 0];
  for (let stretch = 0; stretch + 1 < breaks.length && !coreReached && !coreUsedUp; stretch++) {
    const fromS = breaks[stretch];
    const toS = breaks[stretch + 1];
    segment = (fromS + toS) / 2;
    const flipped = problem.flipsS.filter((flip) => flip <= fromS).length % 2 === 1;
    above = flipped ? problem.below : problem.above;
    below = flipped ? problem.above : problem.below;
    if (stretch === 0) {
      rates(0, y, work.rate0);
      record(0, work.rate0);
    }
    const outcome = stabilisedSteps(system, work, {
      fromS,
      toS,
      firstStepS: Math.min(step, 0.5 + 0.1 * step),
      fixedStepS: problem.fixedStepS,
      accepted,
    });
    step = outcome.nextStepS;
    steps += outcome.steps;
    rejected += outcome.rejected;
    evaluations += outcome.evaluations;
  }
  let stored = 0;
  for (let cell = 0; cell < total; cell++) stored += y[cell];
  stored -= startH * lengthX * lengthY * lengthZ;
  // for a run in which hardly any heat flows: what 0.001 K of the food holds
  const leastHeat = 1e-3 * rho * cu * lengthX * lengthY * lengthZ;
  const copies = (isPiece ? 4 : 1) * (halfThickness ? 2 : 1);
  return {
    record: recorder.finish(),
    steps,
    rejected,
    evaluations,
    energyBalanceError: Math.abs(y[heatIn] - y[carried] - rho * stored) / Math.max(Math.abs(y[heatIn]), leastHeat),
    heatInJ: y[heatIn] * copies,
    coreReached,
    coreUsedUp,
  };
}
