import { enthalpyAt, FUSION_JKG, ICE_JKGK, type Material, temperatureAt, WATER_JKGK } from "./moist-food";
import { drive, driveSlope, evaporationJkg, filmConductance, saturationPa, saturationSlope } from "./vapour";

/**
 * A coated box of food in hot air, in three dimensions: a quarter of its length and width, all of its thickness.
 *
 * Heat by enthalpy on a tensor grid, one direction after the other (implicit, fluxes counted once, so that heat and water
 * are conserved to rounding). Water evaporates in every cell near a face, through the dry material before it and the air
 * film (Lewis, Stefan flow): a wet surface sits at its wet bulb, dries, and the evaporation moves inwards over a zone of
 * a few cells, never warmer than about boiling. Liquid water creeps after; warm protein lets water drip.
 * SI inside: m, s, J, kg, °C.
 */
export interface PieceSpec {
  /** of the bare piece */
  readonly lengthM: number;
  readonly widthM: number;
  readonly thicknessM: number;
  readonly mix: Material;
  readonly coating: { readonly thicknessM: number; readonly material: Material } | null;
  readonly startC: number;
  /** share of the mix's water that heat drives out as liquid, half of it at `middleC` */
  readonly drip: { readonly fraction: number; readonly middleC: number; readonly widthK: number };
  readonly activationJmol: number;
}

// a module runner looks every import up again at each call: the hot ones are taken once
const [temperatureOf, driveOf, driveSlopeOf, latentOf, saturationOf, saturationSlopeOf] = [
  temperatureAt,
  drive,
  driveSlope,
  evaporationJkg,
  saturationPa,
  saturationSlope,
] as const;

/** What a piece stands in. Coefficients include radiation. */
export interface Around {
  readonly topWm2K: number;
  readonly bottomWm2K: number;
  readonly sideWm2K: number;
  /** share of the coefficients that is radiation: it carries heat and no vapour */
  readonly radiantShare: number;
  readonly airC: (timeS: number) => number;
  readonly vapourPa: (timeS: number) => number;
  /** when top and bottom change places */
  readonly turnS: number | null;
}

/** What can be read of a piece at one moment. */
export interface PieceReading {
  readonly timeS: number;
  /** coldest point */
  readonly coreC: number;
  /** dry depth, averaged over each kind of face (mm): top, bottom as it lies now, sides */
  readonly dryMm: readonly [number, number, number];
  /** ∫ exp(−E/R·(1/T − 1/423 K)) dt [s], mean over all faces and mean of the darkest tenth */
  readonly brownMeanS: number;
  readonly brownWorstS: number;
  /** middle of the upper face (°C) */
  readonly surfaceC: number;
  /** mass lost over the mass at the start [-] */
  readonly loss: number;
}

/** Heat and water counted two ways, each over what went in. */
export interface Balance {
  readonly heatError: number;
  readonly waterError: number;
}

/** A piece that is being heated. */
export interface HeatedPiece {
  readonly advance: (toS: number) => void;
  readonly read: () => PieceReading;
  /** other surroundings from now on */
  readonly moveTo: (around: Around) => void;
  readonly balance: () => Balance;
  readonly massKg: number;
  /** temperature (°C) on the middle axis, a way (m) above the coldest point */
  readonly aboveCoreC: (offsetM: number) => number;
  readonly cells: number;
}

export interface GridChoice {
  /** 2 halves every cell */
  readonly refine?: number;
  readonly stepS?: number;
  /** as many cells as a piece of this thickness and coating has: pieces that differ a little share one grid */
  readonly likeThicknessM?: number;
  readonly likeCoatM?: number;
}

