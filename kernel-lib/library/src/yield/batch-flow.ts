import { fail, notNegative, positive, within } from "../check/check";
import type { CoatingLayer } from "../food/formula/formula";
import { coatPiece } from "./coat-piece";

/** A yield with its doubt (% of the mass before). */
export interface FlowYield {
  readonly percent: number;
  /** standard error (% points); 0 unless given */
  readonly sePercent?: number;
}

/** What `batchFlow` works from. */
export interface BatchFlowOptions {
  /** mix in the bowl (g) */
  readonly mixG: number;
  /** mix that stays in bowl and on tools (% of the mix); 1 unless given, our judgement */
  readonly bowlLossPercent?: number;
  /** share of the slab that becomes pieces: `yieldFraction` of `cutGrid` */
  readonly cutYieldFraction: number;
  readonly pieces: number;
  /** surface of a bare piece (mm²), to scale pickups; left out: pickups as stated */
  readonly surfaceMm2?: number;
  /** coating layers; none unless given */
  readonly coating?: readonly CoatingLayer[];
  /** coated to frozen; nothing is lost unless given */
  readonly cook?: FlowYield;
  /** frozen to plate; nothing is lost unless given */
  readonly reheat?: FlowYield;
  /** mass of a piece weighed after cutting (g), where known: checked against the batch */
  readonly weighedPieceG?: number;
}

/** One stage on the way from bowl to plate. */
export interface FlowStage {
  readonly stage: string;
  /** mass of the whole batch after this stage (g) */
  readonly massG: number;
  /** standard uncertainty (g), from pickups and yields */
  readonly seG: number;
  /** what this stage added or, negative, took (g) */
  readonly changeG: number;
  /** mass of one piece (g); `null` before cutting */
  readonly pieceG: number | null;
  /** mass on the mix in the bowl (%) */
  readonly ofMixPercent: number;
}

/** A batch from bowl to plate. */
export interface BatchFlow {
  readonly pieces: number;
  readonly stages: readonly FlowStage[];
  /** what reaches the plate on the mix in the bowl (%); above 100 when coating adds more than heat takes */
  readonly plateOfMixPercent: number;
}

/**
 * The chain from batch to plate: bowl, slab, cut pieces, coating layer by layer, cook, reheat. Each stage's mass with
 * its doubt and its change.
 *
 * Pickups share their error over all pieces; stages are independent.
 *
 * @param options batch, cut, coating, yields
 * @returns the stages in order
 * @example
 * const flow = batchFlow({ mixG: 1150, cutYieldFraction: 0.95, pieces: 70, reheat: { percent: 93, sePercent: 1 } });
 * flow.plateOfMixPercent; // → 87.47
 */
export function batchFlow(options: BatchFlowOptions): BatchFlow {
  const mixG = positive(options.mixG, "batchFlow: mixG", "g");
  const bowl = within(options.bowlLossPercent ?? 1, 0, 50, "batchFlow: bowlLossPercent", "%") / 100;
  const kept = within(options.cutYieldFraction, 0.05, 1, "batchFlow: cutYieldFraction", "");
  const { pieces } = options;
  if (!(Number.isInteger(pieces) && pieces > 0)) fail("batchFlow: pieces", "must be a whole number > 0", pieces);
  const stages: FlowStage[] = [];
  const add = (stage: string, massG: number, seG: number, cut: boolean): void => {
    const before = stages.length === 0 ? massG : stages[stages.length - 1].massG;
    stages.push(
      Object.freeze({
        stage,
        massG,
        seG,
        changeG: massG - before,
        pieceG: cut ? massG / pieces : null,
        ofMixPercent: (100 * massG) / mixG,
      }),
    );
  };
  add("mix in the bowl", mixG, 0, false);
  add("slab on the pan", mixG * (1 - bowl), 0, false);
  const cutG = mixG * (1 - bowl) * kept;
  const pieceG = cutG / pieces;
  if (options.weighedPieceG !== undefined) {
    const weighedG = positive(options.weighedPieceG, "batchFlow: weighedPieceG", "g");
    if (Math.abs(weighedG / pieceG - 1) > 0.1) {
      const must = `must be near the ${pieceG.toFixed(1)} g that ${pieces} pieces of ${cutG.toFixed(0)} g give`;
      fail("batchFlow: weighedPieceG", must, weighedG);
    }
  }
  add("cut pieces", cutG, 0, true);
  let relative = 0;
  if (options.coating && options.coating.length > 0) {
    const coated = coatPiece({ layers: options.coating, pieceG, surfaceMm2: options.surfaceMm2 });
    for (const layer of coated.layers) {
      relative = Math.hypot(relative, layer.layerSeG / layer.afterG);
      add(`with ${layer.layer}`, layer.afterG * pieces, layer.afterG * pieces * relative, true);
    }
  }
  for (const [name, step] of [
    ["cooked and frozen", options.cook],
    ["on the plate", options.reheat],
  ] as const) {
    if (!step) continue;
    const percent = within(step.percent, 20, 102, `batchFlow: ${name}`, "% of the mass before");
    const se = notNegative(step.sePercent ?? 0, `batchFlow: ${name}, sePercent`, "%");
    relative = Math.hypot(relative, se / percent);
    const massG = (stages[stages.length - 1].massG * percent) / 100;
    add(name, massG, massG * relative, true);
  }
  const last = stages[stages.length - 1];
  return Object.freeze({ pieces, stages: Object.freeze(stages), plateOfMixPercent: last.ofMixPercent });
}
