import { positive, within } from "../../check/check";

/** A rectangular piece against its shortest side. */
export interface EquivalentDimensionOptions {
  /** h·(half the shortest side)/k [-] */
  readonly biot: number;
  /** the other two sides over the shortest [-], each at least 1 */
  readonly sideRatios: readonly [number, number];
  /** default `"pham"` */
  readonly method?: "pham" | "cleland";
}

/**
 * How many times faster a rectangular piece freezes than the slab of its shortest side: the equivalent heat transfer
 * dimension, 1 for a slab, 3 for a cube.
 *
 * Pham (1991): E = 1 + (1 + 2/Bi)/(β1² + 2β1/Bi) + (1 + 2/Bi)/(β2² + 2β2/Bi).
 * Cleland et al. (1987): E = 1 + E1 + E2, X(φ) = φ/(Bi^1.34 + φ), E1 = X(2.32/β1^1.77)/β1 + [1 − X]·0.73/β1^2.50,
 * E2 = X(2.32/β2^1.77)/β2 + [1 − X]·0.50/β2^3.69, β1 ≤ β2.
 *
 * @returns E [-], 1 to 3; the freezing time of the piece is the slab's divided by E
 *
 * Range: bricks with side ratios from 1; both forms from memory. For Bi → 0 both tend to 1 + 1/β1 + 1/β2. For heating
 * with a sharp core limit take `simulatePiece`: E holds for the whole of freezing.
 *
 * @example
 * equivalentDimension({ biot: 0.5, sideRatios: [2, 3] }); // → 1.654762
 * equivalentDimension({ biot: 1, sideRatios: [1.5, 2], method: "cleland" }); // → 1.703696
 *
 * Reference: Pham Q.T. (1991), International Journal of Refrigeration 14; Cleland D.J. et al. (1987), International
 * Journal of Refrigeration 10:22-31.
 */
export function equivalentDimension(options: EquivalentDimensionOptions): number {
  const biot = positive(options.biot, "equivalentDimension: biot", "");
  const [one, other] = options.sideRatios;
  within(one, 1, 1e6, "equivalentDimension: sideRatios[0]", "");
  within(other, 1, 1e6, "equivalentDimension: sideRatios[1]", "");
  if (options.method === "cleland") return cleland(biot, Math.min(one, other), Math.max(one, other));
  const side = (ratio: number): number => (1 + 2 / biot) / (ratio ** 2 + (2 * ratio) / biot);
  return 1 + side(one) + side(other);
}

function cleland(biot: number, shorter: number, longer: number): number {
  const blend = (ratio: number): number => {
    const phi = 2.32 / ratio ** 1.77;
    return phi / (biot ** 1.34 + phi);
  };
  const first = blend(shorter);
  const second = blend(longer);
  return (
    1 +
    first / shorter +
    ((1 - first) * 0.73) / shorter ** 2.5 +
    second / longer +
    ((1 - second) * 0.5) / longer ** 3.69
  );
}
