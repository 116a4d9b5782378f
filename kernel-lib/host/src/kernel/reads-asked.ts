/** What the host says in `SLABWRIGHT_READS`. */
export interface ReadsAsked {
  readonly to: string;
  readonly roots: readonly string[];
}
