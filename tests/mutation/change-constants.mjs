import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { sampleOf } from "./sample-of.mjs";

const SANDBOX = "out/mutation/constants";
/** What the tests of the library read. */
const COPIED = ["kernel-lib/library/src", "kernel-lib/library/package.json", "tests/library", "tests/published"];
const ALSO_COPIED = [
  "tests/mutation",
  "tests/property-seed.ts",
  "tests/draw-property-seed.ts",
  "data",
  "package.json",
  "vitest.config.mts",
];

/**
 * Makes numbers of the files 11 % larger, one at a time in a copy of the project, and runs the tests on each. Prints those
 * that no test noticed and returns how many there were.
 */
export function changeConstants({ files, tests, count, seed }) {
  rmSync(SANDBOX, { recursive: true, force: true });
  mkdirSync(SANDBOX, { recursive: true });
  for (const path of [...COPIED, ...ALSO_COPIED]) cpSync(path, join(SANDBOX, path), { recursive: true });
  symlinkSync(join(process.cwd(), "node_modules"), join(SANDBOX, "node_modules"));
  const noticed = () => {
    const { status, signal } = spawnSync(
      "node_modules/.bin/vitest",
      ["run", "--config", "tests/mutation/vitest.config.mjs", "--bail", "1", "--reporter", "dot"],
      { cwd: SANDBOX, timeout: 300_000, env: { ...process.env, MUTATION_TESTS: tests.join(",") } },
    );
    return status !== 0 || signal !== null;
  };
  if (noticed()) throw new Error("mutate: the tests must pass before anything is changed");
  const chosen = sampleOf(files.flatMap(numbersOf), count, seed);
  let missed = 0;
  chosen.forEach(({ file, at, text }, index) => {
    const source = readFileSync(file, "utf8");
    const changed = text === "0" ? "0.11" : String(Number((1.11 * Number(text)).toPrecision(12)));
    writeFileSync(join(SANDBOX, file), source.slice(0, at) + changed + source.slice(at + text.length));
    const caught = noticed();
    writeFileSync(join(SANDBOX, file), source);
    if (!caught) missed++;
    const line = source.slice(0, at).split("\n").length;
    console.log(`${index + 1}/${chosen.length} ${caught ? "noticed" : "MISSED"} ${file}:${line} ${text} -> ${changed}`);
  });
  rmSync(SANDBOX, { recursive: true, force: true });
  console.log(`${chosen.length - missed} of ${chosen.length} changed numbers were noticed`);
  return missed;
}

/** Numbers in the code of a file, not those in comments, texts and names, nor places in an array. */
function numbersOf(file) {
  const source = readFileSync(file, "utf8");
  const code = source.replace(/\/\*[\s\S]*?\*\/|\/\/[^\n]*|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`/g, (hidden) =>
    hidden.replace(/[^\n]/g, " "),
  );
  return [...code.matchAll(/(?<![\w.$[])\d+(?:\.\d+)?(?:e-?\d+)?(?![\w.\]])/g)].map((match) => ({
    file,
    at: match.index,
    text: match[0],
  }));
}
