import { createHash } from "node:crypto";
import { existsSync } from "node:fs";
import { copyFile, mkdir, readdir, readFile, rename, stat } from "node:fs/promises";
import { basename, dirname, extname, join } from "node:path";
import { type Notebook, notebookText, parseNotebook } from "../notebook/notebook";
import { writeWhole } from "../notebook/write-whole";
import { confine } from "./confine";
import { HttpError } from "./http-error";
import { KERNEL_NAME, KERNEL_TITLE, LANGUAGE_INFO } from "./kernelspec";

/** A file or folder as the Jupyter Server REST API describes it. */
export interface Entry {
  readonly name: string;
  readonly path: string;
  readonly type: "directory" | "notebook";
  readonly writable: boolean;
  readonly created: string;
  readonly last_modified: string;
  readonly size: number | null;
  readonly mimetype: string | null;
  readonly format: "json" | null;
  readonly content: unknown;
  readonly hash?: string;
  readonly hash_algorithm?: string;
}

/** Notebooks and folders below one root, in the manner of the Jupyter Server contents API. Nothing else is served. */
export interface Contents {
  readonly get: (path: string, withContent: boolean) => Promise<Entry>;
  readonly create: (folder: string, options: { type?: string; copy_from?: string }) => Promise<Entry>;
  readonly save: (path: string, model: { type?: string; content?: unknown }) => Promise<Entry>;
  readonly move: (from: string, to: string) => Promise<Entry>;
  readonly remove: (path: string) => Promise<void>;
  readonly checkpoints: (path: string) => Promise<Checkpoint[]>;
  readonly checkpoint: (path: string) => Promise<Checkpoint>;
  readonly restore: (path: string) => Promise<void>;
}

/** The one older state that is kept of a notebook. */
export interface Checkpoint {
  readonly id: string;
  readonly last_modified: string;
}

