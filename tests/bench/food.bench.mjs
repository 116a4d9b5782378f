// Macros by Monte Carlo and search over all foods. Peer for the draws: numpy through python3, where it is installed.
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { formulaTotals, pieceMacros } from "slabwright";
import { parseFormula, parseIngredients, searchFoods } from "slabwright/food";
import { pieceMacrosMonteCarlo } from "slabwright/macros";
import { loadFoods } from "slabwright/notebook";

const DRAWS = 10_000;
const LINES = 20;
const QUERIES = [
  "ground turkey raw",
  "lentils",
  "bread crumbs dry",
  "chickpea flour",
  "corn meal yellow",
  "oil canola",
];

/** Middle of repeated timings (ms), after two that warm up. */
function medianMs(repeats, work) {
  work();
  work();
  const times = Array.from({ length: repeats }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return times[Math.floor(repeats / 2)];
}

/** A coated formula of 20 ingredients, from the demo kitchen's table. */
function longFormula() {
  const read = (path) => readFileSync(new URL(`../../data/${path}`, import.meta.url), "utf8");
  const ingredients = parseIngredients(read("ingredients.csv"), "ingredients.csv");
  const coated = parseFormula(read("formulas/turkey-sage.json"), "turkey-sage.json");
  const used = new Set(coated.mix.map((line) => line.ingredient));
  const more = ingredients.filter((one) => !used.has(one.id)).slice(0, LINES - coated.mix.length);
  const mix = [...coated.mix, ...more.map((one) => ({ ingredient: one.id, amount: "20 g" }))];
  return formulaTotals({ ...coated, mix }, ingredients);
}

// The same calculation in numpy: 20 weights, 11 composition errors, 4 layers, piece, two yields, two fat retentions;
// 48 outputs with mean, standard deviation and middle 95 %.
const NUMPY = `
import time, sys
import numpy as np
draws, lines, k, layers = ${DRAWS}, ${LINES}, 11, 4
rng = np.random.default_rng(1)
content = rng.random((lines, k)) * 20
layer = rng.random((layers, k)) * 40
def run():
    masses = 50 + rng.standard_normal((draws, lines))
    out = 22 * (masses @ content / masses.sum(1, keepdims=True) + 0.1 * rng.standard_normal((draws, k))) / 100
    mass = 22 + rng.standard_normal(draws)
    for l in range(layers):
        on = mass * (0.08 + 0.01 * rng.standard_normal(draws))
        out = out + (on * (1 + 0.05 * rng.standard_normal(draws)))[:, None] * layer[l] / 100
        mass = mass + on
    views = [out, 100 * out / mass[:, None]]
    for s in range(2):
        mass = mass * (0.9 + 0.01 * rng.standard_normal(draws))
        out = out * (1 - 0.01 * rng.standard_normal(draws))[:, None]
        views.append(100 * out / mass[:, None])
    every = np.concatenate(views + [np.repeat(mass[:, None], 4, 1)], axis=1)
    return every.mean(0), every.std(0, ddof=1), np.percentile(every, [2.5, 97.5], axis=0)
run(); run()
times = []
for _ in range(15):
    start = time.perf_counter(); run(); times.append(time.perf_counter() - start)
print(1000 * sorted(times)[7])
`;

function numpyMs() {
  try {
    return Number(execFileSync("python3", ["-c", NUMPY], { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] }));
  } catch {
    return null;
  }
}

export async function rows() {
  const start = performance.now();
  const foods = loadFoods();
  const loadMs = performance.now() - start;
  const firstStart = performance.now();
  searchFoods(foods, QUERIES[0]);
  const firstMs = performance.now() - firstStart;
  const searchMs = medianMs(15, () => QUERIES.map((query) => searchFoods(foods, query))) / QUERIES.length;

  const totals = longFormula();
  const options = {
    totals,
    pieceG: 24,
    pieceSeG: 1,
    surfaceMm2: 5600,
    cook: { yieldPercent: 92, yieldSePercent: 1, fatRetentionPercent: 95, fatRetentionSePercent: 2 },
    reheat: { yieldPercent: 86, yieldSePercent: 1.5, fatRetentionPercent: 98, fatRetentionSePercent: 1 },
  };
  const drawnMs = medianMs(15, () => pieceMacrosMonteCarlo({ ...options, draws: DRAWS }));
  const lawMs = medianMs(15, () => pieceMacros(options));
  const peerMs = numpyMs();
  const row = (name, value, note, peer = null, peerValue = null) => ({
    name,
    value,
    unit: "ms",
    peer,
    peerValue,
    ratio: peerValue === null ? null : value / peerValue,
    note,
  });
  const drawnNote = `${LINES} ingredients, 4 layers, ${DRAWS} draws, 48 amounts with intervals; limit 50 ms; numpy draws all of them, ours mirrors every second`;
  return [
    peerMs === null
      ? row("macros.mc10000.ms", drawnMs, `${drawnNote}; numpy is not installed here`)
      : row("macros.mc10000.ms", drawnMs, drawnNote, "numpy", peerMs),
    row("macros.law.ms", lawMs, "the same by propagation of uncertainty"),
    row("food.search.ms", searchMs, `one query over ${foods.length} foods, mean of ${QUERIES.length}; limit 20 ms`),
    row("food.search.first.ms", firstMs, "the first search, which turns every description to lower case and warms up"),
    row("food.load.ms", loadMs, "SR28 read and parsed, once, when first asked for"),
  ];
}
