import { describe, expect, it } from "vitest";
import { panPreset } from "../../kernel-lib/library/src/pan/pan-preset";
import { panVolumeMl } from "../../kernel-lib/library/src/pan/pan-volume";
import { comparison } from "./comparison";

const volumes = comparison({
  page: "thickness-and-crisp-time",
  what: "brim volumes of nominal baking pans",
  against: "cups as kitchen references print them",
  source: "common practice, no source",
});

/**
 * Brim volumes of household baking pans as kitchen references print them (cups of 236.588 mL): 13 × 9 × 2 in 14 cups,
 * 9 × 9 × 2 in 10 cups, 8 × 8 × 2 in 8 cups, 15 × 10 × 1 in 10 cups. They are nominal: the printed cups are 0.86 to
 * 0.97 of the box that the nominal sizes span, so a tenth is what the sizes allow.
 */
const PUBLISHED: readonly [name: string, volumeMl: number, boxMl: number][] = [
  ["baking pan 13 x 9 in", 14 * 236.588, 330 * 229 * 51e-3],
  ["baking pan 9 x 9 in", 10 * 236.588, 229 * 229 * 51e-3],
  ["baking pan 8 x 8 in", 8 * 236.588, 203 * 203 * 51e-3],
  ["jelly-roll pan 15 x 10 in", 10 * 236.588, 381 * 254 * 25e-3],
];

describe("panVolumeMl against printed pan volumes", () => {
  it.each(PUBLISHED)("%s", (name, volumeMl, boxMl) => {
    const pan = panPreset(name);
    const ours = panVolumeMl(pan, pan.depthMm);
    expect(ours).toBeLessThan(boxMl);
    volumes.relative(ours, volumeMl, 0.1);
  });
});

describe("gastronorm pans", () => {
  /**
   * EN 631 sizes: 1/2 is half the 1/1 in outer length (325 × 265 against 530 × 325), so a 1/2 pan must hold a little
   * less than half; and each depth step adds volume nearly in proportion, a little more as the walls lean out.
   */
  it.each([20, 40, 65, 100])("a 1/2 holds a little under half a 1/1 at %i mm", (depthMm) => {
    const half = panVolumeMl(panPreset(`GN 1/2-${depthMm}`), depthMm);
    const whole = panVolumeMl(panPreset(`GN 1/1-${depthMm}`), depthMm);
    expect(half / whole).toBeGreaterThan(0.42);
    expect(half / whole).toBeLessThan(0.5);
  });
  it("gains a little more than in proportion from 20 to 100 mm", () => {
    const gain = panVolumeMl(panPreset("GN 1/1-100"), 100) / panVolumeMl(panPreset("GN 1/1-20"), 20);
    expect(gain).toBeGreaterThan(5);
    expect(gain).toBeLessThan(5.5);
  });
});
