import { readdirSync, readFileSync } from "node:fs";
import { transpile } from "@tslab/typescript-for-tslab";
import * as door from "slabwright";
import { svgOf } from "slabwright/views";
import { describe, expect, it } from "vitest";

const readme = readFileSync("README.md", "utf8");

describe("README.md", () => {
  it("opens with one paragraph that states the job", () => {
    const [title, job, next] = readme.split("\n\n");
    expect(title).toBe("# slabwright");
    expect(job).toMatch(/slab-formed foods/);
    expect(next).toMatch(/^## /);
  });

  it("shows code that prints what it says", () => {
    const [, code, printed] = /```ts\n([\s\S]*?)```\n\nprints\n\n```\n([\s\S]*?)```/.exec(readme) ?? [];
    const lines: string[] = [];
    const script = transpile(code, { module: 1 as never, target: 99 as never });
    const require = (name: string): unknown =>
      name === "slabwright" ? door : expect.unreachable(`README imports ${name}`);
    new Function("require", "exports", "console", script)(require, {}, { log: (line: string) => lines.push(line) });
    expect(lines.join("\n")).toBe(printed.trim());
  });

  it("shows the figure as it is drawn now", () => {
    const { times, fit } = door.variantCrispTime({ kitchen: door.loadKitchen(), variantId: "beet-lentil" });
    const path = /!\[[^\]]*\]\(([^)]*)\)/.exec(readme)?.[1] ?? "";
    expect(readFileSync(path, "utf8")).toBe(svgOf(door.crispTimeFigure(times, fit)));
  });

  it("lists every notebook", () => {
    const names = readdirSync("notebooks").filter((name) => name.endsWith(".ipynb"));
    expect(names.filter((name) => !readme.includes(`\`${name.replace(".ipynb", "")}\``))).toEqual([]);
  });

  it("names the test command that it has", () => {
    expect(readme).toContain("npm ci && npm test");
  });
});
