import { randomUUID } from "node:crypto";
import type { Stats } from "node:fs";
import { cp, lstat, mkdir, readdir, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, extname, join } from "node:path";
import { LIBRARY } from "../kernel/door-names";
import { asNotebook, type Cell, decodeNotebook, type Notebook, notebookText } from "../notebook/notebook";
import { moveNew, writeWhole } from "../notebook/write-whole";
import { sha256 } from "../share/sha256";
import { checkpointName, checkpointOf, KEPT_EVERY_MS, type KeptState, outdatedStates } from "./checkpoint-names";
import { confine } from "./confine";
import { type HeldFolder, holdFolder } from "./hold-folder";
import { fileFault, HttpError } from "./http-error";
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
  /** of the file's bytes; not in lists */
  readonly hash?: string;
  readonly hash_algorithm?: string;
}

/** What a page sends to be saved. */
export interface SavedModel {
  readonly type?: unknown;
  readonly content?: unknown;
  /** the hash of what was read, null where nothing was; a save that names another than the file's is refused */
  readonly hash?: unknown;
}

/** Notebooks and folders below one root, in the manner of the Jupyter Server contents API. Nothing else is served. */
export interface Contents {
  readonly get: (path: string, withContent: boolean) => Promise<Entry>;
  readonly create: (folder: string, options: { type?: string; copy_from?: string }) => Promise<Entry>;
  readonly save: (path: string, model: SavedModel) => Promise<Entry>;
  readonly move: (from: string, to: string) => Promise<Entry>;
  readonly remove: (path: string) => Promise<void>;
  readonly checkpoints: (path: string) => Promise<Checkpoint[]>;
  readonly checkpoint: (path: string) => Promise<Checkpoint>;
  readonly restore: (path: string, id: string) => Promise<void>;
}

/** An older state that is kept of a notebook. */
export interface Checkpoint {
  readonly id: string;
  readonly last_modified: string;
}

/** The largest notebook that is opened, bytes without indents: what a page sends back must be taken (`BODY_LIMIT`). */
export const NOTEBOOK_LIMIT = 64_000_000;
/** The largest file that is read or written, bytes: indents and all must fit into one text. */
const FILE_LIMIT = 400_000_000;

/** A notebook's place: the held folder, its name there and the two together. */
interface Place {
  readonly folder: HeldFolder;
  readonly name: string;
  readonly file: string;
  /** the real path as it was looked up, for what stands beside it */
  readonly real: string;
}

/**
 * What is below `root`; what is removed goes to `trash`, never off the disk. Changes are made one after the other, so
 * that each sees what the one before has left.
 */
