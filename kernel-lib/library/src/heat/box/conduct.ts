import type { BoxState } from "./box-state";

/**
 * Lets heat flow between the cells of a box: the difference of their potentials over the distance of their middles.
 *
 * With potentials in place of conductivities a freezing cell passes on what the whole of its curve conducts, and errors
 * are on the late side.
 */
export function conduct(state: BoxState, f: Float64Array): void {
  const { nx, ny, nz, layer, isPiece, wx, wy, wz, perPairX, perPairY, perPairZ } = state.grid;
  const { potential, dimX, dimY, dimZ } = state;
  const rho = state.food.densityKgM3;
  const acrossZ = (2 * dimX * dimY) / (rho * dimZ);
  for (let k = 0; k + 1 < nz; k++)
    for (let j = 0; j < ny; j++) {
      const row = nx * j + layer * k;
      const strip = acrossZ * perPairZ[k] * wy[j];
      for (let i = 0; i < nx; i++) {
        const one = row + i;
        const other = one + layer;
        const q = strip * wx[i] * (potential[one] - potential[other]);
        f[one] -= q;
        f[other] += q;
      }
    }
  if (!isPiece) return;
  const acrossX = (2 * dimY * dimZ) / (rho * dimX);
  const acrossY = (2 * dimX * dimZ) / (rho * dimY);
  for (let k = 0; k < nz; k++)
    for (let j = 0; j < ny; j++) {
      const row = nx * j + layer * k;
      const strip = acrossX * wy[j] * wz[k];
      for (let i = 0; i + 1 < nx; i++) {
        const one = row + i;
        const q = strip * perPairX[i] * (potential[one] - potential[one + 1]);
        f[one] -= q;
        f[one + 1] += q;
      }
      if (j + 1 === ny) continue;
      const slice = acrossY * wz[k] * perPairY[j];
      for (let i = 0; i < nx; i++) {
        const one = row + i;
        const other = one + nx;
        const q = slice * wx[i] * (potential[one] - potential[other]);
        f[one] -= q;
        f[other] += q;
      }
    }
}
