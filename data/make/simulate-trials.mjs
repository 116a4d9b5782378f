/**
 * Makes the trial logs of the invented Quarry Lane test kitchen: `node data/make/simulate-trials.mjs` writes
 * data/trials/*.csv and data/make/truth.json, the same files every time. Every slab is heated by the explicit
 * enthalpy scheme below and crusted by the receding-front formula, both written out here on their own so that the
 * library never checks itself; the pieces that go in are those of the cut, coated; then the errors of a kitchen are
 * added: uneven spreading, a scale, a probe, tasters, and a look at the pieces only now and then.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { panVolumeMl } from "slabwright/pan";
import { batchOnPan, buildKitchen, panOf, variantOf } from "slabwright/trials";

const at = (path) => fileURLToPath(new URL(path, import.meta.url));
const LATENT_J_KG = 2.257e6;
const EVAPORATION_C = 100;
const CRUST_WMK = 0.12;

/** What is true in this kitchen, and what the fits may be asked to find again. */
const truth = {
  invented: "Quarry Lane test kitchen; every number is made up",
  seed: 20260,
  appliances: {
    "small-basket": { coefficientWm2K: 46, lossOfCoefficientAtFullLoad: 0.3 },
    "fan-oven": { coefficientWm2K: 33, lossOfCoefficientAtFullLoad: 0.15 },
  },
  noise: {
    crispTimeSd: 0.04,
    probeSdMm: 0.25,
    unevennessSd: 0.03,
    weighedPiecesSd: 0.02,
    massSdG: 0.4,
    coreSdC: 1.2,
    tasterSd: 0.7,
  },
  variants: {
    "beet-lentil": { crustMm: 0.45, waterKgM3: 560, panelWidthMm: 0.1, browningPerS: 6e5, dripFraction: 0.005 },
    "turkey-sage": { crustMm: 0.4, waterKgM3: 420, panelWidthMm: 0.09, browningPerS: 5e5, dripFraction: 0.015 },
    "pollock-dill": { crustMm: 0.42, waterKgM3: 430, panelWidthMm: 0.09, browningPerS: 7e5, dripFraction: 0.01 },
    "chickpea-carrot": { crustMm: 0.5, waterKgM3: 480, panelWidthMm: 0.11, browningPerS: 6e5, dripFraction: 0.004 },
    "corn-puff": { crustMm: 0.35, waterKgM3: 400, panelWidthMm: 0.08, browningPerS: 9e5, dripFraction: 0.002 },
  },
};

