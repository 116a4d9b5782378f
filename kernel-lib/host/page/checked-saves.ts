import type { DocumentRegistry } from "@jupyterlab/docregistry";
import { type Contents, Drive, ServerConnection } from "@jupyterlab/services";

/**
 * The server's files, where a save names the hash of what this page last saw of the file, null when there was none.
 * JupyterLab's own look before each save leaves a moment in which another page may save; the server then refuses.
 */
export function checkedDrive(): Drive {
  const drive = new Drive();
  const [get, save] = [drive.get.bind(drive), drive.save.bind(drive)];
  const seen = new Map<string, string | null>();
  let saved: Contents.IModel | null = null;
  drive.get = async (path, options) => {
    // after a save the document asks for the file's hash: that of its own save, not of what another may have put there
    const own = saved;
    saved = null;
    if (own?.path === path && options?.content === false) return own;
    try {
      const model = await get(path, options);
      if (model.type === "notebook") seen.set(path, model.hash ?? null);
      return model;
    } catch (error) {
      if (statusOf(error) === 404) seen.set(path, null);
      throw error;
    }
  };
  drive.save = async (path, options) => {
    try {
      const model = await save(path, { ...options, hash: seen.get(path) } as Partial<Contents.IModel>);
      seen.set(path, model.hash ?? null);
      saved = model;
      return model;
    } catch (error) {
      throw statusOf(error) === 409 ? new ChangedMeanwhile() : error;
    }
  };
  return drive;
}

/** Saves; where another page has saved in the same moment, looks at the disk again, which asks what is to be done. */
export async function saveChecked(context: DocumentRegistry.Context): Promise<void> {
  for (let left = 3; ; left--) {
    try {
      return await context.save();
    } catch (error) {
      if (!(error instanceof ChangedMeanwhile) || left === 0) throw error;
    }
  }
}

class ChangedMeanwhile extends Error {
  /** the name of errors that documents pass on without a dialog of their own */
  override readonly name = "ModalCancelError";

  constructor() {
    super("the file was changed in the same moment");
  }
}

function statusOf(error: unknown): number | null {
  return error instanceof ServerConnection.ResponseError ? error.response.status : null;
}
