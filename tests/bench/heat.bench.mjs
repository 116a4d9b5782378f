/**
 * Slab and piece from −18 °C to a core of 74 °C in 204 °C air at 40 W/(m²·K), without drying, beside scipy's solve_ivp
 * (BDF, rtol 1e-4) on as many cells, with cost against cells and end time, and the reading of a long trace.
 * Ratio = peer's time / ours, or peer's error / ours: above 1, ours is better.
 */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { readProbeTrace, simulatePiece, simulateSlab, timeWhen } from "slabwright/heat";

const reference = JSON.parse(
  readFileSync(new URL("../published/slab-reference/reference.json", import.meta.url), "utf8"),
);
const pieces = JSON.parse(
  readFileSync(new URL("../published/piece-reference/reference.json", import.meta.url), "utf8"),
);
const core = { column: "coreC", value: 74 };
const oven = {
  food: reference.food,
  startC: -18,
  airC: 204,
  coefficientWm2K: 40,
  endMin: 30,
  stopCoreC: 74,
  drying: "none",
};
const thicknessMm = 12.7;
const stick = { thicknessMm: 14, widthMm: 27, lengthMm: 70 };
const seconds = (run) => 60 * timeWhen(run, core);

function medianMs(call, times) {
  for (let warm = 0; warm < Math.min(20, times); warm++) call();
  const spent = [];
  for (let time = 0; time < times; time++) {
    const began = performance.now();
    call();
    spent.push(performance.now() - began);
  }
  return spent.sort((one, other) => one - other)[Math.floor(times / 2)];
}

/** Errors of core times at the default grid over the pieces of `tests/published/piece-reference`, in % late. */
function pieceErrors() {
  const late = [];
  const thaw = [];
  for (const { food: name, way, times, thicknessMm, widthMm, lengthMm, coefficientWm2K } of pieces.pieces) {
    const body = { food: pieces.foods[name], thicknessMm, widthMm, lengthMm, coefficientWm2K };
    const heats = way === "heating";
    const run = heats
      ? simulatePiece({ ...body, startC: -18, airC: 204, drying: "boiling-surface", endMin: 600, stopCoreC: 75 })
      : simulatePiece({ ...body, startC: 5, airC: -18, drying: "none", endMin: 2000, stopCoreC: -10.2 });
    for (const { column, valueC, seconds } of times) {
      if (column === "thawed") thaw.push(100 * ((60 * run.thawedMin) / seconds - 1));
      if (column === "coreC") late.push(100 * ((60 * timeWhen(run, { column, value: valueC })) / seconds - 1));
    }
  }
  return { late, thaw };
}

function scipy() {
  const common = { h: 40, air: 204, start: -18, target: 74, rtol: 1e-4 };
  const asked = {
    slab: { ...common, halves: [thicknessMm / 2000], cells: 12, repeats: 5 },
    piece: { ...common, halves: [0.007, 0.0135, 0.035], cells: 8, repeats: 1 },
  };
  const script = fileURLToPath(new URL("heat-peer.py", import.meta.url));
  const run = spawnSync("python3", [script], { input: JSON.stringify(asked), encoding: "utf8", timeout: 300_000 });
  return run.status === 0 ? JSON.parse(run.stdout) : null;
}

export async function rows() {
  const peer = scipy();
  const peerName = peer ? `scipy ${peer.version} solve_ivp BDF` : null;
  const row = (name, value, unit, peerValue, note) => ({
    name,
    value,
    unit,
    peer: peerValue === null ? null : peerName,
    peerValue,
    ratio: peerValue === null ? null : peerValue / value,
    note: peerValue === null && peer === null ? `${note}; no python3 with scipy here` : note,
  });
  const own = (name, value, unit, note) => ({ name, value, unit, peer: null, peerValue: null, ratio: null, note });
  const slab = (more) => simulateSlab({ ...oven, thicknessMm, ...more });
  const piece = (more) => simulatePiece({ ...oven, ...stick, ...more });

  const certified = reference.heating.find((one) => one.thicknessMm === thicknessMm).seconds["74"];
  const fine = seconds(piece({ cells: 18, tolerance: 2e-4 }));
  const { late, thaw } = pieceErrors();
  const sizes = (errors) => Math.max(...errors.map(Math.abs));
  const percent = (found, wanted) => 100 * Math.abs(found / wanted - 1);
  const long = { stopCoreC: undefined };
  const lines = ["time_s,core_c,surface_c,air_c"];
  for (let second = 0; second < 500_000; second++) lines.push(`${second},${(20 + second / 1e4).toFixed(2)},60.0,180.0`);
  const text = lines.join("\n");
  return [
    row("heat.slab.ms", medianMs(slab, 200), "ms", peer?.slab.ms, "12.7 mm slab, 12 cells a half, both"),
    row(
      "heat.slab.error",
      percent(seconds(slab()), certified),
      "%",
      peer && percent(peer.slab.seconds, certified),
      "core time against 200 cells",
    ),
    row(
      "heat.piece.ms",
      medianMs(piece, 15),
      "ms",
      peer?.piece.ms,
      "14 x 27 x 70 mm, 8 cells a half side; peer's cells are even, ours graded",
    ),
    row(
      "heat.stick.error",
      percent(seconds(piece()), fine),
      "%",
      peer && percent(peer.piece.seconds, fine),
      "core time against our own 18 cells a half side",
    ),
    own(
      "heat.piece.error",
      sizes(late),
      "%",
      `worst of ${late.length} core times over aspect ratios 1 to 10, heating and freezing, against fine even grids`,
    ),
    own("heat.piece.early", -Math.min(...late), "%", "the same, the earliest"),
    own("heat.thaw.error", sizes(thaw), "%", `worst of ${thaw.length} thaw times over the same pieces`),
    ...[24, 48, 96].map((cells) =>
      own(
        `heat.slab.cells${cells}.ms`,
        medianMs(() => slab({ cells }), 20),
        "ms",
        `as heat.slab.ms, ${cells} cells a half`,
      ),
    ),
    ...[12, 16].map((cells) =>
      own(
        `heat.piece.cells${cells}.ms`,
        medianMs(() => piece({ cells }), 3),
        "ms",
        `as heat.piece.ms, ${cells} cells a half side`,
      ),
    ),
    ...[15, 30, 60].map((endMin) =>
      own(
        `heat.slab.end${endMin}.ms`,
        medianMs(() => slab({ ...long, endMin, drying: "receding-front" }), 20),
        "ms",
        `12.7 mm slab to ${endMin} min with its crust`,
      ),
    ),
    own(
      "heat.trace.ms",
      medianMs(() => readProbeTrace(text, { file: "trace.csv" }), 5),
      "ms",
      `${(text.length / 1e6).toFixed(0)} MB, 500000 rows of four columns`,
    ),
  ];
}
