import { mkdir } from "node:fs/promises";
import { basename } from "node:path";
import type { Contents, Entry } from "../server/contents";
import { HttpError } from "../server/http-error";

/** The first part of the path of a notebook that lies in the open kitchen's own folder. */
export const SHELF = "kitchen";

/** Two places of notebooks. */
export interface ShelfOptions {
  /** those of the project, which every kitchen runs */
  readonly project: Contents;
  /** those of the open kitchen */
  readonly kitchen: Contents;
  /** the folder of the kitchen's notebooks; made with the first of them */
  readonly folder: string;
}

/**
 * Notebooks of the project and of the open kitchen as one: those of the kitchen lie below `kitchen/`. A notebook is copied
 * from one to the other, and not moved.
 */
export function kitchenShelf({ project, kitchen, folder }: ShelfOptions): Contents {
  const placed = (path: string): { readonly on: Contents; readonly within: string; readonly own: boolean } => {
    const within = shelfPath(path);
    return within === null ? { on: project, within: path, own: false } : { on: kitchen, within, own: true };
  };
  const named = (entry: Entry, own: boolean): Entry => {
    if (!own) return entry;
    const path = entry.path === "" ? SHELF : `${SHELF}/${entry.path}`;
    const content =
      entry.type === "directory" && entry.content !== null
        ? (entry.content as Entry[]).map((one) => named(one, true))
        : entry.content;
    return { ...entry, path, name: basename(path), content };
  };
  const onShelf = async <T>(own: boolean, act: () => Promise<T>): Promise<T> => {
    if (own) await mkdir(folder, { recursive: true });
    return act();
  };
  return {
    get: async (path, withContent) => {
      const { on, within, own } = placed(path);
      const entry = named(await on.get(within, withContent), own);
      if (own || entry.type !== "directory" || entry.path !== "" || entry.content === null) return entry;
      const shelf = await kitchen.get("", false).catch(() => null); // not there before its first notebook
      const others = (entry.content as Entry[]).filter(({ name }) => name !== SHELF);
      return { ...entry, content: shelf === null ? others : [...others, named(shelf, true)] };
    },
    create: async (path, options) => {
      const { on, within, own } = placed(path);
      const from = options.copy_from === undefined ? null : placed(options.copy_from);
      if (from === null || from.own === own)
        return onShelf(own, async () =>
          named(await on.create(within, from === null ? options : { copy_from: from.within }), own),
        );
      const { content } = await from.on.get(from.within, true);
      const stem = `${within === "" ? "" : `${within}/`}${basename(from.within, ".ipynb")}-copy`;
      return onShelf(own, async () => {
        for (let number = 0; ; number++) {
          const copy = `${stem}${number === 0 ? "" : `-${number}`}.ipynb`;
          const made = await on
            .save(copy, { type: "notebook", content, hash: null })
            .catch((error) => (error instanceof HttpError && error.status === 409 ? null : Promise.reject(error)));
          if (made !== null) return named(made, own);
        }
      });
    },
    save: async (path, model) => {
      const { on, within, own } = placed(path);
      return onShelf(own, async () => named(await on.save(within, model), own));
    },
    move: async (from, to) => {
      const [source, goal] = [placed(from), placed(to)];
      if (source.own !== goal.own)
        throw new HttpError(400, `a notebook stays with its kitchen or the project: copy ${from}`);
      return named(await source.on.move(source.within, goal.within), source.own);
    },
    remove: async (path) => {
      const { on, within } = placed(path);
      return on.remove(within);
    },
    checkpoints: async (path) => placed(path).on.checkpoints(placed(path).within),
    checkpoint: async (path) => placed(path).on.checkpoint(placed(path).within),
    restore: async (path, id) => placed(path).on.restore(placed(path).within, id),
  };
}

/** The path of a notebook within the kitchen's folder of them; null for one of the project. */
export function shelfPath(path: string): string | null {
  const [first, ...rest] = String(path).split("/").filter(Boolean);
  return first === SHELF ? rest.join("/") : null;
}
