import type { Notice } from "../../check/notice";
import type { FileOf } from "../known-names";
import type { Trial } from "../trial";
import type { Variant } from "../variant";

/** Trials whose pieces went in warmer than 0 °C although their variant goes in frozen: a minus sign, or another unit. */
export function startNotices(log: FileOf<Trial>, variants: readonly Variant[]): readonly Notice[] {
  const frozen = new Set(variants.filter(({ startC }) => startC <= 0).map(({ variantId }) => variantId));
  return log.records.flatMap(({ variantId, startC }, at): readonly Notice[] => {
    if (startC <= 0 || !frozen.has(variantId)) return [];
    const says = `is above 0 °C, and ${variantId} goes in frozen`;
    const taken = `${Number(startC.toFixed(1))} °C`;
    const place = { file: log.file, row: log.rows[at], at: `column ${log.headings.startC}` };
    return [{ ...place, kind: "doubt", given: null, taken, says }];
  });
}
