import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { isAbsolute, join } from "node:path";
import { jupyterDataFolder, register, unregister } from "slabwright-host";
import { describe, expect, it } from "vitest";

const file = (data: string): string => join(data, "kernels", "tslab", "kernel.json");

describe("register and unregister", () => {
  it("write the kernelspec and take it back", async () => {
    const data = mkdtempSync(join(tmpdir(), "slabwright-test-"));
    expect(await register(data)).toBe(`Registered: ${file(data)}`);
    const spec = JSON.parse(readFileSync(file(data), "utf8"));
    expect(spec).toMatchObject({ language: "typescript", display_name: "TypeScript", interrupt_mode: "signal" });
    expect(spec.argv[0]).toBe(process.execPath);
    const named = spec.argv.filter((word: string) => isAbsolute(word));
    expect(named.length).toBeGreaterThanOrEqual(2);
    for (const path of named) expect(existsSync(path), path).toBe(true);
    expect(spec.argv.at(-1)).toBe("--config-path={connection_file}");
    expect(await register(data), "again").toBe(`Registered: ${file(data)}`);
    expect(await unregister(data)).toContain("Removed");
    expect(existsSync(file(data))).toBe(false);
    expect(await unregister(data)).toContain("Nothing was registered");
  });

  it("leave a kernel of the same name by another program as it is", async () => {
    const data = mkdtempSync(join(tmpdir(), "slabwright-test-"));
    mkdirSync(join(data, "kernels", "tslab"), { recursive: true });
    writeFileSync(file(data), '{"argv": ["other"]}');
    expect(await register(data)).toContain("left as it is");
    expect(await unregister(data)).toContain("left as it is");
    expect(readFileSync(file(data), "utf8")).toBe('{"argv": ["other"]}');
  });

  // Jupyter documentation, "Common directories and file locations"; macOS and Windows from memory.
  it("know where Jupyter looks", () => {
    expect(jupyterDataFolder({}, "linux", "/home/cook")).toBe("/home/cook/.local/share/jupyter");
    expect(jupyterDataFolder({ XDG_DATA_HOME: "/data" }, "linux", "/home/cook")).toBe("/data/jupyter");
    expect(jupyterDataFolder({ JUPYTER_DATA_DIR: "/own" }, "linux", "/home/cook")).toBe("/own");
    expect(jupyterDataFolder({}, "darwin", "/Users/cook")).toBe("/Users/cook/Library/Jupyter");
  });

  const jupyter = existsSync("/usr/bin/jupyter");
  if (!jupyter) console.warn("skipped: kernelspec list: Debian's jupyter is not here");
  it.skipIf(!jupyter)("make the kernel known to Debian's jupyter", async () => {
    const data = mkdtempSync(join(tmpdir(), "slabwright-test-"));
    await register(data);
    const env = { ...process.env, JUPYTER_DATA_DIR: data };
    const { kernelspecs } = JSON.parse(
      execFileSync("/usr/bin/jupyter", ["kernelspec", "list", "--json"], { env, encoding: "utf8" }),
    );
    expect(kernelspecs.tslab.spec.display_name).toBe("TypeScript");
  });
});
