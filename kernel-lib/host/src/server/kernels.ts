import { randomUUID } from "node:crypto";
import { type Kernel, startKernel } from "../kernel/start-kernel";
import { type Bridge, bridge } from "./bridge";
import { HttpError } from "./http-error";
import { KERNEL_NAME } from "./kernelspec";

/** A kernel as the Jupyter Server REST API describes it. */
export interface KernelModel {
  readonly id: string;
  readonly name: string;
  readonly execution_state: string;
  readonly connections: number;
  readonly last_activity: string;
}

/** The kernels of one server. */
export interface Kernels {
  readonly list: () => KernelModel[];
  readonly model: (id: string) => KernelModel;
  readonly start: (folder: string) => Promise<string>;
  readonly stop: (id: string) => Promise<void>;
  readonly restart: (id: string) => Promise<void>;
  readonly interrupt: (id: string) => void;
  readonly bridgeOf: (id: string) => Bridge;
  readonly stopAll: () => Promise<void>;
}

/** What `kernels` needs to know. */
export interface KernelsOptions {
  readonly environment: Readonly<Record<string, string>>;
  /** how many may run at once; 8 */
  readonly most?: number;
  /** a kernel with no page connected and nothing running ends after this long, min; 120 */
  readonly idleLimitMin?: number;
  /** called when a kernel is gone for good */
  readonly onGone: (id: string) => void;
  /** news for the terminal */
  readonly say: (line: string) => void;
}

interface Entry {
  readonly folder: string;
  readonly bridge: Bridge;
  kernel: Promise<Kernel>;
  /** times of the last crashes, ms */
  crashes: number[];
  /** set while the end of the process is wanted */
  ending: boolean;
}

/** Starts, restarts and stops kernels; one that crashes is started again, unless it keeps crashing. */
export function kernels(options: KernelsOptions): Kernels {
  const entries = new Map<string, Entry>();

  const entryOf = (id: string): Entry => {
    const entry = entries.get(id);
    if (!entry) throw new HttpError(404, `no such kernel: ${id}`);
    return entry;
  };
  const model = (id: string): KernelModel => ({ id, name: KERNEL_NAME, ...entryOf(id).bridge.state() });
  const launch = (id: string, entry: Entry): Promise<Kernel> => {
    const started = startKernel({ folder: entry.folder, environment: options.environment }).then((kernel) => {
      entry.bridge.connect(kernel);
      void kernel.ended.then(() => {
        if (!entry.ending && entries.get(id) === entry) crashed(id, entry);
      });
      return kernel;
    });
    entry.kernel = started;
    return started;
  };
  const crashed = (id: string, entry: Entry): void => {
    entry.crashes = [...entry.crashes.filter((at) => Date.now() - at < 60_000), Date.now()];
    if (entry.crashes.length > 5) {
      options.say("A kernel ended five times within a minute and is not started again.");
      entry.bridge.lose("the kernel ended while this cell ran", "dead");
      entries.delete(id);
      options.onGone(id);
      return;
    }
    options.say("A kernel ended by itself and is started again; what its cells had defined is gone.");
    entry.bridge.lose("the kernel ended while this cell ran; it is started again", "restarting");
    launch(id, entry).catch((error) => options.say(String(error)));
  };
  const end = async (entry: Entry): Promise<void> => {
    entry.ending = true;
    const kernel = await entry.kernel.catch(() => null);
    await kernel?.stop();
  };
  const stop = async (id: string): Promise<void> => {
    const entry = entryOf(id);
    entries.delete(id);
    await end(entry);
    entry.bridge.lose("the kernel was stopped while this cell ran", "dead");
    options.onGone(id);
  };

  const limitMs = (options.idleLimitMin ?? 120) * 60_000;
  const watch = setInterval(
    () => {
      for (const [id, entry] of entries) {
        const { connections, execution_state, last_activity } = entry.bridge.state();
        const idle =
          connections === 0 && execution_state !== "busy" && Date.now() - Date.parse(last_activity) > limitMs;
        if (idle) void stop(id).catch(() => {});
      }
    },
    Math.min(30_000, limitMs),
  );
  watch.unref();

  return {
    list: () => [...entries.keys()].map(model),
    model,
    start: async (folder) => {
      if (entries.size >= (options.most ?? 8)) {
        throw new HttpError(409, `${entries.size} kernels run already; stop one on the start page first`);
      }
      const id = randomUUID();
      const interrupt = (): void => void entry.kernel.then((kernel) => kernel.interrupt()).catch(() => {});
      const entry: Entry = { folder, bridge: bridge(interrupt), kernel: null as never, crashes: [], ending: false };
      entries.set(id, entry);
      launch(id, entry).catch((error) => {
        entries.delete(id);
        entry.bridge.lose("the kernel did not start", "dead");
        options.onGone(id);
        options.say(String(error));
      });
      return id;
    },
    stop,
    restart: async (id) => {
      const entry = entryOf(id);
      entry.bridge.lose("the kernel was restarted while this cell ran", null);
      await end(entry);
      entry.ending = false;
      await launch(id, entry);
    },
    interrupt: (id) => {
      void entryOf(id).kernel.then((kernel) => kernel.interrupt());
    },
    bridgeOf: (id) => entryOf(id).bridge,
    stopAll: async () => {
      clearInterval(watch);
      await Promise.all([...entries.values()].map(end));
      entries.clear();
    },
  };
}
