import type { Kitchen } from "../../trials/kitchen";

/** A kitchen's notices, each beside the variants that it touches. */
export interface NoticesOf {
  /** by variant; none for one that no notice touches */
  readonly byVariant: ReadonlyMap<string, readonly string[]>;
  /** those that touch no variant: of a file, of the units */
  readonly others: readonly string[];
}

/** Parts a kitchen's notices: one touches a variant when it names the variant, its formula or one of its trials. */
export function noticesOf(kitchen: Pick<Kitchen, "notices" | "variants" | "trials">): NoticesOf {
  const owners = new Map<string, Set<string>>();
  const own = (name: string, variantId: string): void => {
    owners.set(name, (owners.get(name) ?? new Set()).add(variantId));
  };
  for (const { variantId, formulaId } of kitchen.variants) {
    own(variantId, variantId);
    own(formulaId, variantId);
  }
  for (const { trialId, variantId } of kitchen.trials) own(trialId, variantId);
  const spaced = [...owners.keys()].filter((name) => !/^[\p{L}\p{N}.-]+$/u.test(name));
  const byVariant = new Map<string, string[]>();
  const others: string[] = [];
  for (const notice of kitchen.notices) {
    const named = [...new Set(wordsOf(notice)), ...spaced.filter((name) => notice.includes(name))];
    const touched = new Set(named.flatMap((name) => [...(owners.get(name) ?? [])]));
    for (const variantId of touched) byVariant.set(variantId, [...(byVariant.get(variantId) ?? []), notice]);
    if (touched.size === 0) others.push(notice);
  }
  return { byVariant, others };
}

/** The words of a sentence as names are written: letters, digits, points and dashes, without the point that ends it. */
function wordsOf(sentence: string): string[] {
  return sentence.split(/[^\p{L}\p{N}.-]+/u).map((word) => (word.endsWith(".") ? word.slice(0, -1) : word));
}
