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

/** What to do next with a product. */
export interface ProductNext {
  readonly variantId: string;
  readonly known: readonly string[];
  readonly steps: readonly string[];
  readonly cautions: readonly string[];
}

/** A function of the cook's door with a cell that tries it in the open kitchen. */
export interface OfferedExample {
  readonly name: string;
  readonly summary: string;
  /** the docstring's own lines */
  readonly lines: readonly string[];
  readonly code: string;
}

/** What a form for one trial begins with. */
export interface TrialForm {
  readonly name: string;
  readonly units: string;
  readonly fields: readonly FormField[];
  readonly variants: readonly FormVariant[];
  readonly pans: readonly { readonly id: string; readonly name: string }[];
  readonly appliances: readonly { readonly id: string; readonly name: string }[];
  readonly plans: readonly FormPlan[];
  /** what is wrong in the kitchen and stops no trial */
  readonly notices: readonly string[];
}

/** A plan of the kitchen with what is still open of it. */
export interface FormPlan {
  readonly name: string;
  readonly trials: readonly FormPlanned[];
  readonly problem: string | null;
}

/** A planned trial that nothing was logged for yet. */
export interface FormPlanned {
  readonly trialId: string;
  readonly variantId: string;
  readonly cells: Readonly<Record<string, string>>;
  readonly words: string;
}

/** One field of the form: a column of a log. */
export interface FormField {
  readonly name: string;
  readonly heading: string;
  readonly label: string;
  readonly unit: string | null;
  readonly holds: string;
  readonly many: boolean;
}

/** A product as the form begins with it. */
export interface FormVariant {
  readonly variantId: string;
  readonly name: string;
  readonly nextId: string;
  readonly cells: Readonly<Record<string, string>>;
  readonly batchHint: string;
  readonly coreLimit: string;
  readonly caution: string;
}

/** What the library says of a trial that is still being typed. */
export interface CheckedDraft {
  readonly problems: readonly string[];
  readonly assumed: readonly string[];
  readonly notices: readonly string[];
  readonly coldCore: string | null;
  readonly missing: readonly string[];
}

/** What became of a trial that was sent. */
export interface LoggedDraft {
  readonly kind: "logged" | "already logged";
  readonly trialId: string;
  readonly file: string;
  readonly notices: readonly string[];
  readonly coldCore: string | null;
  readonly sentence: string;
}

/** What was taken back. */
export interface UndoneLog {
  readonly file: string;
  readonly sentence: string;
}
