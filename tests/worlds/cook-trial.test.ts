import { seededRandom } from "slabwright/statistics";
import { describe, expect, it } from "vitest";
import { cookTrial, type Session, type TrialPlan } from "./cook-trial";
import { seedOf } from "./make-worlds";
import { PRODUCTS, type Product } from "./products";
import { drawWorld, ownSetting } from "./world";
import { logText } from "./world-kitchen";

const product = PRODUCTS.find(({ id }) => id === "cauliflower-bites") as Product;
const world = drawWorld(product, seedOf(product, 1));
const session: Session = {
  date: "2026-01-07",
  day: 1,
  slabMm: product.thicknessMm,
  coat: 1,
  probesMm: [11, 11.2, 10.9],
  batchG: 1100,
  tasters: [
    { lean: 0, slope: 1, sd: 0.3 },
    { lean: -0.8, slope: 1, sd: 0.3 },
  ],
  probeK: 0,
};
const plan: TrialPlan = { setting: ownSetting(world, null), way: "crisp", guessMin: 9, guessCoreMin: 9 };

describe("cookTrial", () => {
  const crisp = cookTrial(world, session, plan, seededRandom(4));

  it("looks until it is crisp, and takes out then or a little later", () => {
    const { notCrispMin, crispMin, timeMin, looksMin } = crisp;
    expect(crispMin).not.toBeNull();
    expect(timeMin).toBeGreaterThanOrEqual(crispMin as number);
    expect(timeMin).toBeLessThanOrEqual((crispMin as number) + 1.5);
    if (notCrispMin !== null) expect(notCrispMin).toBeLessThan(crispMin as number);
    expect(looksMin.every((look) => look < timeMin)).toBe(true);
  });

  it("reads the core as it comes out and at its highest, weighs and tastes", () => {
    expect(crisp.restedCoreC).toBeGreaterThanOrEqual(crisp.outCoreC);
    expect(crisp.afterG).toBeLessThan(0.95 * crisp.beforeG);
    expect(crisp.crispScores.length).toBe(2);
    expect(crisp.crispScores[1]).toBeLessThan(crisp.crispScores[0]);
  });

  it("takes out early without a crisp look, and late with a browner piece", () => {
    const early = cookTrial(world, session, { ...plan, way: "early" }, seededRandom(4));
    const late = cookTrial(world, session, { ...plan, way: "late" }, seededRandom(4));
    expect(early.crispMin).toBeNull();
    expect(early.outCoreC).toBeLessThan(crisp.outCoreC);
    expect(late.timeMin).toBeGreaterThan(crisp.timeMin);
    expect(late.brownScores[0]).toBeGreaterThan(crisp.brownScores[0]);
  });

  it.each(["short", "full"] as const)("writes a %s log of one line a trial under the headings", (style) => {
    const [headings, line] = logText([crisp], product, style).trimEnd().split("\n");
    const cells = line.split(",");
    const cell = (heading: string): string | undefined => cells[headings.split(",").indexOf(heading)];
    expect(cells.length).toBe(headings.split(",").length);
    expect(cell("core_c")).toBe(String(style === "short" ? crisp.restedCoreC : crisp.outCoreC));
    expect(cell("rested_core_c")).toBe(style === "short" ? undefined : String(crisp.restedCoreC));
    expect(cell("thickness_mm")).toBe("11;11.2;10.9");
  });
});
