import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { askLibrary } from "../../../kernel-lib/host/src/command/ask-library";

const project = resolve(__dirname, "../../..");

describe("askLibrary", () => {
  it("calls a function of the library and brings back what it returns", async () => {
    const call = { door: "slabwright/units", name: "grams", args: ["1 kg"] };
    expect(await askLibrary(project, call)).toBe(1000);
  });

  it("throws what the function throws, as its sentence", async () => {
    const call = { door: "slabwright/units", name: "grams", args: ["1 cup"] };
    await expect(askLibrary(project, call)).rejects.toThrow(/^grams: text must be a mass/);
  });

  it("says so when there is no such door, function or folder", async () => {
    const ask = (door: string, name: string, folder = project) => askLibrary(folder, { door, name, args: [] });
    await expect(ask("slabwright/cellar", "wine")).rejects.toThrow("slabwright");
    await expect(ask("slabwright/units", "noSuch")).rejects.toThrow("not a function");
    await expect(ask("slabwright/units", "grams", "/no-such-folder")).rejects.toThrow("grams must answer");
  });
});
