import { describe, expect, it } from "vitest";
import { noticesOf } from "../../../../kernel-lib/library/src/advice/answer/notices-of";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";

const { variants, trials } = loadKitchen();
const [one] = trials;

describe("noticesOf", () => {
  it("loses no notice and doubles none for a product", () => {
    const notices = [`${one.trialId} and ${one.trialId} again`, `formula ${variants[1].formulaId}.`, "nothing of note"];
    const { byVariant, others } = noticesOf({ variants, trials, notices });
    expect(byVariant.get(one.variantId)).toEqual([notices[0]]);
    expect(byVariant.get(variants[1].variantId)).toEqual([notices[1]]);
    expect(others).toEqual([notices[2]]);
  });

  it("knows whole names only, and names with spaces", () => {
    const named = [
      { ...one, trialId: "T-1" },
      { ...one, trialId: "second morning", variantId: variants[1].variantId },
    ];
    const notices = ["trial T-10: other", "trial second morning: mine"];
    const { byVariant, others } = noticesOf({ variants, trials: named, notices });
    expect(others).toEqual([notices[0]]);
    expect(byVariant.get(variants[1].variantId)).toEqual([notices[1]]);
  });

  it("reads ten thousand notices of ten thousand trials at once", () => {
    const many = Array.from({ length: 10_000 }, (_, at) => ({ ...one, trialId: `T-${at}` }));
    const notices = many.map(({ trialId }) => `trial ${trialId}: look`);
    expect(noticesOf({ variants, trials: many, notices }).byVariant.get(one.variantId)).toHaveLength(10_000);
  });
});
