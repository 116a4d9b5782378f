import type { Door } from "./doors.js";

/** What a reference is made of, and where it goes. */
export interface ReferenceOptions {
  /** the library's folder, built */
  readonly library: string;
  /** pages in Markdown, in their order */
  readonly documents: readonly string[];
  /** Markdown of the first page */
  readonly readme: string;
  /** a folder for what is made on the way */
  readonly work: string;
  readonly out: string;
  /** the library's doors, the cook's first */
  readonly doors?: readonly Door[];
}
