import { existsSync, mkdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { type NotebookServer, serveNotebooks } from "slabwright-host";
import { afterAll, beforeAll, expect, it } from "vitest";
import { youngKitchen } from "../kitchen/young-kitchen";
import { projectWith } from "./project";

const folder = youngKitchen(0);
const own = join(folder, "notebooks");
const project = projectWith("fails");
let server: NotebookServer;
beforeAll(async () => {
  const report = join(folder, "out", "report.html");
  server = await serveNotebooks({
    folder: project.notebooks,
    kitchen: { name: "Corner kitchen", folder, notebooks: own, report, project: resolve(".") },
  });
});
afterAll(() => server?.close(), 60_000); // a kernel that is still starting is waited for

async function ask(
  method: string,
  path: string,
  body?: object,
): Promise<{ status: number; json: Record<string, unknown> }> {
  const headers = { Authorization: `token ${server.token}`, "Content-Type": "application/json" };
  const answer = await fetch(server.origin + path, { method, headers, body: body && JSON.stringify(body) });
  const text = await answer.text();
  return { status: answer.status, json: text.startsWith("{") ? JSON.parse(text) : {} };
}
const names = async (path: string): Promise<unknown> =>
  ((await ask("GET", `/api/contents/${path}`)).json.content as { path: string }[]).map((entry) => entry.path);
const startPage = (): Promise<string> =>
  fetch(`${server.origin}/`, { headers: { Authorization: `token ${server.token}` } }).then((answer) => answer.text());

it("keeps a new notebook with the kitchen that is open, and makes its folder with the first", async () => {
  expect(await names("")).toEqual(["fails.ipynb"]);
  expect((await ask("GET", "/api/contents/kitchen/untitled.ipynb")).status).toBe(404);
  expect((await ask("POST", "/api/sessions", { path: "kitchen/untitled.ipynb" })).status).toBe(404);
  expect(await startPage()).toContain('id="new" data-folder="kitchen"');
  expect(existsSync(own)).toBe(false);

  const { json } = await ask("POST", "/api/contents/kitchen", { type: "notebook" });
  expect(json.path).toBe("kitchen/untitled.ipynb");
  expect(existsSync(join(own, "untitled.ipynb"))).toBe(true);
  expect(existsSync(join(project.notebooks, "untitled.ipynb"))).toBe(false);
  expect(await names("")).toEqual(["fails.ipynb", "kitchen"]);
  expect(await startPage()).toContain("/open/kitchen/untitled.ipynb");
});

it("reads, saves, renames and removes there, and nothing of the project changes", async () => {
  const before = readFileSync(join(project.notebooks, "fails.ipynb"), "utf8");
  const at = "/api/contents/kitchen/untitled.ipynb";
  const { json } = await ask("GET", at);
  const saved = await ask("PUT", at, { type: "notebook", content: json.content, hash: json.hash });
  expect(saved.json).toMatchObject({ path: "kitchen/untitled.ipynb", type: "notebook" });
  expect((await ask("PATCH", at, { path: "kitchen/week.ipynb" })).json.path).toBe("kitchen/week.ipynb");
  expect(await names("kitchen")).toEqual(["kitchen/week.ipynb"]);
  expect((await ask("PATCH", "/api/contents/kitchen/week.ipynb", { path: "week.ipynb" })).status).toBe(400);
  expect((await ask("DELETE", "/api/contents/kitchen/week.ipynb")).status).toBe(204);
  expect(existsSync(join(own, "week.ipynb"))).toBe(false);
  expect(existsSync(join(folder, "out", "trash"))).toBe(true);
  expect(readFileSync(join(project.notebooks, "fails.ipynb"), "utf8")).toBe(before);
});

it("copies a notebook of the project to the kitchen, under a name that is free", async () => {
  const copy = () => ask("POST", "/api/contents/kitchen", { copy_from: "fails.ipynb" });
  expect((await copy()).json.path).toBe("kitchen/fails-copy.ipynb");
  expect((await copy()).json.path).toBe("kitchen/fails-copy-1.ipynb");
  const source = await ask("GET", "/api/contents/fails.ipynb");
  expect((await ask("GET", "/api/contents/kitchen/fails-copy.ipynb")).json.content).toEqual(source.json.content);
});

it("lets nobody out of the kitchen's folder of notebooks", async () => {
  mkdirSync(own, { recursive: true });
  for (const path of ["kitchen/..%2fkitchen.json", "kitchen/%2e%2e/pans.ipynb", "kitchen//..//x.ipynb"])
    expect((await ask("GET", `/api/contents/${path}`)).status, path).toBe(404);
});

it("starts its kernel where packages are found", async () => {
  const { status } = await ask("POST", "/api/sessions", { path: "kitchen/fails-copy.ipynb" });
  expect(status).toBe(201);
}, 60_000);
