/** Cell widths from the middle (first) to the surface (last) that sum to 1, so that the last is `share` of an even one. */
export function gradedCells(count: number, share: number): Float64Array {
  // place(ξ) = 1 − sinh(a(1 − ξ))/sinh(a) is steep at the middle and flat at the surface: slope a/sinh(a) there
  let low = 0;
  let high = 20;
  for (let halving = 0; halving < 60; halving++) {
    const a = (low + high) / 2;
    if (a / Math.sinh(a) > share) low = a;
    else high = a;
  }
  const a = (low + high) / 2;
  const place = (xi: number): number => (a < 1e-6 ? xi : 1 - Math.sinh(a * (1 - xi)) / Math.sinh(a));
  const widths = new Float64Array(count);
  for (let cell = 0; cell < count; cell++) widths[cell] = place((cell + 1) / count) - place(cell / count);
  return widths;
}

/**
 * Value at the plane of symmetry from the three cells next to it: the parabola with no slope there, with no more bend
 * than the three cells show, so that a thawing front nearby does not throw it off.
 */
export function toCentre(first: number, second: number, third: number, widths: Float64Array): number {
  const x0 = widths[0] / 2;
  const x1 = widths[0] + widths[1] / 2;
  const x2 = widths[0] + widths[1] + widths[2] / 2;
  const rise = (second - first) / (x1 - x0);
  const symmetric = rise / (x1 + x0);
  const seen = ((third - second) / (x2 - x1) - rise) / (x2 - x0);
  if (symmetric * seen <= 0) return first;
  return first - x0 * x0 * Math.sign(seen) * Math.min(Math.abs(symmetric), Math.abs(seen));
}

/**
 * Coldest point while heating, warmest while cooling, of a column of even cells between its two faces: the turn of the
 * parabola about the slowest cell, with no more bend than its neighbours show, so that a flat part stays flat.
 */
export function slowestPoint(column: Float64Array, bottomC: number, topC: number, heating: boolean): number {
  const sign = heating ? 1 : -1;
  const count = column.length;
  let slowest = 0;
  for (let k = 1; k < count; k++) if (sign * column[k] < sign * column[slowest]) slowest = k;
  let extreme = sign * column[slowest];
  if (slowest > 0 && slowest < count - 1) {
    const bendAt = (k: number): number => sign * (column[k - 1] - 2 * column[k] + column[k + 1]);
    let bend = bendAt(slowest);
    if (slowest > 1) bend = Math.min(bend, bendAt(slowest - 1));
    if (slowest < count - 2) bend = Math.min(bend, bendAt(slowest + 1));
    const slope = (sign * (column[slowest + 1] - column[slowest - 1])) / 2;
    if (bend > 0) extreme -= Math.min((slope * slope) / (2 * bend), bend / 8);
  }
  return sign * Math.min(extreme, sign * bottomC, sign * topC);
}

/** Where the recorded temperatures are, as a share of the thickness: the faces and the middles of the cells. */
export function placeNodes(places: Float64Array, wz: Float64Array, halfThickness: boolean): void {
  const nz = wz.length;
  let low = 0;
  for (let k = 0; k < nz; k++) {
    const middle = low + wz[k] / 2;
    if (halfThickness) {
      places[nz + 2 + k] = 0.5 + middle / 2;
      places[nz - k] = 0.5 - middle / 2;
    } else places[1 + k] = middle;
    low += wz[k];
  }
  if (halfThickness) places[nz + 1] = 0.5;
  places[places.length - 1] = 1;
}