/** trials a variant: slab thickness wanted on a pan, then [appliance, setpoint °C, load] for each */
const PLANS = {
  "beet-lentil": [
    [
      "half-sheet",
      6,
      [
        ["small-basket", 200, 0.6],
        ["small-basket", 200, 0.6],
        ["fan-oven", 200, 0.6],
        ["small-basket", 185, 0.6],
      ],
    ],
    [
      "half-sheet",
      8.2,
      [
        ["small-basket", 200, 0.6],
        ["small-basket", 200, 0.6],
        ["fan-oven", 200, 0.6],
        ["small-basket", 200, 0.9],
      ],
    ],
    [
      "half-sheet",
      8.2,
      [
        ["small-basket", 200, 0.6],
        ["small-basket", 200, 0.6],
        ["small-basket", 185, 0.6],
      ],
    ],
    [
      "quarter-sheet",
      10.2,
      [
        ["small-basket", 200, 0.6],
        ["small-basket", 200, 0.6],
        ["fan-oven", 200, 0.6],
        ["small-basket", 200, 0.9],
      ],
    ],
    [
      "quarter-sheet",
      10.2,
      [
        ["small-basket", 200, 0.6],
        ["small-basket", 200, 0.6],
        ["small-basket", 185, 0.6],
      ],
    ],
    [
      "quarter-sheet",
      12.6,
      [
        ["small-basket", 200, 0.6],
        ["small-basket", 200, 0.6],
        ["fan-oven", 200, 0.6],
        ["small-basket", 200, 0.9],
      ],
    ],
    [
      "quarter-sheet",
      14.5,
      [
        ["small-basket", 200, 0.6],
        ["small-basket", 200, 0.6],
        ["small-basket", 185, 0.6],
      ],
    ],
  ],
  "turkey-sage": [
    [
      "half-sheet",
      9,
      [
        ["small-basket", 195, 0.6],
        ["small-basket", 195, 0.6],
        ["fan-oven", 195, 0.5],
        ["small-basket", 195, 0.6],
      ],
    ],
    [
      "half-sheet",
      11.5,
      [
        ["small-basket", 195, 0.6],
        ["small-basket", 195, 0.6],
        ["small-basket", 195, 0.6],
        ["fan-oven", 195, 0.5],
      ],
    ],
    [
      "quarter-sheet",
      14,
      [
        ["small-basket", 195, 0.6],
        ["small-basket", 195, 0.6],
        ["small-basket", 195, 0.6],
      ],
    ],
    [
      "quarter-sheet",
      16.5,
      [
        ["small-basket", 195, 0.6],
        ["small-basket", 195, 0.6],
        ["small-basket", 195, 0.6],
        ["fan-oven", 195, 0.5],
      ],
    ],
  ],
  "pollock-dill": [
    [
      "half-sheet",
      7.5,
      [
        ["fan-oven", 205, 0.5],
        ["fan-oven", 205, 0.5],
        ["small-basket", 205, 0.6],
      ],
    ],
    [
      "half-sheet",
      10,
      [
        ["fan-oven", 205, 0.5],
        ["fan-oven", 205, 0.5],
        ["fan-oven", 205, 0.5],
        ["small-basket", 205, 0.6],
      ],
    ],
    [
      "quarter-sheet",
      12,
      [
        ["fan-oven", 205, 0.5],
        ["fan-oven", 205, 0.5],
        ["fan-oven", 205, 0.5],
      ],
    ],
    [
      "quarter-sheet",
      14,
      [
        ["fan-oven", 205, 0.5],
        ["fan-oven", 205, 0.5],
        ["fan-oven", 205, 0.5],
        ["small-basket", 205, 0.6],
      ],
    ],
  ],
  "chickpea-carrot": [
    [
      "half-sheet",
      7,
      [
        ["small-basket", 190, 0.6],
        ["small-basket", 190, 0.6],
        ["small-basket", 190, 0.6],
      ],
    ],
    [
      "half-sheet",
      9.4,
      [
        ["small-basket", 190, 0.6],
        ["small-basket", 190, 0.6],
        ["small-basket", 205, 0.6],
        ["fan-oven", 190, 0.5],
      ],
    ],
    [
      "quarter-sheet",
      11.5,
      [
        ["small-basket", 190, 0.6],
        ["small-basket", 190, 0.6],
        ["small-basket", 190, 0.6],
      ],
    ],
    [
      "quarter-sheet",
      14,
      [
        ["small-basket", 190, 0.6],
        ["small-basket", 190, 0.6],
        ["small-basket", 205, 0.6],
        ["fan-oven", 190, 0.5],
      ],
    ],
  ],
  "corn-puff": [
    [
      "mini-wells",
      10,
      [
        ["fan-oven", 180, 0.5],
        ["fan-oven", 180, 0.5],
        ["fan-oven", 180, 0.5],
      ],
    ],
    [
      "mini-wells",
      13,
      [
        ["fan-oven", 180, 0.5],
        ["fan-oven", 180, 0.5],
        ["fan-oven", 180, 0.5],
        ["small-basket", 180, 0.6],
      ],
    ],
    [
      "mini-wells",
      16,
      [
        ["fan-oven", 180, 0.5],
        ["fan-oven", 180, 0.5],
        ["fan-oven", 180, 0.5],
        ["small-basket", 180, 0.6],
      ],
    ],
  ],
};

/** the setting on each variant's reheat card, as in variants.csv */
const USUAL = {
  "beet-lentil": { applianceId: "small-basket", setpointC: 200 },
  "turkey-sage": { applianceId: "small-basket", setpointC: 195 },
  "pollock-dill": { applianceId: "fan-oven", setpointC: 205 },
  "chickpea-carrot": { applianceId: "small-basket", setpointC: 190 },
  "corn-puff": { applianceId: "fan-oven", setpointC: 180 },
};

/** logs kept in inches, pounds and °F, as some kitchens keep them */
const IN_INCHES = new Set(["turkey-sage"]);
/** trials whose log holds a slip, so that the notices have something to find: the batch mass was read off wrong */
const SLIPS = { "BL-14": { batchFactor: 0.72 } };

