/** Activation energy over the gas constant (K): 64 151 J/mol after Zanoni, Peri & Bruno (1995), over 8.314462618. */
export const BROWNING_K: number = 64151 / 8.314462618;

/** Above this ratio of resistances the surface is within a few kelvin of the air, and the last value is carried on. */
const LAST = 25;
const NODES = 241;
const STEP: number = LAST ** (1 / (NODES - 1));

/** ∫₁^U exp(−E/RTs)·u du for one air temperature, at nodes of U. */
export interface BrowningTable {
  readonly node: Float64Array;
  readonly rate: Float64Array;
  readonly sum: Float64Array;
}

/**
 * The part of the browning clock that depends on the air alone.
 *
 * With U = 1 + h·s/kc the surface is at Ts = Ta − (Ta − Tev)/U, and the front takes dt = G·(kc/h²)·U·dU with
 * G = ρw·Lv/(Ta − Tev). So ∫exp(−E/RTs)dt = G·(kc/h²)·F(U), F(U) = ∫₁^U exp(−E/RTs)·u du: one table for an air
 * temperature serves every coefficient, coating and thickness. Simpson's rule between 241 geometric nodes.
 */
export function browningTable(airC: number, evaporationC: number): BrowningTable {
  const airK = airC + 273.15;
  const drivingK = airC - evaporationC;
  const rateAt = (u: number): number => Math.exp(-BROWNING_K / (airK - drivingK / u)) * u;
  const node = new Float64Array(NODES);
  const rate = new Float64Array(NODES);
  const sum = new Float64Array(NODES);
  for (let at = 0; at < NODES; at++) {
    node[at] = STEP ** at;
    rate[at] = rateAt(node[at]);
    if (at === 0) continue;
    const middle = rateAt((node[at - 1] + node[at]) / 2);
    sum[at] = sum[at - 1] + ((node[at] - node[at - 1]) / 6) * (rate[at - 1] + 4 * middle + rate[at]);
  }
  return { node, rate, sum };
}

/** F at U, by the trapezoid of the rate within a node step. */
export function browningSum(table: BrowningTable, u: number): number {
  if (u <= 1) return 0;
  const { node, rate, sum } = table;
  if (u >= LAST) return sum[NODES - 1] + (rate[NODES - 1] / LAST) * ((u * u - LAST * LAST) / 2);
  const at = Math.min(NODES - 2, Math.floor(Math.log(u) / Math.log(STEP)));
  const wide = node[at + 1] - node[at];
  const past = u - node[at];
  const own = rate[at] * past + (((rate[at + 1] - rate[at]) / wide) * past * past) / 2;
  const whole = ((rate[at] + rate[at + 1]) * wide) / 2;
  return sum[at] + (own * (sum[at + 1] - sum[at])) / whole;
}

/** U at which F reaches a value: the inverse of `browningSum`. */
export function browningReach(table: BrowningTable, wanted: number): number {
  if (wanted <= 0) return 1;
  const { node, rate, sum } = table;
  if (wanted >= sum[NODES - 1])
    return Math.sqrt(LAST * LAST + (2 * (wanted - sum[NODES - 1]) * LAST) / rate[NODES - 1]);
  let low = 0;
  let high = NODES - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (sum[middle] <= wanted) low = middle;
    else high = middle;
  }
  const wide = node[high] - node[low];
  const whole = ((rate[low] + rate[high]) * wide) / 2;
  const own = ((wanted - sum[low]) * whole) / (sum[high] - sum[low]);
  const slope = (rate[high] - rate[low]) / wide;
  return node[low] + (2 * own) / (rate[low] + Math.sqrt(rate[low] * rate[low] + 2 * slope * own));
}
