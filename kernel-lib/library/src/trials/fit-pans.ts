import type { Slip } from "../check/slip";
import { heldText } from "../pan/held-text";
import type { Pan } from "../pan/pan";
import { slabMassG } from "../pan/slab-mass";
import { cellSlip } from "../units/columns/read-records";
import { ownMassText } from "../units/mass-text";
import { rangeText } from "../units/range-text";
import type { KitchenUnits } from "../units/unit-table";
import type { KitchenTrial, KitchenVariant } from "./kitchen";
import type { FileOf } from "./known-names";
import { trialNotices } from "./pieces/trial-notices";
import { thicknessOfTrial } from "./thickness-of-trial";
import type { Trial } from "./trial";
import type { Variant } from "./variant";

/** What `fitPans` works from: what of it is not sound is left out. */
export interface FitPansOptions {
  readonly pans: FileOf<Pan> | null;
  readonly variants: FileOf<Variant> | null;
  readonly logs: readonly FileOf<Trial>[];
  /** what a formula makes, by its id */
  readonly mixes: ReadonlyMap<string, Mix>;
  /** units of what is said */
  readonly units: KitchenUnits;
}

/** What a formula makes. */
export type Mix = Pick<KitchenVariant, "formula" | "composition" | "densityKgM3" | "limit">;

/** The variants and trials of a kitchen, as far as their pans and mixes are sound. */
export interface FittedPans {
  readonly variants: readonly KitchenVariant[];
  readonly trials: readonly KitchenTrial[];
  /** batches that their pan cannot hold */
  readonly slips: readonly Slip[];
  /** trials whose probes, batch mass and pieces disagree */
  readonly notices: readonly string[];
}

/** A batch on a pan, with what the pan holds of its mix. */
interface Batch {
  readonly panId: string;
  readonly batchG: number;
  readonly brimG: number;
  /** the slip that it is, when it is one alone */
  readonly slip: Slip;
}

/**
 * Gives each variant its mix and each trial its thickness, and holds every batch against what its pan holds. Where no batch
 * on a pan fits it, the pan was measured or typed wrong, and that is one slip.
 */
export function fitPans(options: FitPansOptions): FittedPans {
  const { pans, mixes, units } = options;
  const panOf = uniqueBy(pans?.records ?? [], ({ id }) => id);
  const batches: Batch[] = [];
  const cellsOf = new Map<unknown, ReadonlyMap<number, Readonly<Record<string, string>>>>();
  for (const read of [options.variants, ...options.logs])
    cellsOf.set(read, new Map(read?.drafts.map(({ row, cells }) => [row, cells])));
  const hold = <T extends Variant | Trial>(read: FileOf<T>, at: number, densityKgM3: number): boolean => {
    const { panId, batchG } = read.records[at];
    const pan = panOf.get(panId);
    if (pan === undefined || batchG === null) return pan !== undefined;
    const brimG = slabMassG({ pan, thicknessMm: pan.depthMm, densityKgM3 });
    const expected = `at most ${heldText(brimG, units)}, which is what ${panId} holds of this mix`;
    const { file, headings } = read as FileOf<Variant | Trial>;
    const row = read.rows[at];
    const cells = cellsOf.get(read)?.get(row) ?? {};
    batches.push({ panId, batchG, brimG, slip: cellSlip({ file, row, heading: headings.batchG, cells, expected }) });
    return batchG <= brimG;
  };

  const variants = (options.variants?.records ?? []).flatMap((variant, at) => {
    const mix = mixes.get(variant.formulaId);
    if (mix === undefined) return [];
    hold(options.variants as FileOf<Variant>, at, mix.densityKgM3);
    return [Object.freeze({ ...variant, ...mix })];
  });
  const variantOf = uniqueBy(variants, ({ variantId }) => variantId);
  const trials = options.logs.flatMap((log) =>
    log.records.flatMap((trial, at): KitchenTrial[] => {
      const densityKgM3 = variantOf.get(trial.variantId)?.densityKgM3;
      if (densityKgM3 === undefined || !hold(log, at, densityKgM3)) return [];
      const slab = thicknessOfTrial({ trial, pan: panOf.get(trial.panId) as Pan, densityKgM3 });
      return [Object.freeze({ ...trial, thicknessMm: slab.thicknessMm, thicknessSdMm: slab.sdMm })];
    }),
  );
  const notices = trialNotices({ kitchen: { pans: pans?.records ?? [], variants, units }, trials });
  return { variants, trials, slips: pans === null ? [] : overfull(pans, batches, units), notices };
}

/** Things by their name; none for a name that stands twice, as it says nothing. */
function uniqueBy<T>(things: readonly T[], nameOf: (thing: T) => string): ReadonlyMap<string, T> {
  const times = new Map<string, number>();
  for (const thing of things) times.set(nameOf(thing), (times.get(nameOf(thing)) ?? 0) + 1);
  return new Map(things.filter((thing) => times.get(nameOf(thing)) === 1).map((thing) => [nameOf(thing), thing]));
}

function overfull(
  { file, records, rows }: FileOf<Pan>,
  batches: readonly Batch[],
  units: KitchenUnits,
): readonly Slip[] {
  return records.flatMap((pan, at): readonly Slip[] => {
    const onPan = batches.filter(({ panId }) => panId === pan.id);
    const over = onPan.filter(({ batchG, brimG }) => batchG > brimG);
    if (over.length < 2 || over.length < onPan.length) return over.map(({ slip }) => slip);
    const masses = over.map(({ batchG }) => batchG).sort((a, b) => a - b);
    const spread = rangeText([masses[0], masses.at(-1) as number], (massG) => ownMassText(massG, units));
    const expected = `sizes of a pan that holds what is spread on it, ${spread}`;
    const got = `sizes that hold ${heldText(over[0].brimG, units)}`;
    return [{ file, row: rows[at], at: null, expected, got, nearest: null }];
  });
}
