import { capacityOf, conductivityOf } from "./box-food";
import type { BoxState } from "./box-state";

/** Prepares Gershgorin's bound of a box, over columns: heat that a cell takes acts on itself and on its neighbours. */
export function fastestDecay(state: BoxState): () => number {
  const { grid, food, temperature } = state;
  const { nx, ny, nz, isPiece, halfThickness } = grid;
  const alongX = axisDecay(grid.wx, grid.perPairX, false, state.sides !== undefined);
  const alongY = axisDecay(grid.wy, grid.perPairY, false, state.sides !== undefined);
  const alongZ = axisDecay(grid.wz, grid.perPairZ, !halfThickness, true);
  return () => {
    const perX = isPiece ? 1 / (state.dimX * state.dimX) : 0;
    const perY = isPiece ? 1 / (state.dimY * state.dimY) : 0;
    const perZ = 1 / (state.dimZ * state.dimZ);
    let most = 0;
    for (let k = 0, cell = 0; k < nz; k++)
      for (let j = 0; j < ny; j++) {
        const beside = alongZ[k] * perZ + alongY[j] * perY;
        for (let i = 0; i < nx; i++, cell++) {
          const c = temperature[cell];
          // in the middle of freezing the bound may fall within a step: never below what the thawed food gives
          const capacity = c >= food.freezingC ? food.thawedJkgK : Math.min(food.thawedJkgK, capacityOf(food, c));
          most = Math.max(most, ((beside + alongX[i] * perX) * conductivityOf(food, c)) / capacity);
        }
      }
    return (1.1 * most) / food.densityKgM3;
  };
}

/** For each cell along one axis: twice what it passes to its neighbours and once what it passes to a face. */
function axisDecay(widths: Float64Array, perPair: Float64Array, openFirst: boolean, openLast: boolean): Float64Array {
  const count = widths.length;
  return widths.map((width, cell) => {
    const next = cell + 1 < count ? perPair[cell] : 0;
    const before = cell > 0 ? perPair[cell - 1] : 0;
    const faces = (cell === 0 && openFirst ? 1 : 0) + (cell === count - 1 && openLast ? 1 : 0);
    return (4 * (next + before) + (2 * faces) / width) / width;
  });
}
