import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { expect, it } from "vitest";

// the reader of version ranges that comes with the kernel
const { satisfies } = createRequire(require.resolve("tslab/package.json"))("semver") as {
  satisfies: (version: string, range: string) => boolean;
};
const { packages } = JSON.parse(readFileSync("package-lock.json", "utf8")) as {
  packages: Record<string, { engines?: { node?: string } }>;
};
const { engines } = JSON.parse(readFileSync("package.json", "utf8"));
const others = Object.entries(packages).flatMap(([name, { engines: asked }]) =>
  name !== "" && asked?.node ? [[name, asked.node] as const] : [],
);
const minors = [18, 20, 21, 22, 23, 24, 25, 26].flatMap((major) =>
  Array.from({ length: 25 }, (_, minor) => `${major}.${minor}.0`),
);

it("admits exactly those versions of Node that no package refuses", () => {
  expect(others.length).toBeGreaterThan(100);
  for (const version of minors) {
    const refusing = others
      .filter(([, range]) => !satisfies(version, range))
      .map(([name, range]) => `${name} ${range}`);
    if (satisfies(version, engines.node)) expect(refusing, `admitted: ${version}`).toEqual([]);
    else expect(refusing, `refused: ${version}`).not.toEqual([]);
  }
  expect(minors.filter((version) => satisfies(version, engines.node)).length).toBeGreaterThan(50);
});
