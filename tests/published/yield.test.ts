// Source: see yield/reference.json.
import { describe, it } from "vitest";
import { cookChange } from "../../kernel-lib/library/src/yield/cook-change";
import { cookYield } from "../../kernel-lib/library/src/yield/cook-yield";
import { convertPickup, pickup } from "../../kernel-lib/library/src/yield/pickup";
import { trueRetention } from "../../kernel-lib/library/src/yield/true-retention";
import { comparison } from "./comparison";
import reference from "./yield/reference.json";

const definitions = comparison({
  page: "yield-and-macros",
  what: "yield, change, retention and pickup on two bases",
  against: "the definitions worked out by hand",
  source:
    "USDA, Agriculture Handbook 102, and Table of Cooking Yields for Meat and Poultry (2014, definitions from memory); Murphy, Criner & Gray (1975, from memory)",
});
const { inputs } = reference;
const massBeforeG = inputs.raw_g;
const massAfterG = inputs.cooked_g;

describe("yield and retention from their definitions", () => {
  it("cooking yield", () => {
    definitions.absolute(
      cookYield({ massBeforeG, massAfterG }).yieldPercent,
      reference.cooking_yield_pct,
      0.5e-9,
      "% points",
    );
  });

  it("moisture and fat change and retention", () => {
    const change = cookChange({
      massBeforeG,
      massAfterG,
      before: { waterPercent: inputs.water_raw_pct, fatPercent: inputs.fat_raw_pct },
      after: { waterPercent: inputs.water_cooked_pct, fatPercent: inputs.fat_cooked_pct },
    });
    definitions.absolute(
      change.moistureChangePercent ?? Number.NaN,
      reference.moisture_change_pct_of_raw_weight,
      0.5e-9,
      "% points",
    );
    definitions.absolute(
      change.fatChangePercent ?? Number.NaN,
      reference.fat_change_pct_of_raw_weight,
      0.5e-9,
      "% points",
    );
    definitions.absolute(
      change.moistureRetentionPercent ?? Number.NaN,
      reference.moisture_retention_pct,
      0.5e-9,
      "% points",
    );
    definitions.absolute(change.fatRetentionPercent ?? Number.NaN, reference.fat_retention_pct, 0.5e-9, "% points");
    definitions.absolute(
      trueRetention({
        contentBefore: inputs.fat_raw_pct,
        contentAfter: inputs.fat_cooked_pct,
        massBeforeG,
        massAfterG,
      }),
      reference.fat_retention_pct,
      0.5e-9,
      "% points",
    );
  });

  it("pickup on both bases", () => {
    const { substrate_g: beforeG, coated_g: afterG } = reference.pickup;
    const onSubstrate = reference.pickup.pickup_on_substrate_pct;
    const onFinished = reference.pickup.pickup_on_finished_pct;
    definitions.absolute(pickup({ beforeG, afterG, basis: "substrate" }).percent, onSubstrate, 0.5e-9, "% points");
    definitions.absolute(pickup({ beforeG, afterG, basis: "finished" }).percent, onFinished, 0.5e-9, "% points");
    definitions.absolute(
      convertPickup({ percent: onSubstrate, from: "substrate", to: "finished" }),
      onFinished,
      0.5e-9,
      "% points",
    );
    definitions.absolute(
      convertPickup({ percent: onFinished, from: "finished", to: "substrate" }),
      onSubstrate,
      0.5e-9,
      "% points",
    );
  });
});
