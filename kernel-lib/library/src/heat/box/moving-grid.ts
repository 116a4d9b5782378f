import { enthalpyOf } from "./box-food";
import type { BoxState } from "./box-state";

/**
 * Food that the grid lines sweep from one cell into its neighbour, and out at the fronts, as the wet core shrinks with
 * its crusts: the heat goes with it.
 */
export function moveGrid(state: BoxState, f: Float64Array): void {
  alongThickness(state, f);
  if (!state.grid.isPiece) return;
  const { ledger, grid, food, specific, frontX, frontY, dimX, dimY, dimZ } = state;
  const { nx, ny, nz, layer, wx, wy, wz } = grid;
  const rho = food.densityKgM3;
  for (let k = 0; k < nz; k++)
    for (let j = 0; j < ny; j++) {
      const row = nx * j + layer * k;
      const swept = -wy[j] * wz[k] * dimY * dimZ * f[ledger.crustX];
      let place = 0;
      for (let i = 0; i + 1 < nx; i++) {
        place += wx[i];
        const moved = swept * place * 0.5 * (specific[row + i] + specific[row + i + 1]);
        f[row + i] += moved;
        f[row + i + 1] -= moved;
      }
      const h = enthalpyOf(food, frontX[j + ny * k]);
      f[row + nx - 1] += swept * h;
      f[ledger.carried] -= rho * swept * h;
    }
  for (let k = 0; k < nz; k++)
    for (let i = 0; i < nx; i++) {
      const column = i + layer * k;
      const swept = -wx[i] * wz[k] * dimX * dimZ * f[ledger.crustY];
      let place = 0;
      for (let j = 0; j + 1 < ny; j++) {
        place += wy[j];
        const one = column + nx * j;
        const moved = swept * place * 0.5 * (specific[one] + specific[one + nx]);
        f[one] += moved;
        f[one + nx] -= moved;
      }
      const h = enthalpyOf(food, frontY[i + nx * k]);
      f[column + nx * (ny - 1)] += swept * h;
      f[ledger.carried] -= rho * swept * h;
    }
}

function alongThickness(state: BoxState, f: Float64Array): void {
  const { ledger, grid, food, specific, frontAbove, frontBelow, dimX, dimY } = state;
  const { nx, nz, layer, halfThickness, wx, wy, wz } = grid;
  const rho = food.densityKgM3;
  const above = f[ledger.crustAbove];
  const below = f[ledger.crustBelow];
  if (above === 0 && below === 0) return;
  let place = 0;
  for (let k = 0; k <= nz; k++) {
    const speed = below * (1 - place) - above * place;
    for (let at = 0; at < layer; at++) {
      const j = nx === 1 ? 0 : Math.floor(at / nx);
      const area = wx[at - nx * j] * wy[j] * dimX * dimY * speed;
      if (k === 0) {
        if (halfThickness) continue;
        const h = enthalpyOf(food, frontBelow[at]);
        f[at] -= area * h;
        f[ledger.carried] += rho * area * h;
      } else if (k === nz) {
        const h = enthalpyOf(food, frontAbove[at]);
        f[at + layer * (nz - 1)] += area * h;
        f[ledger.carried] -= rho * area * h;
      } else {
        const other = at + layer * k;
        const swept = area * 0.5 * (specific[other - layer] + specific[other]);
        f[other - layer] += swept;
        f[other] -= swept;
      }
    }
    if (k < nz) place += wz[k];
  }
}