function generator(seed) {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}

/** Thermal constants of a mix (SI) from its water: between dry solids and water by mass, all unfrozen or all frozen. */
function thermalOf(composition, densityKgM3) {
  const water = composition.waterFraction;
  const bound = 0.4 * composition.proteinFraction;
  return {
    density: densityKgM3,
    heatThawed: 1550 + 2630 * water,
    heatFrozen: 1400 + 900 * water,
    conductivityThawed: 0.2 + 0.4 * water,
    conductivityFrozen: 0.25 + 1.75 * water,
    freezingC: -1.5,
    latent: (water - bound) * 333_600,
  };
}

const enthalpyOf = (m, T) =>
  T >= m.freezingC
    ? m.heatThawed * (T - m.freezingC)
    : m.heatFrozen * (T - m.freezingC) - m.latent * (1 - m.freezingC / T);

function temperatureOf(m, h) {
  if (h >= 0) return m.freezingC + h / m.heatThawed;
  const b = m.heatFrozen * m.freezingC + m.latent + h;
  return (b - Math.sqrt(b * b - 4 * m.heatFrozen * m.latent * m.freezingC)) / (2 * m.heatFrozen);
}

/** Core temperature (°C) after `timeS` in air, both faces; the surface is held at 100 °C once it gets there. */
function coreAfter(m, thicknessM, coefficient, airC, startC, timeS) {
  const cells = 14;
  const dx = thicknessM / 2 / cells;
  const h = new Float64Array(cells).fill(enthalpyOf(m, startC));
  const T = new Float64Array(cells).fill(startC);
  const step = (0.2 * dx * dx * m.density * m.heatFrozen) / m.conductivityFrozen;
  const k = (t) =>
    t >= m.freezingC
      ? m.conductivityThawed
      : m.conductivityFrozen + ((m.conductivityThawed - m.conductivityFrozen) * m.freezingC) / t;
  for (let t = 0; t < timeS; t += step) {
    const resistance = 1 / coefficient + dx / 2 / k(T[cells - 1]);
    let inward = (airC - T[cells - 1]) / resistance;
    const surface = airC - inward / coefficient;
    if (surface > EVAPORATION_C) inward = ((EVAPORATION_C - T[cells - 1]) * k(T[cells - 1])) / (dx / 2);
    for (let i = cells - 1; i >= 0; i--) {
      const face = i === 0 ? 0 : ((T[i] - T[i - 1]) / dx) * ((2 * k(T[i]) * k(T[i - 1])) / (k(T[i]) + k(T[i - 1])));
      h[i] += (step * (inward - face)) / (m.density * dx);
      inward = face;
    }
    for (let i = 0; i < cells; i++) T[i] = temperatureOf(m, h[i]);
  }
  return T[0];
}

/** Crust clock: when the front starts (s), and its depth after that, for one slab. */
function crustClock(m, variant, thicknessM, coefficient, airC) {
  const soaked = m.density * (enthalpyOf(m, 100) - enthalpyOf(m, -18));
  const diffusivity = m.conductivityThawed / (m.density * m.heatThawed);
  const startS = (soaked * thicknessM) / (2 * coefficient * (airC - 37)) + thicknessM ** 2 / (12 * diffusivity);
  const group = variant.waterKgM3 * LATENT_J_KG;
  const timeFor = (depthM) =>
    startS + (group * (depthM / coefficient + depthM ** 2 / (2 * CRUST_WMK))) / (airC - EVAPORATION_C);
  const depthAt = (timeS) => {
    const after = timeS - startS;
    if (after <= 0) return 0;
    return (
      (CRUST_WMK / coefficient) *
      (Math.sqrt(1 + (2 * coefficient ** 2 * (airC - EVAPORATION_C) * after) / (CRUST_WMK * group)) - 1)
    );
  };
  return { startS, timeFor, depthAt };
}

function browningAt(variant, clock, coefficient, airC, timeS) {
  let sum = 0;
  for (let t = clock.startS; t < timeS; t += 2) {
    const surfaceC = airC - (airC - EVAPORATION_C) / (1 + (coefficient * clock.depthAt(t)) / CRUST_WMK);
    sum += 2 * variant.browningPerS * Math.exp(-64151 / (8.314 * (surfaceC + 273.15)));
  }
  return sum;
}

