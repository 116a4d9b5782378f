import { resolve } from "node:path";
import { execute, type Kernel, startKernel } from "slabwright-host";
import { afterAll, beforeAll, expect, it } from "vitest";

let kernel: Kernel;
beforeAll(async () => {
  kernel = await startKernel({ folder: resolve("notebooks") });
}, 60_000);
afterAll(() => kernel.stop());

async function printed(code: string): Promise<string> {
  let out = "";
  const run = await execute(kernel, {
    code,
    limitMs: 30_000,
    onNews: ({ header, content }) => {
      if (header.msg_type === "stream") out += content.text;
    },
  });
  expect(out).not.toContain("not defined");
  expect(run.status).toBe("ok");
  return out.trim();
}

it("sees a name from an earlier cell in the short form { name }, also inside functions", async () => {
  await printed("const batchG = 1200;\nconst pans = ['half', 'quarter'];");
  expect(await printed("console.log(JSON.stringify({ batchG }))")).toBe('{"batchG":1200}');
  expect(await printed("console.log(JSON.stringify(pans.map((pan) => ({ pan, batchG }))))")).toBe(
    '[{"pan":"half","batchG":1200},{"pan":"quarter","batchG":1200}]',
  );
  expect(await printed("const own = 5;\nconsole.log(JSON.stringify({ own, inner: { batchG } }))")).toBe(
    '{"own":5,"inner":{"batchG":1200}}',
  );
}, 60_000);
