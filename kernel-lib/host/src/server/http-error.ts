/** What a request is refused with: a status and a sentence for whoever asked. */
export class HttpError extends Error {
  constructor(
    readonly status: number,
    message: string,
  ) {
    super(message);
  }
}

/** What the system says about files that is no fault of the program, as whoever asked should hear it. */
const FILE_FAULTS: Readonly<Record<string, readonly [status: number, words: string]>> = {
  ENOENT: [404, "no such file"],
  ENOTDIR: [404, "no such file"],
  ELOOP: [404, "no such file"],
  EEXIST: [409, "exists already"],
  ENOTEMPTY: [409, "is a folder that is not empty"],
  EISDIR: [409, "is a folder"],
  EBUSY: [409, "is in use by another program"],
  EINVAL: [400, "cannot be done"],
  ENAMETOOLONG: [400, "the name is too long"],
  EACCES: [403, "the system does not allow it"],
  EPERM: [403, "the system does not allow it"],
  EROFS: [403, "the disk cannot be written"],
  ENOSPC: [507, "the disk is full"],
  EDQUOT: [507, "the disk is full"],
  EMFILE: [503, "too many files are open"],
  ENFILE: [503, "too many files are open"],
};

/** The refusal that a failed use of the file `path` deserves; any other error as it is. */
export function fileFault(error: unknown, path: string): unknown {
  const code = (error as NodeJS.ErrnoException)?.code ?? "";
  if (error instanceof HttpError || !Object.hasOwn(FILE_FAULTS, code)) return error;
  const [status, words] = FILE_FAULTS[code];
  return new HttpError(status, `${path}: ${words}`);
}
