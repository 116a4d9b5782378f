/**
 * `npm run bench` runs every `*.bench.mjs` beside this file and prints one table; `npm run bench -- --json` prints one
 * JSON array of rows {name, value, unit, peer, peerValue, ratio, note}; a word picks the files whose name holds it.
 * Absolute times drift with the machine: read the ratios, which are taken in one run.
 */
import { readdirSync } from "node:fs";

const words = process.argv.slice(2).filter((word) => word !== "--json");
const files = readdirSync(new URL(".", import.meta.url))
  .filter((name) => name.endsWith(".bench.mjs") && (words.length === 0 || words.some((word) => name.includes(word))))
  .sort();
if (files.length === 0) {
  console.error(`bench: expected a word that names one of the bench files, got ${words.join(" ")}`);
  process.exit(1);
}

const rows = [];
for (const name of files) {
  console.error(`bench: ${name}`);
  const { rows: measure } = await import(new URL(name, import.meta.url));
  rows.push(...(await measure()));
}

if (process.argv.includes("--json")) console.log(JSON.stringify(rows, null, 2));
else {
  const shown = (value) =>
    value === null ? "–" : typeof value === "number" ? String(Number(value.toPrecision(4))) : value;
  const heading = ["name", "value", "unit", "peer", "peer value", "ratio", "note"];
  const lines = rows.map((row) =>
    [row.name, row.value, row.unit, row.peer, row.peerValue, row.ratio, row.note].map(shown),
  );
  const widths = heading.map((word, at) => Math.max(word.length, ...lines.map((line) => line[at].length)));
  for (const line of [heading, ...lines])
    console.log(
      line
        .map((cell, at) => cell.padEnd(widths[at]))
        .join("  ")
        .trimEnd(),
    );
}
