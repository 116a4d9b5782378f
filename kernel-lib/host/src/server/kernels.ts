import { randomUUID } from "node:crypto";
import { type Kernel, type KernelOptions, startKernel } from "../kernel/start-kernel";
import { type Bridge, bridge } from "./bridge";
import { HttpError } from "./http-error";
import { KERNEL_NAME } from "./kernelspec";
import type { NotedReads } from "./noted-reads";

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
  /** notes what one kernel's cells read, for the replies to them; left out, nobody does */
  readonly notes?: () => NotedReads;
  /** how many may run at once; 8 */
  readonly most?: number;
  /** a kernel with no page connected and nothing running ends after this long, min; 120 */
  readonly idleLimitMin?: number;
  /** called when a kernel is gone for good */
  readonly onGone: (id: string) => void;
  /** news for the terminal */
  readonly say: (line: string) => void;
  /** starts one kernel; `startKernel` */
  readonly launch?: (options: KernelOptions) => Promise<Kernel>;
}

interface Entry {
  readonly folder: string;
  readonly bridge: Bridge;
  readonly reads: NotedReads | null;
  kernel: Promise<Kernel>;
  /** times of the last crashes, ms */
  crashes: number[];
  /** set while the end of the process is wanted */
  ending: boolean;
  /** the restart that is under way, which whoever asks for another one shares */
  restarting: Promise<void> | null;
}

/**
 * Starts, restarts and stops kernels; one that crashes is started again, unless it keeps crashing. However requests
 * overlap, every process that lives is listed or on its way out, and there are never more of them than the limit.
 */
export function kernels(options: KernelsOptions): Kernels {
  const entries = new Map<string, Entry>();
  const leaving = new Set<Entry>();
  const most = options.most ?? 8;
  let closed = false;

  const entryOf = (id: string): Entry => {
    const entry = entries.get(id);
    if (!entry) throw new HttpError(404, `no such kernel: ${id}`);
    return entry;
  };
  const model = (id: string): KernelModel => ({ id, name: KERNEL_NAME, ...entryOf(id).bridge.state() });
  const isListed = (id: string, entry: Entry): boolean => entries.get(id) === entry;
  const launch = (id: string, entry: Entry): Promise<Kernel> => {
    const wanted = { folder: entry.folder, environment: { ...options.environment, ...entry.reads?.environment } };
    const started = (options.launch ?? startKernel)(wanted).then(async (kernel) => {
      if (!isListed(id, entry)) {
        await kernel.stop();
        throw new HttpError(404, `no such kernel: ${id}`);
      }
      if (!entry.ending) entry.bridge.connect(kernel);
      void kernel.ended.then(() => {
        if (!entry.ending && entry.kernel === started && isListed(id, entry)) crashed(id, entry);
      });
      return kernel;
    });
    entry.kernel = started;
    return started;
  };
  const giveUp = (id: string, entry: Entry, reason: string): void => {
    if (!isListed(id, entry)) return;
    entries.delete(id);
    entry.bridge.lose(reason, "dead");
    entry.reads?.close();
    options.onGone(id);
  };
  const crashed = (id: string, entry: Entry): void => {
    entry.crashes = [...entry.crashes.filter((at) => Date.now() - at < 60_000), Date.now()];
    if (entry.crashes.length > 5) {
      options.say("A kernel ended five times within a minute and is not started again.");
      giveUp(id, entry, "the kernel ended while this cell ran");
      return;
    }
    options.say("A kernel ended by itself and is started again; what its cells had defined is gone.");
    entry.bridge.lose("the kernel ended while this cell ran; it is started again", "restarting");
    launchOrGiveUp(id, entry);
  };
  const launchOrGiveUp = (id: string, entry: Entry): void => {
    launch(id, entry).catch((error) => {
      if (!isListed(id, entry) || entry.ending) return; // it was stopped or is started anew meanwhile
      giveUp(id, entry, "the kernel did not start");
      options.say(String(error));
    });
  };
  const end = async (entry: Entry): Promise<void> => {
    entry.ending = true;
    const kernel = await entry.kernel.catch(() => null);
    await kernel?.stop();
  };
  const stop = async (id: string): Promise<void> => {
    const entry = entryOf(id);
    giveUp(id, entry, "the kernel was stopped while this cell ran");
    leaving.add(entry);
    await end(entry).finally(() => leaving.delete(entry));
  };
  const startAgain = async (id: string, entry: Entry): Promise<void> => {
    entry.bridge.lose("the kernel was restarted while this cell ran", null);
    await end(entry);
    if (!isListed(id, entry)) throw new HttpError(404, `no such kernel: ${id}`);
    entry.ending = false;
    await launch(id, entry).catch((error) => {
      giveUp(id, entry, "the kernel did not start");
      throw error;
    });
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
      if (closed) throw new HttpError(503, "the server is closing");
      if (entries.size + leaving.size >= most) {
        throw new HttpError(409, `${most} kernels run already; stop one on the start page first`);
      }
      const id = randomUUID();
      const interrupt = (): void => void entry.kernel.then((kernel) => kernel.interrupt()).catch(() => {});
      const reads = options.notes?.() ?? null;
      const entry: Entry = {
        folder,
        bridge: bridge(interrupt, reads?.take),
        reads,
        kernel: null as never,
        crashes: [],
        ending: false,
        restarting: null,
      };
      entries.set(id, entry);
      launchOrGiveUp(id, entry);
      return id;
    },
    stop,
    restart: async (id) => {
      const entry = entryOf(id);
      entry.restarting ??= startAgain(id, entry).finally(() => {
        entry.restarting = null;
      });
      await entry.restarting;
    },
    interrupt: (id) => {
      entryOf(id)
        .kernel.then((kernel) => kernel.interrupt())
        .catch(() => {}); // a kernel that did not start has nothing to interrupt
    },
    bridgeOf: (id) => entryOf(id).bridge,
    stopAll: async () => {
      clearInterval(watch);
      closed = true;
      const all = [...entries.values(), ...leaving];
      entries.clear();
      await Promise.all(all.map(end));
      for (const { reads } of all) reads?.close();
    },
  };
}
