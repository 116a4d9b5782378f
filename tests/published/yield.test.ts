// Source: see yield/reference.json.
import { describe, expect, it } from "vitest";
import { cookChange } from "../../kernel-lib/library/src/yield/cook-change";
import { cookYield } from "../../kernel-lib/library/src/yield/cook-yield";
import { convertPickup, pickup } from "../../kernel-lib/library/src/yield/pickup";
import { trueRetention } from "../../kernel-lib/library/src/yield/true-retention";
import reference from "./yield/reference.json";

const { inputs } = reference;
const massBeforeG = inputs.raw_g;
const massAfterG = inputs.cooked_g;

describe("yield and retention from their definitions", () => {
  it("cooking yield", () => {
    expect(cookYield({ massBeforeG, massAfterG }).yieldPercent).toBeCloseTo(reference.cooking_yield_pct, 9);
  });

  it("moisture and fat change and retention", () => {
    const change = cookChange({
      massBeforeG,
      massAfterG,
      before: { waterPercent: inputs.water_raw_pct, fatPercent: inputs.fat_raw_pct },
      after: { waterPercent: inputs.water_cooked_pct, fatPercent: inputs.fat_cooked_pct },
    });
    expect(change.moistureChangePercent).toBeCloseTo(reference.moisture_change_pct_of_raw_weight, 9);
    expect(change.fatChangePercent).toBeCloseTo(reference.fat_change_pct_of_raw_weight, 9);
    expect(change.moistureRetentionPercent).toBeCloseTo(reference.moisture_retention_pct, 9);
    expect(change.fatRetentionPercent).toBeCloseTo(reference.fat_retention_pct, 9);
    expect(
      trueRetention({
        contentBefore: inputs.fat_raw_pct,
        contentAfter: inputs.fat_cooked_pct,
        massBeforeG,
        massAfterG,
      }),
    ).toBeCloseTo(reference.fat_retention_pct, 9);
  });

  it("pickup on both bases", () => {
    const { substrate_g: beforeG, coated_g: afterG } = reference.pickup;
    const onSubstrate = reference.pickup.pickup_on_substrate_pct;
    const onFinished = reference.pickup.pickup_on_finished_pct;
    expect(pickup({ beforeG, afterG, basis: "substrate" }).percent).toBeCloseTo(onSubstrate, 9);
    expect(pickup({ beforeG, afterG, basis: "finished" }).percent).toBeCloseTo(onFinished, 9);
    expect(convertPickup({ percent: onSubstrate, from: "substrate", to: "finished" })).toBeCloseTo(onFinished, 9);
    expect(convertPickup({ percent: onFinished, from: "finished", to: "substrate" })).toBeCloseTo(onSubstrate, 9);
  });
});
