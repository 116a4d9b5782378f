import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { type NotebookServer, serveNotebooks } from "slabwright-host";
import { afterAll, beforeAll, expect, it } from "vitest";
import { projectWith } from "./project";

const { notebooks } = projectWith();
const folder = join(dirname(notebooks), "out", "reference");
let server: NotebookServer;
beforeAll(async () => {
  server = await serveNotebooks({ folder: notebooks });
});
afterAll(() => server?.close());

const get = (path: string, token: string | null = server.token): Promise<Response> =>
  fetch(server.origin + path, {
    redirect: "manual",
    headers: token === null ? {} : { Authorization: `token ${token}` },
  });
const write = (path: string, text: string): void => {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), text);
};

it("says which command writes the reference while there is none", async () => {
  for (const path of ["/reference/", "/reference/of/coreTime", "/reference/slabwright.html"]) {
    const page = await get(path);
    expect(page.status).toBe(200);
    expect(await page.text()).toContain("npm run reference");
  }
  expect(await (await get("/reference/names.json")).json()).toEqual({});
});

it("serves it, leads to the page of a name, and to nothing outside it", async () => {
  write("index.html", "<p>first</p>");
  write("names.json", '{"coreTime":"slabwright/heat/coreTime.html"}');
  write("slabwright/heat/coreTime.html", "<p>core</p>");
  write("assets/main.js", "go()");
  write("notes.txt", "none of the reference's");
  writeFileSync(join(folder, "..", "beside.html"), "outside");
  expect((await get("/reference")).headers.get("location")).toBe("/reference/");
  expect(await (await get("/reference/")).text()).toBe("<p>first</p>");
  expect((await get("/reference/of/coreTime")).headers.get("location")).toBe(
    "/reference/slabwright/heat/coreTime.html",
  );
  for (const name of ["constructor", "__proto__", "", "//else.example"])
    expect((await get(`/reference/of/${name}`)).headers.get("location")).toBe("/reference/index.html");
  const page = await get("/reference/slabwright/heat/coreTime.html");
  expect([page.headers.get("content-type"), await page.text()]).toEqual(["text/html; charset=utf-8", "<p>core</p>"]);
  expect(page.headers.get("content-security-policy")).not.toMatch(/connect-src|script-src[^;]*unsafe/);
  expect((await get("/reference/assets/main.js")).headers.get("content-type")).toMatch(/^text\/javascript/);
  for (const path of ["notes.txt", "..%2fbeside.html", "%2e%2e/beside.html", "absent.html", "assets", "slabwright/"])
    expect((await get(`/reference/${path}`)).status, path).toBe(404);
  expect((await get("/reference/", null)).status).toBe(403);
});