export function contents(root: string, trash: string): Contents {
  /** Lends the place of a path, in a folder that is held. */
  const at = async <T>(path: string, use: (place: Place) => Promise<T>, make = false): Promise<T> => {
    const real = await confine(root, path);
    if (path === "") throw new HttpError(404, `no such file: ${path}`);
    return holdFolder(root, { folder: dirname(real), make }, (folder) =>
      use({ folder, name: basename(real), file: join(folder.place, basename(real)), real }),
    );
  };
  const notebookAt = <T>(path: string, use: (place: Place) => Promise<T>): Promise<T> =>
    at(path, async (place) => {
      if (!isNotebook(place.name) || !(await factsOf(place.file))?.isFile())
        throw new HttpError(404, `no such notebook: ${path}`);
      return use(place);
    });

  const get = async (path: string, withContent: boolean): Promise<Entry> => {
    if (path === "") return folderEntry(path, await stat(root), withContent);
    return at(path, async ({ folder, name, file }) => {
      const facts = await factsOf(file);
      if (facts === null) throw new HttpError(404, `no such file: ${path}`);
      if (facts.isDirectory()) return folderEntry(path, facts, withContent);
      if (!isNotebook(name)) throw new HttpError(404, `no such notebook: ${path}`);
      const read = await readIn(folder, name, path);
      const notebook = withContent ? opened(read.bytes, path) : null;
      return { ...notebookEntry(path, read.facts, notebook), ...hashed(read.bytes) };
    });
  };
  const folderEntry = async (path: string, facts: Stats, withContent: boolean): Promise<Entry> => ({
    ...described(path, facts),
    type: "directory",
    size: null,
    mimetype: null,
    format: withContent ? "json" : null,
    content: withContent ? await list(path) : null,
  });
  const list = async (path: string): Promise<Entry[]> => {
    const names = await holdFolder(root, { folder: await confine(root, path) }, ({ place }) => readdir(place));
    const entries: Entry[] = [];
    for (const name of names) {
      if (name.startsWith(".")) continue;
      const found = await listed(path ? `${path}/${name}` : name).catch(() => null); // a link that leads out, say
      if (found) entries.push(found);
    }
    return entries.sort((one, other) => one.name.localeCompare(other.name, "en", { numeric: true }));
  };
  const listed = (path: string): Promise<Entry | null> =>
    at(path, async ({ name, file }) => {
      const facts = await factsOf(file);
      if (facts?.isDirectory()) return folderEntry(path, facts, false);
      return facts?.isFile() && isNotebook(name) ? notebookEntry(path, facts, null) : null;
    });

  /** Makes something under the first of `stem.ext`, `stem-1.ext` … that is free, and says which it was. */
  const firstFree = async (path: string, make: (file: string) => Promise<void>): Promise<Entry> => {
    const extension = extname(path);
    const stem = path.slice(0, path.length - extension.length);
    for (let number = 0; ; number++) {
      const candidate = number === 0 ? path : `${stem}-${number}${extension}`;
      const isMade = await at(candidate, async ({ file }) => {
        if (await factsOf(file)) return false;
        return make(file).then(
          () => true,
          (error) => {
            if (error.code === "EEXIST") return false;
            throw error;
          },
        );
      });
      if (isMade) return get(candidate, false);
    }
  };
  const create = async (folder: string, options: { type?: string; copy_from?: string }): Promise<Entry> => {
    const within = folder ? `${folder}/` : "";
    if (options.copy_from) {
      const from = clean(options.copy_from);
      const bytes = await notebookAt(from, async ({ folder, name }) => (await readIn(folder, name, from)).bytes);
      const copy = `${within}${basename(from, ".ipynb")}-copy.ipynb`;
      return firstFree(copy, (file) => writeWhole(file, bytes, { replace: false }));
    }
    if (options.type === "directory") return firstFree(`${within}folder`, (file) => mkdir(file));
    if (options.type !== "notebook") throw new HttpError(400, "only notebooks and folders can be made here");
    const text = notebookText(newNotebook());
    return firstFree(`${within}untitled.ipynb`, (file) => writeWhole(file, text, { replace: false }));
  };

  const save = async (path: string, model: SavedModel): Promise<Entry> => {
    const { type, content, hash: due } = model;
    const write = async (place: Place): Promise<Entry> => {
      const { folder, name, file } = place;
      if (type !== "notebook" || !isNotebook(name)) throw new HttpError(400, "only notebooks can be saved here");
      if (!["string", "undefined"].includes(typeof due) && due !== null)
        throw new HttpError(400, "a hash must be text, or null where nothing was read");
      const bytes = new TextEncoder().encode(notebookText(refusing(() => asNotebook(content, path))));
      if (bytes.length > FILE_LIMIT) throw tooLarge(path, FILE_LIMIT);
      if ((await factsOf(file))?.isDirectory()) throw new HttpError(409, `${path}: is a folder`);
      if (due !== undefined) await checkHash(folder, name, path, due as string | null);
      if (await factsOf(file)) await keep(place, path, false);
      await writeWhole(file, bytes);
      return { ...notebookEntry(path, await stat(file), null), ...hashed(bytes) };
    };
    // a folder that was taken away while its notebook was open comes back, or the work would be lost
    return at(path, write, true);
  };

  const move = (from: string, to: string): Promise<Entry> =>
    at(from, ({ file: source }) =>
      at(to, async ({ file: goal, name }) => {
        const facts = await factsOf(source);
        if (facts === null) throw new HttpError(404, `no such file: ${from}`);
        if (!facts.isDirectory() && !isNotebook(name)) throw new HttpError(400, "a notebook's name must end in .ipynb");
        if (await factsOf(goal)) throw new HttpError(409, `${to} exists already`);
        await (facts.isDirectory() ? rename(source, goal) : moveNew(source, goal));
        return get(to, false);
      }),
    );

  const remove = (path: string): Promise<void> =>
    at(path, async ({ file, name }) => {
      if (!(await factsOf(file))) throw new HttpError(404, `no such file: ${path}`);
      await mkdir(trash, { recursive: true });
      const stamp = new Date().toISOString().replace(/[:.]/g, "-");
      let goal = join(trash, `${stamp}-${name}`);
      for (let number = 1; await factsOf(goal); number++) goal = join(trash, `${stamp}-${number}-${name}`);
      await rename(file, goal).catch(async (error: NodeJS.ErrnoException) => {
        if (error.code !== "EXDEV") throw error; // the trash folder is on another disk
        await cp(file, goal, { recursive: true, verbatimSymlinks: true });
        await rm(file, { recursive: true });
      });
    });

  /** Lends the folder of a notebook's checkpoints and what its name begins with there; null where there is none and none is made. */
  const atCheckpoints = async <T>(
    place: Place,
    make: boolean,
    use: (folder: HeldFolder, stem: string) => Promise<T>,
  ): Promise<T | null> => {
    if (!make && !(await factsOf(join(place.folder.place, ".ipynb_checkpoints")))) return null;
    return holdFolder(root, { folder: join(dirname(place.real), ".ipynb_checkpoints"), make }, (folder) =>
      use(folder, basename(place.name, ".ipynb")),
    );
  };
  /** The states that are kept, the newest first. */
  const statesIn = async (folder: HeldFolder, stem: string): Promise<KeptState[]> => {
    const states: KeptState[] = [];
    for (const name of await readdir(folder.place)) {
      const told = checkpointOf(stem, name);
      const isOld = name === `${stem}-checkpoint.ipynb`;
      if (told === null && !isOld) continue;
      const facts = await factsOf(join(folder.place, name));
      if (facts?.isFile())
        states.push({ name, bytes: facts.size, ...(told ?? { id: "checkpoint", atMs: Math.floor(facts.mtimeMs) }) });
    }
    return states.sort((one, other) => other.atMs - one.atMs);
  };
  const checkpointEntry = ({ id, atMs }: Pick<KeptState, "id" | "atMs">): Checkpoint => ({
    id,
    last_modified: new Date(atMs).toISOString(),
  });
  const checkpoints = (path: string): Promise<Checkpoint[]> =>
    notebookAt(path, async (place) => {
      const states = await atCheckpoints(place, false, statesIn);
      return (states ?? []).map(checkpointEntry);
    });
  /** Keeps how a notebook stands: always when asked, else when the newest that is kept is some minutes old and says something else. */
  const keep = async (place: Place, path: string, asked: boolean): Promise<Checkpoint | null> => {
    const { bytes, facts } = await readIn(place.folder, place.name, path);
    return atCheckpoints(place, true, async (folder, stem) => {
      const [newest] = await statesIn(folder, stem);
      const nowMs = Date.now();
      const isYoung = newest !== undefined && nowMs - newest.atMs < KEPT_EVERY_MS && newest.atMs <= nowMs;
      if (!asked && isYoung) return null;
      if (newest !== undefined && hashed((await readIn(folder, newest.name, path)).bytes).hash === hashed(bytes).hash)
        return checkpointEntry(newest);
      // of two states in one millisecond both are kept
      let atMs = asked ? nowMs : Math.floor(facts.mtimeMs);
      while (await factsOf(join(folder.place, checkpointName(stem, atMs)))) atMs++;
      await writeWhole(join(folder.place, checkpointName(stem, atMs)), bytes);
      for (const { name } of outdatedStates(await statesIn(folder, stem), nowMs)) await rm(join(folder.place, name));
      return checkpointEntry({ id: checkpointOf(stem, checkpointName(stem, atMs))?.id ?? "", atMs });
    });
  };
  const checkpoint = (path: string): Promise<Checkpoint> =>
    notebookAt(path, async (place) => (await keep(place, path, true)) as Checkpoint);
  const restore = (path: string, id: string): Promise<void> =>
    notebookAt(path, async (place) => {
      const none = `no checkpoint ${id} of ${path}`;
      const bytes = await atCheckpoints(place, false, async (folder, stem) => {
        const state = (await statesIn(folder, stem)).find((one) => one.id === id);
        return state === undefined ? null : (await readIn(folder, state.name, path)).bytes;
      });
      if (bytes === null) throw new HttpError(404, none);
      // what stands there now can be brought back too
      await keep(place, path, true);
      await writeWhole(place.file, bytes);
    });

  let last: Promise<unknown> = Promise.resolve();
  /** Does an act once those before it are done. */
  const inTurn = <T>(act: () => Promise<T>): Promise<T> => {
    const turn = last.then(act);
    last = turn.catch(() => {});
    return turn;
  };
  const said = <T>(path: string, act: (path: string) => Promise<T>): Promise<T> =>
    act(clean(path)).catch((error) => {
      throw fileFault(error, clean(path));
    });
  return {
    get: (path, withContent) => said(path, (at) => get(at, withContent)),
    create: (folder, options) => said(folder, (at) => inTurn(() => create(at, options))),
    save: (path, model) => said(path, (at) => inTurn(() => save(at, model))),
    move: (from, to) => said(to, (at) => inTurn(() => move(clean(from), at))),
    remove: (path) => said(path, (at) => inTurn(() => remove(at))),
    checkpoints: (path) => said(path, checkpoints),
    checkpoint: (path) => said(path, (at) => inTurn(() => checkpoint(at))),
    restore: (path, id) => said(path, (at) => inTurn(() => restore(at, id))),
  };
}

