import { randomUUID } from "node:crypto";
import { existsSync } from "node:fs";
import { HttpError } from "./http-error";
import type { KernelModel, Kernels } from "./kernels";

/** A notebook with its kernel, as the Jupyter Server REST API describes it. */
export interface SessionModel {
  readonly id: string;
  readonly path: string;
  readonly name: string;
  readonly type: string;
  readonly kernel: KernelModel;
}

/** Which notebook has which kernel. */
export interface Sessions {
  readonly list: () => SessionModel[];
  readonly model: (id: string) => SessionModel;
  /**
   * The session of a path; a kernel starts if it has none yet. Pages ask for a path that does not exist,
   * in the notebook's folder, and change it to the notebook's own afterwards.
   */
  readonly open: (path: string) => Promise<SessionModel>;
  readonly change: (
    id: string,
    change: { path?: string; kernel?: { id?: string; name?: string } },
  ) => Promise<SessionModel>;
  readonly close: (id: string) => Promise<void>;
  readonly drop: (kernelId: string) => void;
}

interface Entry {
  path: string;
  kernelId: string;
}

/**
 * The sessions of one server: one for each open notebook, however many pages show it.
 *
 * @param folderOf the folder in which the kernel of a path works; throws for a path that is none
 */
export function sessions(folderOf: (path: string) => Promise<string>, kernels: () => Kernels): Sessions {
  const entries = new Map<string, Entry>();
  const opening = new Map<string, Promise<string>>();

  const entryOf = (id: string): Entry => {
    const entry = entries.get(id);
    if (!entry) throw new HttpError(404, `no such session: ${id}`);
    return entry;
  };
  const model = (id: string): SessionModel => {
    const { path, kernelId } = entryOf(id);
    const name = path.split("/").at(-1) ?? path;
    return { id, path, name, type: "notebook", kernel: kernels().model(kernelId) };
  };
  const start = async (path: string): Promise<string> => {
    const folder = await folderOf(path);
    if (!existsSync(folder)) throw new HttpError(404, `no such folder: ${path}`);
    const kernelId = await kernels().start(folder);
    const id = randomUUID();
    entries.set(id, { path, kernelId });
    return id;
  };

  return {
    list: () => [...entries.keys()].map(model),
    model,
    open: async (path) => {
      for (const [id, entry] of entries) if (entry.path === path) return model(id);
      const started = opening.get(path) ?? start(path).finally(() => opening.delete(path));
      opening.set(path, started);
      return model(await started);
    },
    change: async (id, change) => {
      const entry = entryOf(id);
      if (change.path !== undefined) {
        await folderOf(change.path);
        entry.path = change.path;
      }
      const other = change.kernel?.id;
      if (other !== undefined && other !== entry.kernelId) {
        kernels().model(other); // 404 when there is none
        entry.kernelId = other;
      } else if (change.kernel?.name !== undefined && other === undefined) {
        const old = entry.kernelId;
        const started = await kernels().start(await folderOf(entry.path));
        const overtaken = entries.get(id) !== entry || entry.kernelId !== old; // by an end or by another change
        if (!overtaken) entry.kernelId = started;
        await kernels()
          .stop(overtaken ? started : old)
          .catch(() => {}); // it may be gone already
      }
      return model(id);
    },
    close: async (id) => {
      const { kernelId } = entryOf(id);
      entries.delete(id);
      await kernels().stop(kernelId);
    },
    drop: (kernelId) => {
      for (const [id, entry] of entries) if (entry.kernelId === kernelId) entries.delete(id);
    },
  };
}
