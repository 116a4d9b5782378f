import { describe, expect, it } from "vitest";
import { type Material, materialOf } from "./moist-food";
import { type Around, heatPiece, type PieceReading, type PieceSpec } from "./simulate-piece";

const STILL: Omit<PieceSpec, "mix" | "lengthM" | "widthM" | "thicknessM" | "startC"> = {
  coating: null,
  drip: { fraction: 0, middleC: 62, widthK: 5 },
  activationJmol: 80_000,
};

function evenAir(airC: number, coefficientWm2K: number, more: Partial<Around> = {}): Around {
  return {
    topWm2K: coefficientWm2K,
    bottomWm2K: coefficientWm2K,
    sideWm2K: coefficientWm2K,
    radiantShare: 0,
    airC: () => airC,
    vapourPa: () => 1200,
    turnS: null,
    ...more,
  };
}

/** constant properties, no water: pure conduction */
function solid(conductivityWmK: number, densityKgM3: number, heatJkgK: number): Material {
  return {
    densityKgM3,
    solidsJm3K: densityKgM3 * heatJkgK,
    waterKgM3: 1e-9,
    boundKgM3: 1,
    freezingC: -1,
    thawedWmK: conductivityWmK,
    frozenWmK: conductivityWmK,
    dryWmK: conductivityWmK,
    vapourKgMsPa: 0,
    liquidM2s: 0,
  };
}

const MIX = materialOf(
  { water: 0.68, protein: 0.18, fat: 0.07, carbohydrate: 0.04, fibre: 0.01, ash: 0.02 },
  { airFraction: 0.03, freezingC: -1.8, krischer: 0.3, dryWmK: 0.14, vapourKgMsPa: 6e-12, liquidM2s: 2e-10 },
);
const CRUMB = materialOf(
  { water: 0.36, protein: 0.08, fat: 0.05, carbohydrate: 0.47, fibre: 0.02, ash: 0.02 },
  { airFraction: 0.3, freezingC: -3, krischer: 0.5, dryWmK: 0.08, vapourKgMsPa: 1e-11, liquidM2s: 1e-10 },
);
const COATED: PieceSpec = {
  ...STILL,
  lengthM: 0.045,
  widthM: 0.04,
  thicknessM: 0.012,
  mix: MIX,
  coating: { thicknessM: 0.9e-3, material: CRUMB },
  startC: -18,
  drip: { fraction: 0.04, middleC: 62, widthK: 5 },
};
const BARE: PieceSpec = { ...COATED, coating: null };
const HOT = evenAir(195, 50, { bottomWm2K: 33, sideWm2K: 42, radiantShare: 0.35, vapourPa: () => 4000 });

type Mark = readonly [of: (reading: PieceReading) => number, value: number];
const core = (reading: PieceReading): number => reading.coreC;

/** when things read of a piece first pass their values (s), in a straight line between readings */
function passages(
  spec: PieceSpec,
  around: Around,
  marks: readonly Mark[],
  { everyS = 12, ...grid }: { everyS?: number; refine?: number; stepS?: number } = {},
): readonly number[] {
  const piece = heatPiece(spec, around, grid);
  const passed = marks.map(() => Number.POSITIVE_INFINITY);
  let before = piece.read();
  for (let timeS = everyS; timeS < 4000 && passed.includes(Number.POSITIVE_INFINITY); timeS += everyS) {
    piece.advance(timeS);
    const now = piece.read();
    marks.forEach(([of, value], at) => {
      if (of(before) < value && of(now) >= value)
        passed[at] = timeS - everyS + (everyS * (value - of(before))) / (of(now) - of(before));
    });
    before = now;
  }
  return passed;
}

describe("heatPiece, pure conduction", () => {
  // product of three slab series (Carslaw & Jaeger, ch. III), summed by scipy: 40 × 40 × 12.7 mm, k 0.45, ρ 1050,
  // cp 3400, h 25, from 5 °C in 180 °C: centre 44.656 °C at 300 s
  const brick: PieceSpec = {
    ...STILL,
    lengthM: 0.04,
    widthM: 0.04,
    thicknessM: 0.0127,
    mix: solid(0.45, 1050, 3400),
    startC: 5,
  };

  it("agrees with the exact brick to 0.2 K", () => {
    const piece = heatPiece(brick, evenAir(180, 25));
    piece.advance(300);
    expect(Math.abs(piece.read().coreC - 44.656)).toBeLessThan(0.2);
  });

  it("agrees with it to 0.05 K on a finer grid", () => {
    const piece = heatPiece(brick, evenAir(180, 25), { refine: 2, stepS: 1 });
    piece.advance(300);
    expect(Math.abs(piece.read().coreC - 44.656)).toBeLessThan(0.05);
  });

  it("gains in all directions alike: a brick on its side is as warm", () => {
    const laid = heatPiece({ ...brick, thicknessM: 0.03 }, evenAir(180, 25), { refine: 2 });
    const stood = heatPiece({ ...brick, lengthM: 0.03, thicknessM: 0.04 }, evenAir(180, 25), { refine: 2 });
    laid.advance(600);
    stood.advance(600);
    expect(Math.abs(laid.read().coreC - stood.read().coreC)).toBeLessThan(0.3);
  });
});

