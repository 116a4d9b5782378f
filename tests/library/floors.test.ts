import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { basename, dirname, join, relative } from "node:path";
import { describe, expect, it } from "vitest";

/** Each folder of the library and the floor it stands on; imports go to lower floors or stay in the folder. */
const FLOOR: Readonly<Record<string, number>> = {
  check: 0,
  statistics: 0,
  units: 0,
  fit: 1,
  plan: 1,
  food: 2,
  pan: 2,
  heat: 3,
  yield: 3,
  macros: 3,
  safety: 3,
  crisp: 4,
  trials: 5,
  advice: 6,
  views: 7,
  notebook: 8,
};
/** Neighbours on one floor that may look at each other, one way. */
const NEIGHBOURS: readonly string[] = [
  "statistics > check",
  "units > check",
  "heat > safety",
  "macros > yield",
  "plan > fit",
];

const library = "kernel-lib/library/src";
const sources = (root: string): string[] =>
  readdirSync(root, { recursive: true, encoding: "utf8" }).filter((path) => path.endsWith(".ts"));
const room = (path: string): string => path.split(/[\\/]/)[0];
const importsOf = (path: string): string[] =>
  [...readFileSync(path, "utf8").matchAll(/(?:from|import|require\() ?"([^"]+)"/g)].map((match) => match[1]);

describe("the library's floors", () => {
  const paths = sources(library).filter((path) => path !== "index.ts");

  it("opens no door from inside: rooms import files", () => {
    const reaching = paths.flatMap((path) =>
      importsOf(join(library, path))
        .filter((target) => target.startsWith("."))
        .map((target) => join(library, dirname(path), target))
        .filter((target) => basename(target) === "index" || existsSync(join(target, "index.ts")))
        .map((target) => `${path} > ${target}`),
    );
    expect(reaching).toEqual([]);
  });

  it.each(paths)("%s imports downwards only", (path) => {
    const folder = room(path);
    expect(FLOOR, `no floor is set for folder ${folder}`).toHaveProperty(folder);
    const wrong = importsOf(join(library, path))
      .filter((target) => target.startsWith("."))
      .map((target) => room(relative(library, join(library, dirname(path), target))))
      .filter(
        (target) =>
          target !== folder && FLOOR[target] >= FLOOR[folder] && !NEIGHBOURS.includes(`${folder} > ${target}`),
      );
    expect(wrong).toEqual([]);
  });

  it("touches files and the kernel on the top floor only", () => {
    const reaching = paths.filter(
      (path) =>
        room(path) !== "notebook" &&
        importsOf(join(library, path)).some((target) =>
          /^(node:)?(fs|path|os|child_process|process)\b|^tslab/.test(target),
        ),
    );
    expect(reaching).toEqual([]);
  });

  it("never imports plotly as a value, and danfojs only where a frame is asked for", () => {
    const lines = paths.flatMap((path) =>
      readFileSync(join(library, path), "utf8")
        .split("\n")
        .filter((line) => /plotly\.js-dist|"danfojs"/.test(line) && !/import type|^\s*\*/.test(line))
        .map((line) => `${path}: ${line.trim()}`),
    );
    expect(lines).toEqual(['views/table/frame-of.ts: const danfo = require("danfojs") as typeof import("danfojs");']);
  });
});

describe("library and host", () => {
  it("never import each other", () => {
    const host = "kernel-lib/host/src";
    const hostReaching = sources(host).filter((path) =>
      importsOf(join(host, path)).some((target) => /^slabwright(\/|$)|library\/src/.test(target)),
    );
    const libraryReaching = sources(library).filter((path) =>
      importsOf(join(library, path)).some((target) => /slabwright-host|host\/src/.test(target)),
    );
    expect([...hostReaching, ...libraryReaching]).toEqual([]);
  });
});

describe("circles", () => {
  it.each(["kernel-lib/host/src", "kernel-lib/library/src"])("no file of %s imports itself through others", (root) => {
    expect(circlesIn(root)).toEqual([]);
  });
});

/** Each chain of imports that comes back to where it began. */
function circlesIn(root: string): string[] {
  const files = sources(root);
  const closed = new Set<string>();
  const circles: string[] = [];
  const follow = (file: string, chain: readonly string[]): void => {
    if (chain.includes(file)) circles.push([...chain.slice(chain.indexOf(file)), file].join(" > "));
    if (chain.includes(file) || closed.has(file)) return;
    for (const target of importsOf(join(root, file)).filter((one) => one.startsWith(".")))
      follow(`${join(dirname(file), target)}.ts`, [...chain, file]);
    closed.add(file);
  };
  for (const file of files) follow(file, []);
  return circles;
}

/** The rooms without a door: nobody outside the library needs them. */
const CLOSED: readonly string[] = ["check"];
const rooms = readdirSync(library).filter((name) => statSync(join(library, name)).isDirectory());
const doors = ["", ...rooms.filter((name) => !CLOSED.includes(name))];

/** What a cook finds at `slabwright`: it grows on purpose, here and in `src/index.ts`. */
const COOKS_DOOR = `
  loadKitchen variantOf panOf logTrial correctTrial show showTogether eachVariant whereEnough
  panPreset slabThickness slabMassG cutGrid scaleBatch
  variantCrispTime predictSlabTime crispTimeFigure crispTimeTable
  answers decide decisionTable decisionText thicknessByPanFigure
  crispWindow windowTable windowFigure clockFigure successFigure otherPans windowPansTable
  reheatCard coreLimit explainTrial nextTrial whatNext
  compareVariants comparisonText compareVariantsTable compareVariantsFigure variantDifferencesFigure
  thermalProperties freezerCoefficients freezeToCut freezeToCutTable freezeToCutFigure temperToCut workableTime
  coatingPlan coatingPlanTable
  formulaTotals formulaTable scaleFormula formulaAllergens allergenTable
  pieceMacros macroTable macrosByVariantFigure labelUs labelEu labelTable
`
  .trim()
  .split(/\s+/);

/** What imports by the package's name and is compiled by nobody before it runs: notebooks, benches, makers of data, README. */
const CALLERS: readonly string[] = [
  "README.md",
  ...["notebooks", "tests/bench", "data/make"].flatMap((folder) =>
    readdirSync(folder)
      .filter((name) => /\.(ipynb|mjs)$/.test(name))
      .map((name) => `${folder}/${name}`),
  ),
].filter((path) => sourceOf(path).includes('from "slabwright'));

function sourceOf(path: string): string {
  const text = readFileSync(path, "utf8");
  if (!path.endsWith(".ipynb")) return text;
  const { cells } = JSON.parse(text) as { cells: { source: string | string[] }[] };
  return cells.map(({ source }) => [source].flat().join("")).join("\n");
}

describe("the doors", () => {
  const textOf = (door: string): string => readFileSync(join(library, door, "index.ts"), "utf8");
  const shownBy = (door: string): { name: string; isType: boolean; from: string }[] =>
    [...textOf(door).matchAll(/export (type )?\{([^}]*)\} from "([^"]+)";/g)].flatMap(([, allTypes, names, from]) =>
      names
        .split(",")
        .map((name) => name.trim())
        .filter((name) => name !== "")
        .map((name) => ({
          name: name.replace("type ", ""),
          isType: allTypes !== undefined || name.startsWith("type "),
          from: join(door, from),
        })),
    );

  it.each(doors)("slabwright/%s is named re-exports under one-line headings", (door) => {
    const strange = textOf(door)
      .replace(/export (type )?\{[^}*]*\} from "[^"]+";/g, "")
      .split("\n")
      .filter((line) => line.trim() !== "" && !line.startsWith("// "));
    expect(strange).toEqual([]);
    expect(textOf(door)).toMatch(/^\/\/ /);
  });

  it.each(doors.slice(1))("slabwright/%s shows its own room", (door) => {
    expect(shownBy(door).filter(({ from }) => room(from) !== door)).toEqual([]);
  });

  it("show a name of the cook's door in its room too", () => {
    const missing = shownBy("").filter(
      ({ name, from }) => !shownBy(room(from)).some((shown) => shown.name === name && shown.from === from),
    );
    expect(missing).toEqual([]);
  });

  it("give the cook these functions, at most 60, and no others", () => {
    const functions = shownBy("").flatMap(({ name, isType }) => (isType ? [] : [name]));
    expect(functions.sort()).toEqual([...COOKS_DOOR].sort());
    expect(COOKS_DOOR.length).toBeLessThanOrEqual(60);
  });

  it.each(CALLERS)("show what %s imports from them", (path) => {
    const imports = [...sourceOf(path).matchAll(/import (?:type )?\{([^}]*)\} from "slabwright(?:\/(\w+))?";/g)];
    expect(imports.length).toBeGreaterThan(0);
    const missing = imports.flatMap(([, names, door = ""]) => {
      const shown = doors.includes(door) ? shownBy(door).map(({ name }) => name) : [];
      return names
        .split(",")
        .map((name) => name.trim().replace("type ", ""))
        .filter((name) => name !== "" && !shown.includes(name))
        .map((name) => `${name} from slabwright/${door}`);
    });
    expect(missing).toEqual([]);
  });

  it("stand in the package for Node (exports) and for cells (typesVersions)", () => {
    const { main, types, exports, typesVersions } = JSON.parse(readFileSync("kernel-lib/library/package.json", "utf8"));
    const served = (door: string, ending: string): string => `./${join("dist", door, `index.${ending}`)}`;
    const byDoor = doors.map((door) => [
      door === "" ? "." : `./${door}`,
      { types: served(door, "d.ts"), default: served(door, "js") },
    ]);
    expect({ main: `./${main}`, types: `./${types}` }).toEqual({ main: served("", "js"), types: served("", "d.ts") });
    expect(exports).toEqual(Object.fromEntries(byDoor));
    expect(typesVersions).toEqual({
      "*": Object.fromEntries(doors.slice(1).map((door) => [door, [served(door, "d.ts").slice(2)]])),
    });
  });
});
