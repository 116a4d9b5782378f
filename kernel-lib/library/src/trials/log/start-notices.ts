import type { Notice } from "../../check/notice";
import type { FileOf } from "../known-names";
import type { Trial } from "../trial";
import type { Variant } from "../variant";

/** How much warmer than their variant frozen pieces go in before it is asked about (K): our judgement. */
const FAR_WARMER_K = 10;

/** Trials whose pieces went in far warmer than their variant does, which goes in frozen: a minus sign, or another unit. */
export function startNotices(log: FileOf<Trial>, variants: readonly Variant[]): readonly Notice[] {
  const frozen = new Map(variants.filter((one) => one.startC <= 0).map((one) => [one.variantId, one.startC]));
  return log.records.flatMap(({ variantId, startC }, at): readonly Notice[] => {
    const usualC = frozen.get(variantId);
    if (usualC === undefined || (startC <= 0 && startC <= usualC + FAR_WARMER_K)) return [];
    const says =
      startC > 0
        ? `is above 0 °C, and ${variantId} goes in frozen`
        : `is far warmer than ${variantId} goes in; is it °F? 0 °F are -18 °C`;
    const taken = `${Number(startC.toFixed(1))} °C`;
    const place = { file: log.file, row: log.rows[at], at: `column ${log.headings.startC}` };
    return [{ ...place, kind: "doubt", given: null, taken, says }];
  });
}