/** What is below `root`; what is removed goes to `trash`, never off the disk. */
export function contents(root: string, trash: string): Contents {
  const place = (path: string): Promise<string> => confine(root, path);
  const clean = (path: string): string => path.split("/").filter(Boolean).join("/");

  const get = async (path: string, withContent: boolean): Promise<Entry> => {
    const file = await place(path);
    const facts = await stat(file).catch(() => {
      throw new HttpError(404, `no such file: ${path}`);
    });
    const base = {
      name: basename(clean(path)),
      path: clean(path),
      writable: true,
      created: facts.birthtime.toISOString(),
      last_modified: facts.mtime.toISOString(),
    };
    if (facts.isDirectory()) {
      const content = withContent ? await list(path, file) : null;
      return { ...base, type: "directory", size: null, mimetype: null, format: content ? "json" : null, content };
    }
    if (!facts.isFile() || !isNotebook(file)) throw new HttpError(404, `no such notebook: ${path}`);
    const text = await readFile(file, "utf8");
    return {
      ...base,
      type: "notebook",
      size: facts.size,
      mimetype: null,
      format: withContent ? "json" : null,
      content: withContent ? untrusted(parse(text, path)) : null,
      hash: createHash("sha256").update(text).digest("hex"),
      hash_algorithm: "sha256",
    };
  };

  const list = async (path: string, folder: string): Promise<Entry[]> => {
    const entries: Entry[] = [];
    for (const entry of await readdir(folder, { withFileTypes: true })) {
      if (entry.name.startsWith(".") || !(entry.isDirectory() || isNotebook(entry.name))) continue;
      const found = await get(`${clean(path)}/${entry.name}`, false).catch(() => null); // a link that leads out, say
      if (found) entries.push(found);
    }
    return entries.sort((one, other) => one.name.localeCompare(other.name, "en", { numeric: true }));
  };

  const free = async (path: string): Promise<string> => {
    const extension = extname(path);
    const stem = path.slice(0, path.length - extension.length);
    for (let number = 0; ; number++) {
      const candidate = number === 0 ? path : `${stem}-${number}${extension}`;
      if (!existsSync(await place(candidate))) return candidate;
    }
  };

  const checkpointOf = async (path: string): Promise<{ file: string; kept: string }> => {
    const file = await place(path);
    if (!isNotebook(file) || !existsSync(file)) throw new HttpError(404, `no such notebook: ${path}`);
    const kept = join(dirname(file), ".ipynb_checkpoints", `${basename(file, ".ipynb")}-checkpoint.ipynb`);
    return { file, kept };
  };
  const describe = async (kept: string): Promise<Checkpoint> => ({
    id: "checkpoint",
    last_modified: (await stat(kept)).mtime.toISOString(),
  });

  return {
    get,
    create: async (folder, options) => {
      const at = clean(folder);
      if (options.copy_from) {
        const from = await place(options.copy_from);
        if (!isNotebook(from) || !existsSync(from)) throw new HttpError(404, `no such notebook: ${options.copy_from}`);
        const copy = await free(`${at}/${basename(from, ".ipynb")}-copy.ipynb`);
        await copyFile(from, await place(copy));
        return get(copy, false);
      }
      if (options.type === "directory") {
        const path = await free(`${at}/folder`);
        await mkdir(await place(path));
        return get(path, false);
      }
      if (options.type !== "notebook") throw new HttpError(400, "only notebooks and folders can be made here");
      const path = await free(`${at}/untitled.ipynb`);
      await writeWhole(await place(path), notebookText(emptyNotebook()));
      return get(path, false);
    },
    save: async (path, model) => {
      const file = await place(path);
      if (model.type !== "notebook" || !isNotebook(file)) throw new HttpError(400, "only notebooks can be saved here");
      await writeWhole(file, notebookText(parse(JSON.stringify(model.content ?? null), path)));
      return get(path, false);
    },
    move: async (from, to) => {
      const [source, goal] = [await place(from), await place(to)];
      const isFolder = (await stat(source).catch(() => null))?.isDirectory();
      if (isFolder === undefined) throw new HttpError(404, `no such file: ${from}`);
      if (!isFolder && !isNotebook(goal)) throw new HttpError(400, "a notebook's name must end in .ipynb");
      if (existsSync(goal)) throw new HttpError(409, `${clean(to)} exists already`);
      await rename(source, goal);
      return get(to, false);
    },
    remove: async (path) => {
      const file = await place(path);
      if (clean(path) === "" || !existsSync(file)) throw new HttpError(404, `no such file: ${path}`);
      await mkdir(trash, { recursive: true });
      const stamp = new Date().toISOString().replace(/[:.]/g, "-");
      await rename(file, join(trash, `${stamp}-${basename(file)}`));
    },
    checkpoints: async (path) => {
      const { kept } = await checkpointOf(path);
      return existsSync(kept) ? [await describe(kept)] : [];
    },
    checkpoint: async (path) => {
      const { file, kept } = await checkpointOf(path);
      await writeWhole(kept, await readFile(file, "utf8"));
      return describe(kept);
    },
    restore: async (path) => {
      const { file, kept } = await checkpointOf(path);
      if (!existsSync(kept)) throw new HttpError(404, `no checkpoint of ${path}`);
      await writeWhole(file, await readFile(kept, "utf8"));
    },
  };
}

function parse(text: string, path: string): Notebook {
  try {
    return parseNotebook(text, path);
  } catch (error) {
    throw new HttpError(400, (error as Error).message);
  }
}

/** No stored output is trusted: the page trusts what it has itself seen run. */
function untrusted(notebook: Notebook): Notebook {
  for (const cell of notebook.cells) delete cell.metadata.trusted;
  return notebook;
}

function isNotebook(name: string): boolean {
  return name.endsWith(".ipynb");
}

function emptyNotebook(): Notebook {
  const kernelspec = { display_name: KERNEL_TITLE, language: "typescript", name: KERNEL_NAME };
  return { nbformat: 4, nbformat_minor: 5, metadata: { kernelspec, language_info: LANGUAGE_INFO }, cells: [] };
}