describe("heatPiece, frozen", () => {
  it("thaws and warms as an independent enthalpy solution does, to 1 %", () => {
    // slab 6.35 mm, air 204 °C, h 40, from −18 °C: centre past −0.9 °C at 126.4 s and at 40 °C at 186.6 s, by the method of
    // lines with 200 cells and scipy's BDF; ρ 1050, water 0.735 of which 0.087 bound, freezing at −1 °C, thawed 3500,
    // frozen 2000 J/(kg·K), k 0.49 and 1.50 fully frozen. Its enthalpy from −18 °C is 0.6 % less than ours.
    const food: Material = {
      densityKgM3: 1050,
      solidsJm3K: 1050 * (3500 - 0.735 * 4190),
      waterKgM3: 1050 * 0.735,
      boundKgM3: 1050 * 0.087,
      freezingC: -1,
      thawedWmK: 0.49,
      frozenWmK: 0.49 + 1.01 * (1 - 1 / 18),
      dryWmK: 0.12,
      vapourKgMsPa: 0,
      liquidM2s: 0,
    };
    const slab: PieceSpec = { ...STILL, lengthM: 0.1, widthM: 0.1, thicknessM: 0.00635, mix: food, startC: -18 };
    const marks: readonly Mark[] = [
      [core, -0.9],
      [core, 40],
    ];
    const [thawedS, warmS] = passages(slab, evenAir(204, 40), marks, { stepS: 1, everyS: 2 });
    expect(Math.abs(thawedS / 126.4 - 1)).toBeLessThan(0.01);
    expect(Math.abs(warmS / 186.6 - 1)).toBeLessThan(0.01);
  });
});

describe("heatPiece, drying", () => {
  it("holds the surface of a thin wet piece near its wet bulb", () => {
    // wet bulb of 180 °C air with 1200 Pa of vapour, h(Ta − Ts) = ṁ·Lv with Lewis 0.857^(2/3): 43.4 °C
    const wet: PieceSpec = {
      ...STILL,
      lengthM: 0.05,
      widthM: 0.05,
      thicknessM: 0.002,
      mix: materialOf(
        { water: 0.96, protein: 0, fat: 0, carbohydrate: 0.04, fibre: 0, ash: 0 },
        { airFraction: 0, freezingC: -0.2, krischer: 0.3, dryWmK: 0.3, vapourKgMsPa: 2e-11, liquidM2s: 3e-9 },
      ),
      startC: 20,
    };
    const piece = heatPiece(wet, evenAir(180, 40));
    piece.advance(35);
    expect(Math.abs(piece.read().surfaceC - 43.4)).toBeLessThan(2);
    piece.advance(50);
    // it starts to dry, and is nowhere near the air yet
    expect(piece.read().surfaceC).toBeLessThan(52);
  });

  it.each([
    ["coated", COATED],
    ["bare", BARE],
  ])("conserves heat and water to 1e-9 of what went in (%s)", (_, spec) => {
    const piece = heatPiece(spec, { ...HOT, turnS: 300, airC: (timeS) => 195 - 60 * Math.exp(-timeS / 60) });
    piece.advance(1200);
    const { heatError, waterError } = piece.balance();
    expect(piece.read().loss).toBeGreaterThan(0.05);
    expect(Math.abs(heatError)).toBeLessThan(1e-9);
    expect(Math.abs(waterError)).toBeLessThan(1e-9);
  });

  it.each([
    ["coated", COATED],
    ["bare", BARE],
  ])(
    "changes by less than 1 % (core) and 2 % (drying) when every cell is halved (%s)",
    (_, spec) => {
      const marks: readonly Mark[] = [
        [core, 74],
        [(reading) => reading.loss, 0.12],
        [(reading) => (reading.dryMm[0] + reading.dryMm[1]) / 2, 1],
      ];
      const coarse = passages(spec, HOT, marks);
      const fine = passages(spec, HOT, marks, { refine: 2, stepS: 3 });
      [0.01, 0.02, 0.02].forEach((most, at) => {
        expect(Math.abs(coarse[at] / fine[at] - 1)).toBeLessThan(most);
      });
    },
    120_000,
  );

  it("lets the evaporation move in: the surface passes 100 °C while the core is far below", () => {
    const piece = heatPiece(COATED, HOT);
    piece.advance(480);
    const { surfaceC, coreC } = piece.read();
    expect(surfaceC).toBeGreaterThan(100);
    expect(coreC).toBeLessThan(70);
  });

  it("takes frost on at the start and loses water after", () => {
    const piece = heatPiece(BARE, HOT);
    piece.advance(12);
    expect(piece.read().loss).toBeLessThan(0);
    piece.advance(400);
    expect(piece.read().loss).toBeGreaterThan(0.02);
  });
});

describe("heatPiece, places", () => {
  it("dries and heats less below, and a turn brings both faces together", () => {
    const still = heatPiece(COATED, HOT);
    const turned = heatPiece(COATED, { ...HOT, turnS: 400 });
    still.advance(800);
    turned.advance(800);
    const [top, bottom] = still.read().dryMm;
    const after = turned.read().dryMm;
    expect(top - bottom).toBeGreaterThan(0.1);
    expect(Math.abs(after[0] - after[1])).toBeLessThan(0.5 * (top - bottom));
  });

  it("browns the edges first", () => {
    const piece = heatPiece(BARE, HOT);
    piece.advance(900);
    const { brownMeanS, brownWorstS } = piece.read();
    expect(brownWorstS).toBeGreaterThan(2 * brownMeanS);
  });

  it("keeps warming at the core after it is taken out", () => {
    const piece = heatPiece(COATED, HOT);
    let timeS = 0;
    while (piece.read().coreC < 65) {
      timeS += 6;
      piece.advance(timeS);
    }
    const out = piece.read().coreC;
    piece.moveTo(evenAir(45, 5, { radiantShare: 0.7, vapourPa: () => 12_000 }));
    piece.advance(timeS + 60);
    expect(piece.read().coreC - out).toBeGreaterThan(1);
  });
});
