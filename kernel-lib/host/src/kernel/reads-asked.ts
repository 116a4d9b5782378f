/** What the host says in `SLABWRIGHT_READS`. */
export interface ReadsAsked {
  readonly to: string;
  readonly roots: readonly string[];
}

/** The paths in what a kernel noted, which writes one a line as JSON. */
export function notedPaths(text: string): readonly string[] {
  return text.split("\n").flatMap((line) => (line === "" ? [] : [JSON.parse(line) as string]));
}
