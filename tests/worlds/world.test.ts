import { cutGrid } from "slabwright";
import { describe, expect, it } from "vitest";
import { seedOf } from "./make-worlds";
import { PRODUCTS, type Product } from "./products";
import { heatPiece } from "./simulate-piece";
import {
  aroundOf,
  brownScore,
  crispScore,
  cutOf,
  drawWorld,
  gridOf,
  ownCut,
  ownSetting,
  pieceSpec,
  TRIM_MM,
  TYPICAL,
  type WorldSetting,
} from "./world";

const product = PRODUCTS.find(({ id }) => id === "cauliflower-bites") as Product;
const world = drawWorld(product, seedOf(product, 1));
const own = ownSetting(world, null);

describe("drawWorld", () => {
  it("is the same for the same seed and another for another", () => {
    expect(drawWorld(product, seedOf(product, 1))).toEqual(world);
    expect(drawWorld(product, seedOf(product, 2)).mix).not.toEqual(world.mix);
  });

  it("tunes a product: crisp near its hot core, too brown well after", () => {
    const piece = heatPiece(pieceSpec(world, own, TYPICAL), aroundOf(world, own, {}), gridOf(world, own));
    const moments = { core: 0, crisp: 0, brown: 0 };
    for (let timeS = 12; timeS <= 2400; timeS += 12) {
      piece.advance(timeS);
      const reading = piece.read();
      moments.core ||= reading.coreC >= 74 ? timeS : 0;
      moments.crisp ||= crispScore(world, reading, 1) >= 6 ? timeS : 0;
      moments.brown ||= brownScore(world, reading, 1) >= 7 ? timeS : 0;
    }
    expect(moments.crisp / moments.core).toBeGreaterThan(product.crispOverCore[0] - 0.05);
    expect(moments.crisp / moments.core).toBeLessThan(product.crispOverCore[1] + 0.05);
    expect(moments.brown / Math.max(moments.core, moments.crisp)).toBeGreaterThan(1.5);
    expect(moments.brown / Math.max(moments.core, moments.crisp)).toBeLessThan(2.2);
  });
});

describe("aroundOf", () => {
  const at = (setting: Partial<WorldSetting>) => aroundOf(world, { ...own, ...setting }, {});

  it("starts with air that loading has cooled, and recovers", () => {
    const { airC } = at({});
    const mean = (fromS: number): number =>
      Array.from({ length: 200 }, (_, step) => airC(fromS + step)).reduce((sum, celsius) => sum + celsius, 0) / 200;
    expect(airC(0)).toBeLessThan(mean(600) - 15);
    expect(Math.abs(mean(600) - mean(1200))).toBeLessThan(4);
  });

  it("has less heat, less of it at the sides, and more vapour on a fuller floor", () => {
    const loose = at({ loadFraction: 0.3 });
    const full = at({ loadFraction: 1 });
    expect(full.topWm2K).toBeLessThan(0.9 * loose.topWm2K);
    expect(full.sideWm2K / full.topWm2K).toBeLessThan(loose.sideWm2K / loose.topWm2K);
    expect(full.bottomWm2K).toBeLessThan(full.topWm2K);
    expect(full.vapourPa(600)).toBeGreaterThan(loose.vapourPa(600));
  });

  it("loses air at a look and at the turn", () => {
    const looked = aroundOf(world, own, { looksS: [300] });
    const turned = at({ flipMin: 5 });
    expect(looked.airC(303)).toBeLessThan(at({}).airC(303) - 20);
    expect(looked.airC(600)).toBeCloseTo(at({}).airC(600), 0);
    expect(turned.airC(303)).toBeCloseTo(looked.airC(303), 6);
  });
});

describe("scores", () => {
  it("rise with dry depth and with browning, and a fussier taste scores lower", () => {
    const reading = {
      timeS: 0,
      coreC: 74,
      dryMm: [world.crispMm, world.crispMm, world.crispMm] as const,
      brownMeanS: world.brownHalfS,
      brownWorstS: world.brownHalfS,
      surfaceC: 120,
      loss: 0.1,
    };
    expect(crispScore(world, reading, 1)).toBeCloseTo(6, 10);
    expect(crispScore(world, reading, 1.2)).toBeLessThan(6);
    expect(brownScore(world, reading, 1)).toBeCloseTo(4.5, 10);
    // the darkest tenth counts beside the mean
    expect(brownScore(world, { ...reading, brownWorstS: 3 * world.brownHalfS }, 1)).toBeGreaterThan(4.6);
  });
});

describe("cutOf", () => {
  it("cuts as cutGrid does", () => {
    for (const each of PRODUCTS)
      for (const thicker of [1, 1.3, 1.7, 2.2]) {
        const pan = {
          lengthMm: Math.round(each.pan.lengthMm / Math.sqrt(thicker)),
          widthMm: Math.round(each.pan.widthMm / Math.sqrt(thicker)),
        };
        const wanted = ownCut(each);
        const grid = cutGrid({
          slabLengthMm: pan.lengthMm,
          slabWidthMm: pan.widthMm,
          cut: { pieceLengthMm: wanted.lengthMm, pieceWidthMm: wanted.widthMm },
          trimMm: TRIM_MM,
        });
        const cut = cutOf(pan, wanted);
        expect(cut.lengthMm).toBeCloseTo(grid.pieceLengthMm, 9);
        expect(cut.widthMm).toBeCloseTo(grid.pieceWidthMm, 9);
      }
  });
});
