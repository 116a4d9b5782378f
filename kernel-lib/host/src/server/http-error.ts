/** What a request is refused with: a status and a sentence for whoever asked. */
export class HttpError extends Error {
  constructor(
    readonly status: number,
    message: string,
  ) {
    super(message);
  }
}
