/**
 * Adds a row to a plan (sign 1) or takes it away (−1), in place: with u = (XᵀX)⁻¹x and d = xᵀu, (XᵀX)⁻¹ −= sign u uᵀ/(1 + sign d)
 * (Sherman & Morrison 1950), and each row's own zᵀ(XᵀX)⁻¹z with it. |XᵀX| is multiplied by 1 + sign d.
 *
 * @param own zᵀ(XᵀX)⁻¹z of every row
 * @param at place of the row x among the rows
 */
export function stepInverse(
  inverse: Float64Array,
  own: Float64Array,
  rows: Float64Array,
  at: number,
  sign: 1 | -1,
): void {
  const size = rows.length / own.length;
  const u = new Float64Array(size);
  let d = 0;
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) u[i] += inverse[i * size + j] * rows[at * size + j];
    d += u[i] * rows[at * size + i];
  }
  const scale = sign / (1 + sign * d);
  for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) inverse[i * size + j] -= scale * u[i] * u[j];
  for (let row = 0; row < own.length; row++) {
    let cross = 0;
    for (let i = 0; i < size; i++) cross += u[i] * rows[row * size + i];
    own[row] -= scale * cross * cross;
  }
}
