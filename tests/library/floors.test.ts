import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
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
  crisp: 4,
  safety: 4,
  trials: 5,
  advice: 6,
  views: 7,
  notebook: 8,
};
/** Neighbours on one floor that may look at each other, one way. */
const NEIGHBOURS: readonly string[] = ["statistics > check", "units > check", "crisp > safety", "macros > yield"];

const library = "kernel-lib/library/src";
const sources = (root: string): string[] =>
  readdirSync(root, { recursive: true, encoding: "utf8" }).filter((path) => path.endsWith(".ts"));
const room = (path: string): string => path.split(/[\\/]/)[0];
const importsOf = (path: string): string[] =>
  [...readFileSync(path, "utf8").matchAll(/(?:from|import|require\() ?"([^"]+)"/g)].map((match) => match[1]);

describe("the library's floors", () => {
  const paths = sources(library).filter((path) => path !== "index.ts");

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
  it.each(["kernel-lib/host/src"])("no file of %s imports itself through others", (root) => {
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

describe("the public door", () => {
  it("is named re-exports and headings only", () => {
    const strange = readFileSync(join(library, "index.ts"), "utf8")
      .replace(/export (type )?\{[^}]*\} from "[^"]+";/g, "")
      .split("\n")
      .filter((line) => line.trim() !== "" && !line.startsWith("//"));
    expect(strange).toEqual([]);
  });
});
