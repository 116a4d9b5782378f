import fc from "fast-check";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";
import type { Pan } from "../../../../kernel-lib/library/src/pan/pan";
import { slabMassG } from "../../../../kernel-lib/library/src/pan/slab-mass";
import type { Kitchen, KitchenVariant } from "../../../../kernel-lib/library/src/trials/kitchen";

const demo = loadKitchen();

/** A kitchen with one variant, and how many trials of it are logged. */
export interface GeneratedKitchen {
  readonly kitchen: Kitchen;
  readonly variant: KitchenVariant;
  /** what a failed property prints: the numbers that were drawn, not the whole kitchen */
  readonly [fc.toStringMethod]: () => string;
}

/** One pan, sheets alone or wells alone, of any size and depth that a kitchen has. */
const pansOf = (wells: boolean): fc.Arbitrary<readonly Pan[]> =>
  fc
    .array(
      fc.record({
        size: fc.double({ min: 60, max: 700, noNaN: true }),
        share: fc.double({ min: 0.4, max: 1, noNaN: true }),
        depthMm: fc.double({ min: 5, max: 70, noNaN: true }),
        wells: fc.integer({ min: 1, max: 48 }),
        count: fc.integer({ min: 1, max: 4 }),
      }),
      { minLength: 1, maxLength: 3 },
    )
    .map((sizes) =>
      sizes.map(({ size, share, depthMm, wells: many, count }, at): Pan => {
        const base = {
          id: `pan-${at}`,
          name: `tray ${at}`,
          depthMm,
          wallTaperDeg: 5,
          count,
          standing: "measured",
        } as const;
        return wells
          ? { ...base, shape: "wells", bottomDiameterMm: 20 + size / 10, wells: many }
          : { ...base, shape: "rectangle", bottomLengthMm: size, bottomWidthMm: share * size, cornerRadiusMm: 4 };
      }),
    );

/** Kitchens as people have them: in either units, with one pan or several, any appliance, no trials or a few. */
export const generatedKitchen = (mostTrials: number): fc.Arbitrary<GeneratedKitchen> =>
  fc
    .record({
      units: fc.constantFrom("us" as const, "metric" as const),
      from: fc.constantFrom(...demo.variants),
      trials: fc.integer({ min: 0, max: mostTrials }),
      fill: fc.double({ min: 0.1, max: 0.95, noNaN: true }),
      rows: fc.integer({ min: 1, max: 12 }),
      columns: fc.integer({ min: 1, max: 12 }),
      setpointC: fc.double({ min: 100, max: 260, noNaN: true }),
      startC: fc.constantFrom(-18, 4),
      longestMin: fc.integer({ min: 5, max: 60 }),
      floorCm2: fc.double({ min: 60, max: 4000, noNaN: true }),
    })
    .chain(({ units, from, trials, fill, floorCm2, ...changed }) =>
      pansOf(from.form === "batter").map((pans): GeneratedKitchen => {
        const [pan] = pans;
        const thicknessMm = fill * pan.depthMm;
        const variant: KitchenVariant = {
          ...from,
          ...changed,
          ...(from.form === "batter" ? { rows: 1, columns: 1 } : {}),
          trimMm: pan.shape === "wells" ? 0 : 2,
          panId: pan.id,
          batchG: slabMassG({ pan, thicknessMm, densityKgM3: from.densityKgM3 }),
        };
        const logged = demo.trials.filter((trial) => trial.variantId === from.variantId).slice(0, trials);
        const kitchen: Kitchen = {
          ...demo,
          units,
          pans,
          appliances: demo.appliances.map((appliance) => ({ ...appliance, floorCm2 })),
          variants: [variant],
          trials: logged.map((trial) => ({ ...trial, panId: pan.id })),
          notices: [],
        };
        const drawn = { units, variantId: from.variantId, trials, fill, floorCm2, ...changed, pans };
        return { kitchen, variant, [fc.toStringMethod]: () => JSON.stringify(drawn) };
      }),
    );
