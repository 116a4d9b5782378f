import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { transpile } from "@tslab/typescript-for-tslab";
import { describe, expect, it } from "vitest";

/**
 * Runs every `@example` of the library's docstrings with what every door shows, and the file's own exports, in scope. A line `expression; // → value`
 * must give that value to the digits that are printed; `expression; // throws "text"` must throw with that text.
 */
const library = "kernel-lib/library/src";

interface Example {
  readonly name: string;
  readonly path: string;
  readonly code: string;
}

function examplesIn(path: string): Example[] {
  const text = readFileSync(join(library, path), "utf8");
  return [...text.matchAll(/\/\*\*[\s\S]*?\*\//g)].flatMap((comment) => {
    const lines = comment[0].split("\n").map((line) => line.replace(/^\s*\/?\*{1,2}\/? ?/, "").trimEnd());
    const start = lines.findIndex((line) => line.startsWith("@example"));
    if (start < 0) return [];
    const rest = lines.slice(start + 1);
    const end = rest.findIndex((line) => line === "" || line.startsWith("@") || line === "/");
    const code = rest
      .slice(0, end < 0 ? rest.length : end)
      .join("\n")
      .trim();
    const after = text.slice((comment.index ?? 0) + comment[0].length);
    return [{ name: `${path}: ${/(?:function|const|interface) (\w+)/.exec(after)?.[1] ?? "?"}`, path, code }];
  });
}

/** Turns the marked lines of an example into checks; a statement may run over several lines. */
function withChecks(code: string): { script: string; checks: number } {
  let checks = 0;
  const script: string[] = [];
  let statement = "";
  for (const line of code.split("\n")) {
    const marked = /^(.*);\s*\/\/ (→|throws) (.*)$/.exec(line);
    if (marked === null) {
      statement += `${line}\n`;
      if (/;\s*(\/\/.*)?$/.test(line)) {
        script.push(statement);
        statement = "";
      }
      continue;
    }
    checks++;
    const expression = `${statement}${marked[1]}`;
    statement = "";
    script.push(
      marked[2] === "→"
        ? `$equal((${expression}), ${JSON.stringify(marked[3].trim())});`
        : `$throws(() => { ${expression} }, ${marked[3].trim()});`,
    );
  }
  script.push(statement);
  return { script: script.join("\n"), checks };
}

const NUMBER = /-?\d+(?:\.\d+)?(?:e[+-]?\d+)?/gi;

/** Half a unit in the last printed digit. */
function lastDigit(printed: string): number {
  const [mantissa, exponent = "0"] = printed.toLowerCase().split("e");
  return 0.5 * 10 ** (Number(exponent) - (mantissa.split(".")[1]?.length ?? 0));
}

function equalToPrintedDigits(actual: unknown, printed: string): void {
  const shown = JSON.stringify(actual) ?? String(actual);
  const wanted = JSON.stringify(looselyParsed(printed)) ?? printed;
  expect(shown.replace(NUMBER, "#"), `${shown} against ${printed}`).toBe(wanted.replace(NUMBER, "#"));
  const printedNumbers = printed.match(NUMBER) ?? [];
  for (const [at, number] of (shown.match(NUMBER) ?? []).entries()) {
    const miss = Math.abs(Number(number) - Number(printedNumbers[at]));
    expect(miss, `${shown} against ${printed}`).toBeLessThanOrEqual(lastDigit(printedNumbers[at]) * (1 + 1e-9));
  }
}

function looselyParsed(printed: string): unknown {
  return new Function(`return (${printed});`)();
}

const examples = readdirSync(library, { recursive: true, encoding: "utf8" })
  .filter((path) => path.endsWith(".ts"))
  .flatMap(examplesIn);

/** Everything that the doors show, under one name each: the cook's door shows nothing that its rooms do not. */
const doors = readdirSync(library).filter((name) => existsSync(join(library, name, "index.ts")));
const shown = Object.assign(
  {},
  ...(await Promise.all(doors.map((name) => import(resolve(library, name, "index.ts"))))),
);

// every example reads the same kitchen, and a kitchen is frozen: it is read and decided on once
const kitchen = shown.loadKitchen();
let decisions: unknown;
shown.loadKitchen = () => kitchen;
const { decide } = shown;
shown.decide = (options: { readonly kitchen: unknown }) => {
  if (options.kitchen !== kitchen) return decide(options);
  decisions ??= decide(options);
  return decisions;
};

describe("docstring examples", () => {
  it.each(examples)("$name", async ({ path, code }) => {
    const { script, checks } = withChecks(code);
    const own = await import(resolve(library, path));
    const scope = {
      ...shown,
      ...own,
      $equal: equalToPrintedDigits,
      $throws: (work: () => void, text: string) => expect(work).toThrow(text),
    };
    new Function(...Object.keys(scope), transpile(script, { target: 99 as never }))(...Object.values(scope));
    expect(checks, "an example shows at least one result").toBeGreaterThan(0);
  });
});
