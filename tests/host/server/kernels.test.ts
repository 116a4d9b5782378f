import fc from "fast-check";
import { type Kernel, type Kernels, kernels, type NotebookServer, serveNotebooks } from "slabwright-host";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Channels, type Page, pageOf } from "./page";
import { projectWith } from "./project";

type Step = readonly ["start"] | readonly ["stop" | "restart" | "crash" | "interrupt", number];
const step: fc.Arbitrary<Step> = fc.oneof(
  fc.constant(["start"] as const),
  fc.tuple(fc.constantFrom("stop", "restart", "restart", "crash", "interrupt"), fc.nat(5)),
);

const MOST = 3;

/** Kernels without processes, whose starts and ends happen when the scheduler says. */
function world(scheduler: fc.Scheduler, failing: readonly boolean[]) {
  const living = new Map<Kernel, (end: { code: number; signal: null; log: string }) => void>();
  let most = 0;
  let launches = 0;
  const launch = async (): Promise<Kernel> => {
    const fails = failing[launches++ % Math.max(1, failing.length)] ?? false;
    let end: (how: { code: number; signal: null; log: string }) => void = () => {};
    const ended = new Promise<{ code: number; signal: null; log: string }>((done) => {
      end = done;
    });
    const kernel: Kernel = {
      pid: launches,
      folder: "",
      session: "",
      ended,
      send: async () => {},
      listen: () => () => {},
      interrupt: () => {},
      stop: async () => {
        await scheduler.schedule(Promise.resolve(), "stop");
        living.delete(kernel);
        end({ code: 0, signal: null, log: "" });
      },
    };
    living.set(kernel, end);
    most = Math.max(most, living.size);
    await scheduler.schedule(Promise.resolve(), "launch");
    if (fails) {
      living.delete(kernel);
      throw new Error("no kernel today");
    }
    return kernel;
  };
  const crash = (at: number): void => {
    const [kernel, end] = [...living][at] ?? [];
    if (!kernel || !end) return;
    living.delete(kernel);
    end({ code: 1, signal: null, log: "" });
  };
  return { launch, crash, living, most: () => most };
}

describe("kernels", () => {
  it("list every process that lives, and never more than the limit, however requests overlap", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.scheduler(),
        fc.array(step, { minLength: 1, maxLength: 14 }),
        fc.array(fc.boolean(), { maxLength: 3 }),
        async (scheduler, steps, failing) => {
          const { launch, crash, living, most } = world(scheduler, failing);
          const gone: string[] = [];
          const all: string[] = [];
          const ours: Kernels = kernels({
            environment: {},
            most: MOST,
            launch,
            onGone: (id) => gone.push(id),
            say: () => {},
          });
          const act = async (one: Step): Promise<void> => {
            await scheduler.schedule(Promise.resolve(), one.join(" "));
            const id = one[0] === "start" ? "" : (all[one[1]] ?? "absent");
            if (one[0] === "start") all.push(await ours.start("."));
            else if (one[0] === "crash") crash(one[1]);
            else await ours[one[0]](id);
          };
          const acts = Promise.allSettled(steps.map(act));
          await scheduler.waitIdle();
          await acts;
          expect(most()).toBeLessThanOrEqual(MOST);
          const listed = ours.list();
          expect(living.size, "living and listed").toBe(listed.length);
          expect(listed.map(({ execution_state }) => execution_state)).toEqual(listed.map(() => "idle"));
          expect([...gone, ...listed.map(({ id }) => id)].sort(), "each is listed or gone, once").toEqual(
            [...all].sort(),
          );
          const closing = ours.stopAll();
          await scheduler.waitIdle();
          await closing;
          expect(living.size).toBe(0);
          await expect(ours.start(".")).rejects.toThrow("closing");
        },
      ),
      { numRuns: 300 },
    );
  }, 60_000);
});

describe("kernels of a server", () => {
  const { notebooks } = projectWith("every-output", "fails");
  let server: NotebookServer;
  let page: Page;
  let one: Channels;
  beforeAll(async () => {
    server = await serveNotebooks({ folder: notebooks });
    page = pageOf(server);
    one = await page.open("every-output.ipynb");
    await one.run("1");
  }, 60_000);
  afterAll(() => server.close());
  const pidOf = async (): Promise<number> => {
    const { news } = await one.run("console.log('pid', process.pid);");
    return Number(/pid (\d+)/.exec(news.map(({ content }) => content.text ?? "").join(""))?.[1]);
  };
  const others = async (): Promise<number> => {
    // asked of the one kernel that is known, so that the processes of whoever else are not counted
    const count = "'ps -o pid= --ppid ' + process.ppid + ' | grep -vw ' + process.pid + ' | wc -l'";
    const { news } = await one.run(`console.log('n', require('node:child_process').execSync(${count}).toString());`);
    return Number(/n (\d+)/.exec(news.map(({ content }) => content.text ?? "").join(""))?.[1]);
  };

  it("share one restart when six are asked for at once", async () => {
    const before = await pidOf();
    const answers = await Promise.all(
      Array.from({ length: 6 }, () => page.ask("POST", `/api/kernels/${one.kernelId}/restart`)),
    );
    expect(answers.map(({ status }) => status)).toEqual(Array(6).fill(200));
    expect((await page.ask("GET", "/api/kernels")).json).toHaveLength(1);
    expect(await pidOf()).not.toBe(before);
    if (process.platform === "linux") expect(await others(), "beside the one that is listed").toBe(0);
  }, 60_000);

  it("are ended even when they are ended while they restart", async () => {
    const two = await page.open("fails.ipynb");
    await two.run("1");
    const restarts = Array.from({ length: 3 }, () => page.ask("POST", `/api/kernels/${two.kernelId}/restart`));
    const ended = await page.ask("DELETE", `/api/kernels/${two.kernelId}`);
    expect(ended.status).toBe(204);
    for (const { status } of await Promise.all(restarts)) expect([200, 404]).toContain(status);
    expect((await page.ask("GET", "/api/kernels")).json).toHaveLength(1);
    if (process.platform === "linux") expect(await others(), "beside the one that is listed").toBe(0);
    two.close();
  }, 60_000);
});
