import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { type NotebookServer, serveNotebooks } from "slabwright-host";
import { afterAll, beforeAll, expect, it } from "vitest";
import { youngKitchen } from "../kitchen/young-kitchen";
import { projectWith } from "./project";

const folder = youngKitchen(0);
let server: NotebookServer;
beforeAll(async () => {
  const report = join(folder, "out", "report.html");
  server = await serveNotebooks({
    folder: projectWith().notebooks,
    kitchen: { name: "<Corner> kitchen", folder, report, project: resolve(".") },
  });
});
afterAll(() => server?.close());

const get = (path: string, token: string | null = server.token): Promise<Response> =>
  fetch(server.origin + path, { headers: token === null ? {} : { Authorization: `token ${token}` } });

it("answers what the library says of the kitchen, and its sentence where there is no answer", async () => {
  expect(await (await get("/kitchen/glance")).json()).toMatchObject({ problems: [], products: [{ trials: 0 }] });
  const file = join(folder, "variants.csv");
  const sound = readFileSync(file, "utf8");
  writeFileSync(file, sound.replace("half-sheet", "halv-sheet"));
  const refused = await get("/kitchen/answers");
  expect(refused.status).toBe(409);
  expect((await refused.json()).message).toContain('got "halv-sheet"');
  writeFileSync(file, sound);
  expect((await get("/kitchen/else")).status).toBe(404);
}, 60_000);

it("shows the report in a sandbox once there is one", async () => {
  expect((await get("/report")).status).toBe(404);
  mkdirSync(join(folder, "out"));
  writeFileSync(join(folder, "out", "report.html"), "<p>the report</p>");
  const shown = await get("/report");
  expect(await shown.text()).toBe("<p>the report</p>");
  const policy = shown.headers.get("content-security-policy");
  expect(policy).toMatch(/^sandbox /);
  expect(policy).not.toContain("allow-same-origin");
});

it("names the kitchen on the start page as text, and tells nobody without the token", async () => {
  expect(await (await get("/")).text()).toContain("<h1>&lt;Corner&gt; kitchen</h1>");
  for (const path of ["/kitchen/glance", "/kitchen/examples", "/report"]) {
    expect((await get(path, null)).status, path).toBe(403);
  }
});
