import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { kitchenOf } from "../../../kernel-lib/host/src/command/kitchen";

let project: string;
beforeEach(() => {
  project = realpathSync(mkdtempSync(join(tmpdir(), "slabwright-test-")));
  for (const folder of ["data", "mine"]) mkdirSync(join(project, folder));
  writeFileSync(join(project, "data", "kitchen.json"), '{ "name": "The first" }');
  writeFileSync(join(project, "mine", "kitchen.json"), '{ "name": "Mine" }');
});
afterEach(() => {
  vi.unstubAllEnvs();
  rmSync(project, { recursive: true });
});
const of = (kitchen: string | null, out: string | null = null) => kitchenOf({ kitchen, out }, project);

describe("kitchenOf", () => {
  it("gives each kitchen an out of its own, and that of data the project's", () => {
    expect(of(null)).toMatchObject({
      name: "The first",
      out: join(project, "out"),
      fromOut: "../data",
      environment: {},
    });
    expect(of(join(project, "mine"))).toMatchObject({
      name: "Mine",
      out: join(project, "mine", "out"),
      fromOut: "..",
      environment: { SLABWRIGHT_KITCHEN: join(project, "mine") },
    });
    expect(of(join(project, "data")).out).toBe(join(project, "out"));
    symlinkSync(join(project, "data"), join(project, "link"));
    expect(of(join(project, "link")).out).toBe(join(project, "out"));
    expect(of(join(project, "mine"), join(project, "else")).out).toBe(join(project, "else"));
  });

  it("takes the environment's kitchen, which kernels would load too, unless one is named", () => {
    vi.stubEnv("SLABWRIGHT_KITCHEN", join(project, "mine"));
    expect(of(null)).toMatchObject({ name: "Mine", out: join(project, "mine", "out") });
    expect(of(join(project, "data")).name).toBe("The first");
  });

  it("names a kitchen without a readable name by its folder", () => {
    writeFileSync(join(project, "mine", "kitchen.json"), "{");
    expect(of(join(project, "mine")).name).toBe("mine");
  });

  it("refuses a folder that is none, saying who named it", () => {
    expect(() => of(join(project, "absent"))).toThrow(/^--kitchen must be a folder that exists, got .*absent$/);
    expect(() => of(join(project, "mine", "kitchen.json"))).toThrow(/^--kitchen must be a folder, got the file/);
    vi.stubEnv("SLABWRIGHT_KITCHEN", join(project, "absent"));
    expect(() => of(null)).toThrow(/^SLABWRIGHT_KITCHEN must be a folder that exists/);
  });
});
