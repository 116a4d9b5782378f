import type { Answer } from "../../advice/answer/answers";
import { limitCaution } from "../../safety/limit-text";

/** The cautions of products, each once, after the names of those that it belongs to; what belongs to all comes last, without names. */
export function cautionLines(products: readonly Pick<Answer, "variantName" | "limit" | "units">[]): readonly string[] {
  const named = new Map<string, string[]>();
  for (const { variantName, limit, units } of products)
    for (const sentence of new Set(limitCaution(limit, units).split(/(?<=\.) (?=[A-Z])/)))
      named.set(sentence, [...(named.get(sentence) ?? []), variantName]);
  const groups = new Map<string, string[]>();
  for (const [sentence, names] of named) {
    const key = names.length === products.length ? "" : `${names.join(", ")}: `;
    groups.set(key, [...(groups.get(key) ?? []), sentence]);
  }
  const ofAll = groups.get("");
  groups.delete("");
  return [
    ...[...groups].map(([names, sentences]) => `${names}${sentences.join(" ")}`),
    ...(ofAll === undefined ? [] : [ofAll.join(" ")]),
  ];
}