/** Crisp time on the usual setting as t = c0 + aL + bL² (min, L in mm), to which the crust clock reduces exactly. */
function crispCurve(m, variant, coefficient, airC) {
  const at = (mm) => crustClock(m, variant, mm / 1000, coefficient, airC).timeFor(variant.crustMm / 1000) / 60;
  const [c0, one, two] = [at(0), at(1), at(2)];
  const b = (two - 2 * one + c0) / 2;
  const parts = { c0, a: one - c0 - b, b };
  return {
    setting: `load 0.6 or less, ${airC} °C`,
    ...Object.fromEntries(Object.entries(parts).map(([name, value]) => [name, Number(value.toPrecision(6))])),
  };
}

/** Mass of a piece (g) with its coating: every layer covers the bare piece's surface alike. */
function coatedG(bareG, surfaceMm2, layers) {
  let massG = bareG;
  for (const { pickupPercent, pickupBasis, atSurfaceCm2PerG } of layers) {
    const share = pickupPercent / (pickupBasis === "substrate" ? 100 : 100 - pickupPercent);
    massG *= 1 + (share * surfaceMm2) / 100 / bareG / atSurfaceCm2PerG;
  }
  return massG;
}

const fileOf = (file) => ({ file, text: readFileSync(at(`../${file}`), "utf8") });
const kitchen = buildKitchen({
  name: "Quarry Lane test kitchen",
  pans: fileOf("pans.csv"),
  appliances: fileOf("appliances.csv"),
  ingredients: fileOf("ingredients.csv"),
  variants: fileOf("variants.csv"),
  formulas: Object.keys(PLANS).map((id) => fileOf(`formulas/${id}.json`)),
  trials: [],
});
const random = generator(truth.seed);
const clip = (value, low, high) => Math.min(high, Math.max(low, value));
const fixed = (value, digits) => (value === null ? "" : Number(value.toFixed(digits)).toString());

