/** What the library says of a kitchen at once. */
export interface Glance {
  readonly problems: readonly string[];
  readonly notices: readonly string[];
  readonly summary: string;
  readonly products: readonly { readonly variantId: string; readonly name: string; readonly trials: number }[];
  readonly exampleIds: ExampleIds | null;
}

/** Ids of a kitchen that an example is tried on; the first of each are the main ones. */
export interface ExampleIds {
  readonly variantIds: readonly string[];
  readonly panIds: readonly string[];
  readonly trialIds: readonly string[];
}

/** A table as the library gives it. */
export interface PlainTable {
  readonly title: string;
  readonly columns: readonly { readonly heading: string }[];
  readonly rows: readonly (readonly (string | number | null)[])[];
  readonly notes: readonly string[];
}

/** A function of the cook's door with a cell that tries it in the open kitchen. */
export interface OfferedExample {
  readonly name: string;
  readonly summary: string;
  readonly code: string;
}
