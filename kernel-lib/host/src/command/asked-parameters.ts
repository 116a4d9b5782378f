import { basename } from "node:path";
import { readNotebook } from "../notebook/notebook";
import { type AskedParameters, parametersOf, withParameters } from "../notebook/parameters";
import { askLibrary } from "./ask-library";

/** What `askedParameters` works from. */
export interface AskedParametersOptions {
  /** as typed with `--set` */
  readonly asked: AskedParameters;
  /** the notebooks that are to run */
  readonly paths: readonly string[];
  /** the kitchen's folder */
  readonly kitchen: string;
  readonly project: string;
}

/** What notebooks are told before they run. */
export interface ToldParameters {
  /** for their cells tagged `parameters` */
  readonly parameters: AskedParameters;
  /** for `chosenVariants` */
  readonly environment: Readonly<Record<string, string>>;
}

/**
 * Holds what was asked for against what the notebooks know: their own parameters, each of its kind, and `variant`, which all of
 * them know. Throws before anything runs, naming what is known.
 */
export async function askedParameters({
  asked,
  paths,
  kitchen,
  project,
}: AskedParametersOptions): Promise<ToldParameters> {
  if (Object.keys(asked).length === 0) return { parameters: {}, environment: {} };
  const { variant, ...parameters } = asked;
  const known = new Set(["variant"]);
  for (const path of paths) {
    const name = basename(path);
    const notebook = await readNotebook(path);
    for (const parameter of parametersOf(notebook, name)) known.add(parameter.name);
    withParameters(notebook, parameters, name);
  }
  for (const name of Object.keys(parameters))
    if (!known.has(name)) throw new Error(`--set must name one of ${[...known].join(", ")}, got ${name}`);
  if (variant === undefined) return { parameters, environment: {} };
  const ids = await variantIdsOf(project, kitchen);
  if (!ids.includes(variant)) throw new Error(`--set variant must be one of ${ids.join(", ")}, got ${variant}`);
  return { parameters, environment: { SLABWRIGHT_VARIANT: variant } };
}

/** The ids of a kitchen's variants, in its order. */
export async function variantIdsOf(project: string, kitchen: string): Promise<readonly string[]> {
  const { products } = await askLibrary<{ readonly products: readonly { readonly variantId: string }[] }>(project, {
    door: "slabwright/notebook",
    name: "kitchenGlance",
    args: [kitchen],
  });
  return products.map(({ variantId }) => variantId);
}