mkdirSync(at("../trials"), { recursive: true });
let day = Date.UTC(2026, 1, 2);
for (const [variantId, slabs] of Object.entries(PLANS)) {
  const variant = truth.variants[variantId];
  const developed = variantOf(kitchen, variantId);
  const { formula, composition, densityKgM3 } = developed;
  const material = thermalOf(composition, densityKgM3);
  variant.densityKgM3 = Number(densityKgM3.toFixed(1));
  variant.thermal = Object.fromEntries(
    Object.entries(material).map(([key, value]) => [key, Number(value.toPrecision(6))]),
  );
  const { applianceId: usual, setpointC: usualC } = USUAL[variantId];
  variant.crispTime = crispCurve(material, variant, truth.appliances[usual].coefficientWm2K, usualC);
  const prefix = variantId
    .split("-")
    .map((word) => word[0].toUpperCase())
    .join("");
  const rows = [];
  for (const [panId, wantedMm, runs] of slabs) {
    day += 86_400_000 * (1 + Math.floor(random.uniform() * 4));
    const pan = panOf(kitchen, panId);
    const thicknessMm = wantedMm * (1 + 0.02 * random.normal());
    const batchG = Math.round((panVolumeMl(pan, thicknessMm) * densityKgM3) / 1000 + random.normal());
    const { pieces: cut } = batchOnPan({ kitchen, variant: developed, pan, batchG });
    const bareG =
      pan.shape === "wells" ? cut.pieceG : (cut.pieceLengthMm * cut.pieceWidthMm * thicknessMm * densityKgM3) / 1e6;
    const pieceG = coatedG(bareG, cut.surfaceMm2, formula.coating);
    const spreadMm = thicknessMm * truth.noise.unevennessSd;
    const [reference] = runs;
    for (const [applianceId, setpointC, loadFraction, forCore] of [...runs, [...reference, true]]) {
      const trial = `${prefix}-${String(rows.length + 1).padStart(2, "0")}`;
      const appliance = truth.appliances[applianceId];
      const crowding = Math.max(0, loadFraction - 0.6) / 0.4;
      const coefficient = appliance.coefficientWm2K * (1 - appliance.lossOfCoefficientAtFullLoad * crowding);
      const probes = Array.from(
        { length: 5 },
        () => thicknessMm + spreadMm * random.normal() + truth.noise.probeSdMm * random.normal() * 0.5,
      );
      const clock = crustClock(material, variant, thicknessMm / 1000, coefficient, setpointC);
      const crispS = clock.timeFor(variant.crustMm / 1000) * Math.exp(truth.noise.crispTimeSd * random.normal());
      const checkEvery = crispS > 720 ? 1.5 : 1;
      const firstCheck = Math.max(checkEvery, Math.round((0.7 * crispS) / 60));
      let notCrisp = null;
      let crisp = null;
      for (let check = firstCheck; crisp === null && check < 60; check += checkEvery) {
        if (check * 60 >= crispS) crisp = check;
        else notCrisp = check;
      }
      const stoppedEarly = forCore || (random.uniform() < 0.08 && notCrisp !== null);
      let timeMin = crisp + Math.round(random.uniform() * 4) / 2;
      if (stoppedEarly) {
        timeMin = forCore ? Math.round((2 * crispS * (0.4 + 0.2 * random.uniform())) / 60) / 2 : notCrisp;
        [notCrisp, crisp] = [timeMin, null];
      }
      const timeS = timeMin * 60;
      const depthM = clock.depthAt(timeS);
      const centreMm = variant.crustMm - variant.panelWidthMm * Math.log(2);
      const liking = 9 / (1 + Math.exp(-(depthM * 1000 - centreMm) / variant.panelWidthMm));
      const browned = 9 * (1 - Math.exp(-browningAt(variant, clock, coefficient, setpointC, timeS)));
      const taste = (score) =>
        Array.from({ length: 4 }, () =>
          clip(Math.round(2 * (score + truth.noise.tasterSd * random.normal())) / 2, 0, 9),
        ).join(";");
      const pieces = 6 + Math.floor(random.uniform() * 5);
      const before = pieces * pieceG * (1 + truth.noise.weighedPiecesSd * random.normal());
      const lost = (2 * variant.waterKgM3 * depthM) / (densityKgM3 * (thicknessMm / 1000)) + variant.dripFraction;
      const after = before * (1 - lost) + truth.noise.massSdG * random.normal();
      const core = Math.min(
        99.5,
        coreAfter(material, thicknessMm / 1000, coefficient, setpointC, -18, timeS) +
          truth.noise.coreSdC * random.normal(),
      );
      const loggedBatchG = Math.round(batchG * (SLIPS[trial]?.batchFactor ?? 1));
      const inches = IN_INCHES.has(variantId);
      rows.push([
        trial,
        new Date(day).toISOString().slice(0, 10),
        variantId,
        panId,
        applianceId,
        inches ? fixed(loggedBatchG / 453.59237, 3) : loggedBatchG,
        probes.map((probe) => (inches ? fixed(probe / 25.4, 3) : fixed(probe, 1))).join(";"),
        inches ? fixed(setpointC * 1.8 + 32, 0) : setpointC,
        loadFraction,
        -18,
        "",
        fixed(timeMin, 1),
        fixed(notCrisp, 1),
        fixed(crisp, 1),
        inches ? fixed(core * 1.8 + 32, 0) : fixed(core, 1),
        fixed(before, 1),
        fixed(after, 1),
        pieces,
        taste(liking),
        taste(browned),
        forCore ? "taken out early to read the core" : "",
      ]);
    }
  }
  const [length, mass, degree] = IN_INCHES.has(variantId) ? ["in", "lb", "f"] : ["mm", "g", "c"];
  const heading = `trial,date,variant,pan,appliance,batch_${mass},thickness_${length},setpoint_${degree},load_fraction,start_c,flip_min,time_min,not_crisp_min,crisp_min,core_${degree},before_g,after_g,pieces,crisp_scores,brown_scores,note`;
  writeFileSync(
    at(`../trials/${variantId}.csv`),
    `# Quarry Lane test kitchen: invented trials, made by data/make/simulate-trials.mjs.\n${heading}\n${rows.map((row) => row.join(",")).join("\n")}\n`,
  );
}
writeFileSync(at("truth.json"), `${JSON.stringify(truth, null, 2)}\n`);