/** dry depth is counted no deeper than this */
const DEEPEST_M = 0.0035;
/** below this share of its first water a cell starts to count as dry */
const DRY_BELOW = 0.85;
/** over this depth of wet material evaporation fades: the front is that blurred */
const BLUR_M = 0.35e-3;
/** deeper than where so little is left of it nothing evaporates */
const HIDDEN = 0.02;
const SORPTION = 0.06;
const SKIN_M = 4e-6;
const GAS = 8.314;
const [WATER, ICE, FUSION] = [WATER_JKGK, ICE_JKGK, FUSION_JKG] as const;
const BROWN_REFERENCE_K = 423.15;
const DRIP_S = 30;

export function heatPiece(spec: PieceSpec, first: Around, choice: GridChoice = {}): HeatedPiece {
  const { refine = 1, stepS = 6, likeThicknessM = spec.thicknessM, likeCoatM = spec.coating?.thicknessM ?? 0 } = choice;
  const coat = spec.coating?.thicknessM ?? 0;
  const coatCells = (sizeM: number): number =>
    spec.coating === null ? 0 : Math.max(1, Math.round((refine * likeCoatM) / sizeM));
  const coatAcross = coatCells(0.5e-3);
  const coatAlong = coatCells(1.3e-3);
  const equal = (cells: number): number[] => Array.from({ length: cells }, () => coat / cells);
  const side = (lengthM: number): Float64Array =>
    Float64Array.from([
      ...equal(coatAlong),
      ...graded({
        halfM: lengthM / 2,
        firstM: 0.7e-3 / refine,
        growth: 1.5 ** (1 / refine),
        largestM: 4.5e-3 / refine,
        centred: false,
      }),
    ]);
  const dx = side(spec.lengthM);
  const dy = side(spec.widthM);
  const half = graded({
    halfM: likeThicknessM / 2,
    firstM: 0.5e-3 / refine,
    growth: 1.4 ** (1 / refine),
    largestM: likeThicknessM / (10 * refine),
    centred: true,
  }).map((size) => (size * spec.thicknessM) / likeThicknessM);
  const dz = Float64Array.from([...equal(coatAcross), ...half, ...half.slice(0, -1).reverse(), ...equal(coatAcross)]);
  const [nx, ny, nz] = [dx.length, dy.length, dz.length];
  const count = nx * ny * nz;

  const solids = new Float64Array(count);
  const water0 = new Float64Array(count);
  const perWater0 = new Float64Array(count);
  const bound = new Float64Array(count);
  const freezing = new Float64Array(count);
  const thawedK = new Float64Array(count);
  const frozenK = new Float64Array(count);
  const dryR = new Float64Array(count);
  const vapourK = new Float64Array(count);
  const liquidD = new Float64Array(count);
  const drips = new Uint8Array(count);
  const volume = new Float64Array(count);
  const water = new Float64Array(count);
  const heat = new Float64Array(count);
  const warmth = new Float64Array(count).fill(spec.startC);
  /** half the thermal resistivity now [m·K/W] */
  const resist = new Float64Array(count);
  let massKg = 0;
  let startHeat = 0;
  let startWater = 0;
  for (let k = 0; k < nz; k++)
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; i++) {
        const at = (k * ny + j) * nx + i;
        const outside = i < coatAlong || j < coatAlong || k < coatAcross || k >= nz - coatAcross;
        const material = outside && spec.coating !== null ? spec.coating.material : spec.mix;
        solids[at] = material.solidsJm3K;
        water0[at] = water[at] = material.waterKgM3;
        perWater0[at] = 1 / material.waterKgM3;
        bound[at] = material.boundKgM3;
        freezing[at] = material.freezingC;
        thawedK[at] = material.thawedWmK;
        frozenK[at] = material.frozenWmK;
        dryR[at] = 1 / material.dryWmK;
        vapourK[at] = material.vapourKgMsPa;
        liquidD[at] = material.liquidM2s;
        drips[at] = material === spec.mix && spec.drip.fraction > 0 ? 1 : 0;
        volume[at] = dx[i] * dy[j] * dz[k];
        heat[at] = enthalpyAt(material, material.waterKgM3, spec.startC);
        massKg += volume[at] * material.densityKgM3;
        startHeat += volume[at] * heat[at];
        startWater += volume[at] * material.waterKgM3;
      }

  const topC = new Float64Array(nx * ny);
  const bottomC = new Float64Array(nx * ny);
  const endC = new Float64Array(ny * nz);
  const flankC = new Float64Array(nx * nz);
  const faces = [
    { surfaceC: topC, brown: new Float64Array(nx * ny), cell: (at: number) => at, area: areas(dx, dy) },
    {
      surfaceC: bottomC,
      brown: new Float64Array(nx * ny),
      cell: (at: number) => (nz - 1) * nx * ny + at,
      area: areas(dx, dy),
    },
    { surfaceC: endC, brown: new Float64Array(ny * nz), cell: (at: number) => at * nx, area: areas(dy, dz) },
    {
      surfaceC: flankC,
      brown: new Float64Array(nx * nz),
      cell: (at: number) => Math.floor(at / nx) * ny * nx + (at % nx),
      area: areas(dx, dz),
    },
  ];

  const longest = Math.max(nx, ny, nz);
  const low = new Float64Array(longest);
  /** one over the diagonal that elimination leaves */
  const diagonal = new Float64Array(longest);
  const right = new Float64Array(longest);
  const between = new Float64Array(longest);
  const leaves = new Float64Array(longest);
  const leavesSlope = new Float64Array(longest);
  const own = new Float64Array(longest);
  const ownDrive = new Float64Array(longest);
  const ownSlope = new Float64Array(longest);

  let around = first;
  let turned = false;
  let timeS = 0;
  let steps = 0;
  let heatIn = 0;
  let heatOut = 0;
  let evaporated = 0;
  let dripped = 0;

  /** vapour that leaves through one end of a line: fills leaves and leavesSlope (kg/(m²·s) and per K) */
  const evaporate = (
    start: number,
    stride: number,
    cells: number,
    size: Float64Array,
    fromEnd: boolean,
    film: number,
    airDrive: number,
    dt: number,
  ): void => {
    // dry material on the way resists; wet material hides what lies behind it, over BLUR_M
    let dryM = SKIN_M;
    let seen = 1;
    let reached = 0;
    for (let step = 0; step < cells && seen > HIDDEN; step++) {
      const c = fromEnd ? cells - 1 - step : step;
      const at = start + c * stride;
      const wet = water[at] * perWater0[at];
      const held = Math.min(1, wet);
      const behind = seen * Math.exp((-held * size[c]) / BLUR_M);
      const parched = (1 - held) * size[c];
      own[step] = ((seen - behind) * vapourK[at]) / (dryM + 0.5 * parched);
      dryM += parched;
      seen = behind;
      const activity = (held * (1 + SORPTION)) / (held + SORPTION);
      const pressure = saturationOf(warmth[at]);
      ownDrive[step] = driveOf(activity * pressure);
      ownSlope[step] = activity * saturationSlopeOf(warmth[at]) * driveSlopeOf(activity * pressure);
      reached = step + 1;
    }
    if (reached > 0 && ownDrive[0] <= airDrive) {
      // dew or frost on a cold surface
      const c = fromEnd ? cells - 1 : 0;
      const conductance = 1 / (1 / film + 1 / own[0]);
      leaves[c] += conductance * (ownDrive[0] - airDrive);
      leavesSlope[c] += conductance * ownSlope[0];
      return;
    }
    // vapour only goes outwards: cells below the surface's own pressure take no part
    let atSurface = airDrive;
    let sum = film;
    for (let pass = 0; pass < 3; pass++) {
      let drives = film * airDrive;
      let total = film;
      for (let step = 0; step < reached; step++)
        if (ownDrive[step] > atSurface || pass === 0) {
          if (ownDrive[step] <= airDrive) continue;
          total += own[step];
          drives += own[step] * ownDrive[step];
        }
      atSurface = drives / total;
      sum = total;
    }
    for (let step = 0; step < reached; step++) {
      const c = fromEnd ? cells - 1 - step : step;
      const at = start + c * stride;
      const flux = own[step] * (ownDrive[step] - atSurface);
      if (flux <= 0) continue;
      const slope = own[step] * ownSlope[step] * (1 - own[step] / sum);
      const left = 1 / (1 + (dt * flux) / (water[at] * size[c] + 1e-12));
      leaves[c] += flux * left;
      leavesSlope[c] += slope * left * left;
    }
  };

  /** one line of cells, from face to face (both coefficients) or from face to mirror (last coefficient null) */
  const sweep = (
    start: number,
    stride: number,
    cells: number,
    size: Float64Array,
    area: number,
    firstWm2K: number,
    lastWm2K: number | null,
    airC: number,
    airDrive: number,
    dt: number,
    firstSurface: Float64Array,
    firstPatch: number,
    lastSurface: Float64Array | null,
  ): void => {
    for (let c = 0; c < cells; c++) {
      leaves[c] = 0;
      leavesSlope[c] = 0;
    }
    const convective = 1 - around.radiantShare;
    if (spec.mix.vapourKgMsPa > 0) {
      evaporate(start, stride, cells, size, false, filmConductance(convective * firstWm2K), airDrive, dt);
      if (lastWm2K !== null)
        evaporate(start, stride, cells, size, true, filmConductance(convective * lastWm2K), airDrive, dt);
    }
    const perStep = 1 / dt;
    let at = start;
    for (let c = 0; c < cells; c++, at += stride) {
      const capacity = capacityAt(at);
      const toNext = c === cells - 1 ? 0 : 1 / (size[c] * resist[at] + size[c + 1] * resist[at + stride]);
      between[c] = toNext;
      const toPrevious = c === 0 ? 0 : between[c - 1];
      const lv = leaves[c] === 0 ? 0 : latentOf(warmth[at]);
      let self = capacity * size[c] * perStep + toNext + toPrevious + lv * leavesSlope[c];
      let push = -lv * leaves[c];
      if (c > 0) push += toPrevious * (warmth[at - stride] - warmth[at]);
      if (c < cells - 1) push += toNext * (warmth[at + stride] - warmth[at]);
      if (c === 0) {
        const air = 1 / (1 / firstWm2K + size[c] * resist[at]);
        self += air;
        push += air * (airC - warmth[at]);
      }
      if (c === cells - 1 && lastWm2K !== null) {
        const air = 1 / (1 / lastWm2K + size[c] * resist[at]);
        self += air;
        push += air * (airC - warmth[at]);
      }
      // elimination on the way
      if (c === 0) {
        diagonal[0] = 1 / self;
        right[0] = push;
      } else {
        const factor = toPrevious * diagonal[c - 1];
        diagonal[c] = 1 / (self - factor * toPrevious);
        right[c] = push + factor * right[c - 1];
      }
    }
    low[cells - 1] = right[cells - 1] * diagonal[cells - 1];
    for (let c = cells - 2; c >= 0; c--) low[c] = (right[c] + between[c] * low[c + 1]) * diagonal[c];

    // what flowed, counted once for both sides of every face
    at = start;
    let carriedHeat = 0;
    let carriedWater = 0;
    for (let c = 0; c < cells; c++, at += stride) {
      const mine = warmth[at] + low[c];
      let gain = carriedHeat;
      let wetter = carriedWater;
      if (c === 0) {
        const air = 1 / (1 / firstWm2K + size[c] * resist[at]);
        const flux = air * (airC - mine);
        gain += flux;
        heatIn += flux * dt * area;
        firstSurface[firstPatch] = airC - flux / firstWm2K;
      }
      if (c === cells - 1 && lastWm2K !== null && lastSurface !== null) {
        const air = 1 / (1 / lastWm2K + size[c] * resist[at]);
        const flux = air * (airC - mine);
        gain += flux;
        heatIn += flux * dt * area;
        lastSurface[firstPatch] = airC - flux / lastWm2K;
      }
      if (c < cells - 1) {
        const next = at + stride;
        carriedHeat = between[c] * (mine - warmth[next] - low[c + 1]);
        carriedWater = 0;
        if (warmth[at] > 0 && warmth[next] > 0) {
          const reference = Math.min(water0[at], water0[next]);
          const creep = Math.min(liquidD[at], liquidD[next]);
          carriedWater =
            (creep * reference * (water[at] * perWater0[at] - water[next] * perWater0[next])) /
            (0.5 * (size[c] + size[c + 1]));
          carriedHeat += carriedWater * WATER * (carriedWater > 0 ? warmth[at] : warmth[next]);
        }
        gain -= carriedHeat;
        wetter -= carriedWater;
      }
      let out = leaves[c] + leavesSlope[c] * low[c];
      if (out !== 0) {
        const most = 0.9 * water[at] * size[c] * perStep + wetter;
        if (leaves[c] > 0) out = Math.max(0, out);
        if (out > most) out = Math.max(0, most);
        const takes = out * (latentOf(warmth[at]) + WATER * warmth[at]);
        evaporated += out * dt * area;
        heatOut += takes * dt * area;
        gain -= takes;
      }
      const perSize = dt / size[c];
      water[at] += (wetter - out) * perSize;
      heat[at] += gain * perSize;
    }
    at = start;
    for (let c = 0; c < cells; c++, at += stride)
      warmth[at] = temperatureOf(solids[at], bound[at], freezing[at], water[at], heat[at]);
  };

  const capacityAt = (at: number): number => {
    const warm = solids[at] + water[at] * WATER;
    const freezable = water[at] - bound[at];
    const celsius = warmth[at];
    if (celsius >= freezing[at] || freezable <= 0) return warm;
    return warm - freezable * (WATER - ICE) - (freezable * FUSION * freezing[at]) / (celsius * celsius);
  };

  const properties = (): void => {
    for (let at = 0; at < count; at++) {
      const celsius = warmth[at];
      const limit = freezing[at];
      let moist = thawedK[at];
      if (celsius < limit) moist += ((frozenK[at] - moist) * (1 - limit / celsius)) / (1 - limit / -18);
      const wet = Math.min(1, water[at] * perWater0[at]);
      resist[at] = 0.5 * (wet / moist + (1 - wet) * dryR[at]);
    }
  };

  const drip = (dt: number): void => {
    const { fraction, middleC, widthK } = spec.drip;
    for (let at = 0; at < count; at++) {
      if (drips[at] === 0 || warmth[at] < middleC - 4 * widthK) continue;
      const holds = water0[at] * (1 - fraction / (1 + Math.exp(-(warmth[at] - middleC) / widthK)));
      if (water[at] <= holds) continue;
      const out = ((water[at] - holds) * dt) / (dt + DRIP_S);
      water[at] -= out;
      heat[at] -= out * WATER * warmth[at];
      dripped += out * volume[at];
      heatOut += out * WATER * warmth[at] * volume[at];
    }
  };

  const browning = (dt: number): void => {
    for (const face of faces)
      for (let patch = 0; patch < face.brown.length; patch++) {
        const kelvin = face.surfaceC[patch] + 273.15;
        if (kelvin < 350) continue;
        const at = face.cell(patch);
        const dry = 1 - Math.min(1, water[at] * perWater0[at]);
        face.brown[patch] += dt * dry * Math.exp((-spec.activationJmol / GAS) * (1 / kelvin - 1 / BROWN_REFERENCE_K));
      }
  };

  const alongZ = (dt: number, airC: number, airDrive: number): void => {
    const top = turned ? around.bottomWm2K : around.topWm2K;
    const bottom = turned ? around.topWm2K : around.bottomWm2K;
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; i++)
        sweep(j * nx + i, nx * ny, nz, dz, dx[i] * dy[j], top, bottom, airC, airDrive, dt, topC, j * nx + i, bottomC);
  };
  const alongX = (dt: number, airC: number, airDrive: number): void => {
    for (let k = 0; k < nz; k++)
      for (let j = 0; j < ny; j++)
        sweep(
          (k * ny + j) * nx,
          1,
          nx,
          dx,
          dy[j] * dz[k],
          around.sideWm2K,
          null,
          airC,
          airDrive,
          dt,
          endC,
          k * ny + j,
          null,
        );
  };
  const alongY = (dt: number, airC: number, airDrive: number): void => {
    for (let k = 0; k < nz; k++)
      for (let i = 0; i < nx; i++)
        sweep(
          k * ny * nx + i,
          nx,
          ny,
          dy,
          dx[i] * dz[k],
          around.sideWm2K,
          null,
          airC,
          airDrive,
          dt,
          flankC,
          k * nx + i,
          null,
        );
  };

  const advance = (toS: number): void => {
    while (timeS < toS - 1e-9) {
      const dt = Math.min(stepS, toS - timeS);
      const middle = timeS + dt / 2;
      const airC = around.airC(middle);
      const airDrive = driveOf(around.vapourPa(middle));
      if (around.turnS !== null && timeS >= around.turnS && !turned) turned = true;
      properties();
      const order = [alongZ, alongX, alongY];
      if (steps % 2 === 1) order.reverse();
      for (const along of order) along(dt, airC, airDrive);
      drip(dt);
      browning(dt);
      timeS += dt;
      steps++;
    }
  };

  const axis = new Float64Array(nz);
  const middles = new Float64Array(nz);
  for (let k = 0, from = 0; k < nz; k++) {
    middles[k] = from + dz[k] / 2;
    from += dz[k];
  }
  /** temperatures on the axis through the middle: a parabola with the means of the two cells beside each mirror */
  const readAxis = (): void => {
    const carry = (sizes: Float64Array, cells: number): number => {
      const [inner, next] = [sizes[cells - 1], sizes[cells - 2]];
      const innerSquare = (inner * inner) / 3;
      const nextSquare = ((inner + next) ** 3 - inner ** 3) / (3 * next);
      return innerSquare / (nextSquare - innerSquare);
    };
    const shareX = carry(dx, nx);
    const shareY = carry(dy, ny);
    for (let k = 0; k < nz; k++) {
      const at = (k * ny + ny - 1) * nx + nx - 1;
      const here = warmth[at];
      axis[k] = here + shareX * (here - warmth[at - 1]) + shareY * (here - warmth[at - nx]);
    }
  };
  /** place and value of the lowest point of the parabola with the means of the coldest cell and its neighbours */
  const coldest = (): readonly [number, number] => {
    readAxis();
    let k = 1;
    for (let each = 1; each < nz - 1; each++) if (axis[each] < axis[k]) k = each;
    const [up, down] = [middles[k] - middles[k - 1], middles[k + 1] - middles[k]];
    const own = (dz[k] * dz[k]) / 12;
    const [upSquare, downSquare] = [up * up + dz[k - 1] ** 2 / 12 - own, down * down + dz[k + 1] ** 2 / 12 - own];
    const [upRise, downRise] = [axis[k - 1] - axis[k], axis[k + 1] - axis[k]];
    const curve = (upRise * down + downRise * up) / (upSquare * down + downSquare * up);
    if (curve <= 0) return [middles[k], axis[k]];
    const slope = (downRise - curve * downSquare) / down;
    const way = Math.min(down, Math.max(-up, -slope / (2 * curve)));
    return [middles[k] + way, axis[k] - curve * own + slope * way + curve * way * way];
  };

  const dryAlong = (start: number, stride: number, cells: number, size: Float64Array): number => {
    let depth = 0;
    let from = 0;
    let at = start;
    for (let c = 0; c < cells && from < DEEPEST_M; c++, at += stride) {
      const part = Math.min(size[c], DEEPEST_M - from);
      depth += part * Math.max(0, 1 - (water[at] * perWater0[at]) / DRY_BELOW);
      from += size[c];
    }
    return depth;
  };
  const read = (): PieceReading => {
    let [top, bottom, sides, flat, upright] = [0, 0, 0, 0, 0];
    const halfZ = Math.floor(nz / 2);
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; i++) {
        const area = dx[i] * dy[j];
        flat += area;
        top += area * dryAlong(j * nx + i, nx * ny, halfZ, dz);
        // from below: sizes of the lower half mirror those of the upper
        bottom += area * dryAlong((nz - 1) * nx * ny + j * nx + i, -nx * ny, halfZ, dz);
      }
    for (let k = 0; k < nz; k++) {
      for (let j = 0; j < ny; j++) {
        upright += dy[j] * dz[k];
        sides += dy[j] * dz[k] * dryAlong((k * ny + j) * nx, 1, nx, dx);
      }
      for (let i = 0; i < nx; i++) {
        upright += dx[i] * dz[k];
        sides += dx[i] * dz[k] * dryAlong(k * ny * nx + i, nx, ny, dy);
      }
    }
    const patches = faces.flatMap((face) => Array.from(face.brown, (brown, at) => [brown, face.area[at]] as const));
    patches.sort((one, two) => two[0] - one[0]);
    const all = patches.reduce((sum, [, area]) => sum + area, 0);
    let [mean, worst, counted] = [0, 0, 0];
    for (const [brown, area] of patches) {
      mean += brown * area;
      const part = Math.min(area, Math.max(0, 0.1 * all - counted));
      worst += brown * part;
      counted += part;
    }
    const down = turned ? ([bottom, top] as const) : ([top, bottom] as const);
    return {
      timeS,
      coreC: coldest()[1],
      dryMm: [(1000 * down[0]) / flat, (1000 * down[1]) / flat, (1000 * sides) / upright],
      brownMeanS: mean / all,
      brownWorstS: worst / (0.1 * all),
      surfaceC: (turned ? bottomC : topC)[nx * ny - 1],
      loss: (evaporated + dripped) / massKg,
    };
  };

  const balance = (): Balance => {
    let nowHeat = 0;
    let nowWater = 0;
    for (let at = 0; at < count; at++) {
      nowHeat += volume[at] * heat[at];
      nowWater += volume[at] * water[at];
    }
    return {
      heatError: (nowHeat - startHeat + heatOut - heatIn) / heatIn,
      waterError: (nowWater + evaporated + dripped - startWater) / startWater,
    };
  };

  const aboveCoreC = (offsetM: number): number => {
    const place = coldest()[0] + offsetM;
    let k = 0;
    while (k < nz - 2 && middles[k + 1] < place) k++;
    const share = Math.min(1, Math.max(0, (place - middles[k]) / (middles[k + 1] - middles[k])));
    return axis[k] + share * (axis[k + 1] - axis[k]);
  };

  return {
    advance,
    read,
    balance,
    aboveCoreC,
    massKg: 4 * massKg,
    cells: count,
    moveTo: (next) => {
      around = next;
    },
  };
}

interface Grading {
  readonly halfM: number;
  readonly firstM: number;
  readonly growth: number;
  readonly largestM?: number;
  /** the last cell lies half beyond the middle */
  readonly centred: boolean;
}

/** Cell sizes from a face inwards, growing, over half a side. */
function graded({ halfM, firstM, growth, largestM = Number.POSITIVE_INFINITY, centred }: Grading): number[] {
  const sizes = [firstM];
  const reach = (): number => sizes.reduce((sum, size) => sum + size, 0) - (centred ? sizes[sizes.length - 1] / 2 : 0);
  while (reach() < halfM || sizes.length < 3) sizes.push(Math.min(largestM, sizes[sizes.length - 1] * growth));
  const scale = halfM / reach();
  return sizes.map((size) => size * scale);
}

function areas(across: Float64Array, down: Float64Array): Float64Array {
  const area = new Float64Array(across.length * down.length);
  for (let row = 0; row < down.length; row++)
    for (let at = 0; at < across.length; at++) area[row * across.length + at] = across[at] * down[row];
  return area;
}