/** A path without empty parts, as entries and sentences show it. */
function clean(path: string): string {
  if (typeof path !== "string") throw new HttpError(400, "a path must be text");
  return path.split("/").filter(Boolean).join("/");
}

/** The bytes of a notebook's file and what is known of it, both of what was opened. */
async function readIn(folder: HeldFolder, name: string, path: string): Promise<{ bytes: Uint8Array; facts: Stats }> {
  const file = await folder.openFile(name);
  if (file === null) throw new HttpError(404, `no such notebook: ${path}`);
  try {
    const facts = await file.stat();
    if (facts.size > FILE_LIMIT) throw tooLarge(path, FILE_LIMIT);
    return { bytes: new Uint8Array(await file.readFile()), facts };
  } finally {
    await file.close();
  }
}

/** Refuses a save that was made on another state than the file's. */
async function checkHash(folder: HeldFolder, name: string, path: string, due: string | null): Promise<void> {
  const stands = (await factsOf(join(folder.place, name))) !== null;
  const hash = stands ? hashed((await readIn(folder, name, path)).bytes).hash : null;
  if (hash === due) return;
  if (due === null) throw new HttpError(409, `${path} exists already; nothing was saved`);
  const what = stands ? "changed" : "removed";
  throw new HttpError(409, `${path} was ${what} since it was read here; nothing was saved`);
}

