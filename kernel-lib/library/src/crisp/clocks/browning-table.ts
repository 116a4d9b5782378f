/** Browning is counted from its rate at this temperature (K): 150 °C, a usual surface of a crust. */
export const BROWNING_REFERENCE_K = 423.15;
const GAS_KJMOLK = 0.008314462618;

/** Browning rate of a surface over that at 150 °C: exp[−E/R·(1/T − 1/423 K)], after Arrhenius. */
export function browningRate(surfaceK: number, browningKJmol: number): number {
  return Math.exp((browningKJmol / GAS_KJMOLK) * (1 / BROWNING_REFERENCE_K - 1 / surfaceK));
}

/** Above this ratio of resistances the surface is within a few kelvin of the air, and the last value is carried on. */
const LAST = 25;
const NODES = 101;
const STEP: number = LAST ** (1 / (NODES - 1));
const LOG_STEP: number = Math.log(STEP);
const NODE: Float64Array = Float64Array.from({ length: NODES }, (_, at) => STEP ** at);

/** ∫₁^U exp[−E/R·(1/Ts − 1/423 K)]·u du for one air temperature and activation energy, at nodes of U. */
export interface BrowningTable {
  readonly rate: Float64Array;
  readonly sum: Float64Array;
}

/**
 * The part of the browning clock that depends on the air and the activation energy alone.
 *
 * With U = 1 + h·s/kc the surface is at Ts = Ta − (Ta − Tev)/U, and the front takes dt = G·(kc/h²)·U·dU with
 * G = ρw·Lv/(Ta − Tev). So ∫k dt = k150·G·(kc/h²)·F(U), F(U) = ∫₁^U exp[−E/R·(1/Ts − 1/423 K)]·u du: one table serves
 * every coefficient, coating and thickness. Simpson's rule between 101 geometric nodes.
 */
export function browningTable(airC: number, evaporationC: number, browningKJmol: number): BrowningTable {
  const airK = airC + 273.15;
  const drivingK = airC - evaporationC;
  const rateAt = (u: number): number => browningRate(airK - drivingK / u, browningKJmol) * u;
  const rate = new Float64Array(NODES);
  const sum = new Float64Array(NODES);
  for (let at = 0; at < NODES; at++) {
    rate[at] = rateAt(NODE[at]);
    if (at === 0) continue;
    const middle = rateAt((NODE[at - 1] + NODE[at]) / 2);
    sum[at] = sum[at - 1] + ((NODE[at] - NODE[at - 1]) / 6) * (rate[at - 1] + 4 * middle + rate[at]);
  }
  return { rate, sum };
}

/** F at U, by the cubic that has the sums and rates of the nodes to either side. */
export function browningSum(table: BrowningTable, u: number): number {
  if (u <= 1) return 0;
  const { rate, sum } = table;
  if (u >= LAST) return sum[NODES - 1] + (rate[NODES - 1] / LAST) * ((u * u - LAST * LAST) / 2);
  const at = Math.min(NODES - 2, Math.floor(Math.log(u) / LOG_STEP));
  return sum[at] + cubic(table, at, (u - NODE[at]) / (NODE[at + 1] - NODE[at]));
}

/** U at which F reaches a value: the inverse of `browningSum`, by Newton's steps on the cubic. */
export function browningReach(table: BrowningTable, wanted: number): number {
  if (wanted <= 0) return 1;
  const { rate, sum } = table;
  if (wanted >= sum[NODES - 1])
    return Math.sqrt(LAST * LAST + (2 * (wanted - sum[NODES - 1]) * LAST) / rate[NODES - 1]);
  let low = 0;
  let high = NODES - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (sum[middle] <= wanted) low = middle;
    else high = middle;
  }
  const wide = NODE[high] - NODE[low];
  const rest = wanted - sum[low];
  const slope = (rate[high] - rate[low]) / wide;
  let x = (2 * rest) / (rate[low] + Math.sqrt(rate[low] * rate[low] + 2 * slope * rest)) / wide;
  for (let step = 0; step < 3; step++) {
    const near = 1e-6;
    const there = cubic(table, low, x);
    x -= ((there - rest) * near) / (cubic(table, low, x + near) - there);
  }
  return NODE[low] + x * wide;
}

/** The rise of F past a node, at a share of the way to the next (Hermite). */
function cubic({ rate, sum }: BrowningTable, at: number, x: number): number {
  const wide = NODE[at + 1] - NODE[at];
  const rise = sum[at + 1] - sum[at];
  const [from, to] = [wide * rate[at], wide * rate[at + 1]];
  return x * (from + x * (3 * rise - 2 * from - to + x * (from + to - 2 * rise)));
}
