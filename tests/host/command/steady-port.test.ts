import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type NotebookServer, onSteadyPort, serveNotebooks } from "slabwright-host";
import { expect, it } from "vitest";
import { projectWith } from "../server/project";

const { notebooks } = projectWith();
const serve = (port: number): Promise<NotebookServer> => serveNotebooks({ folder: notebooks, port });
const newOut = (): string => join(mkdtempSync(join(tmpdir(), "slabwright-test-")), "out");

it("serves a kitchen where it was served before, with a new token", async () => {
  const out = newOut();
  const first = await onSteadyPort(out, serve);
  await first.close();
  const second = await onSteadyPort(out, serve);
  expect(second.port).toBe(first.port);
  expect(second.token).not.toBe(first.token);
  await second.close();
});

it("takes another port while that one is taken, and the first again after that", async () => {
  const out = newOut();
  const first = await onSteadyPort(out, serve);
  const beside = await onSteadyPort(out, serve);
  expect(beside.port).not.toBe(first.port);
  await Promise.all([first.close(), beside.close()]);
  const again = await onSteadyPort(out, serve);
  expect(again.port).toBe(first.port);
  await again.close();
});

it("takes no port from a file that holds none, nor one of the system's", async () => {
  for (const text of ["", "no port", "80", "70000", "1.5"]) {
    const out = mkdtempSync(join(tmpdir(), "slabwright-test-"));
    writeFileSync(join(out, "notebook-port"), text);
    const server = await onSteadyPort(out, serve);
    expect(server.port).toBeGreaterThanOrEqual(1024);
    expect(Number(readFileSync(join(out, "notebook-port"), "utf8"))).toBe(server.port);
    await server.close();
  }
});

it("says why a server cannot be started at all", async () => {
  await expect(onSteadyPort(newOut(), () => Promise.reject(new Error("no notebooks are there")))).rejects.toThrow(
    "no notebooks are there",
  );
});