/** A notebook as a page gets it: no stored output is trusted, as the page trusts what it has itself seen run. */
function opened(bytes: Uint8Array, path: string): Notebook {
  const notebook = refusing(() => decodeNotebook(bytes, path));
  for (const cell of notebook.cells) delete cell.metadata.trusted;
  const isLarge = bytes.length > NOTEBOOK_LIMIT && Buffer.byteLength(JSON.stringify(notebook)) > NOTEBOOK_LIMIT;
  if (isLarge) throw tooLarge(path, NOTEBOOK_LIMIT);
  return notebook;
}

function refusing(read: () => Notebook): Notebook {
  try {
    return read();
  } catch (error) {
    throw new HttpError(400, (error as Error).message);
  }
}

function tooLarge(path: string, most: number): HttpError {
  return new HttpError(413, `${path} must have at most ${most / 1e6} MB to be opened or saved here`);
}

function hashed(bytes: Uint8Array): { hash: string; hash_algorithm: string } {
  return { hash: sha256(bytes), hash_algorithm: "sha256" };
}

function described(path: string, facts: Stats) {
  return {
    name: basename(path),
    path,
    writable: true,
    created: facts.birthtime.toISOString(),
    last_modified: facts.mtime.toISOString(),
  };
}

function notebookEntry(path: string, facts: Stats, content: Notebook | null): Entry {
  const format = content ? "json" : null;
  return { ...described(path, facts), type: "notebook", size: facts.size, mimetype: null, format, content };
}

/** What is known of a file or folder, null when there is none. */
function factsOf(file: string): Promise<Stats | null> {
  return lstat(file).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "ENOENT") return null;
    throw error;
  });
}

function isNotebook(name: string): boolean {
  return name.endsWith(".ipynb");
}

/** What a new notebook begins with: the kitchen, loaded, and a cell to go on in. */
function newNotebook(): Notebook {
  const kernelspec = { display_name: KERNEL_TITLE, language: "typescript", name: KERNEL_NAME };
  const cells = [FIRST_CELL, ""].map(
    (source): Cell => ({
      cell_type: "code",
      id: randomUUID(),
      metadata: {},
      execution_count: null,
      outputs: [],
      source,
    }),
  );
  return { nbformat: 4, nbformat_minor: 5, metadata: { kernelspec, language_info: LANGUAGE_INFO }, cells };
}

const FIRST_CELL = `import { loadKitchen, show } from "${LIBRARY}";\n\nconst kitchen = loadKitchen();`;
