// Source: see household-density/reference.json (USDA SR28; Choi & Okos 1986).
import { describe, expect, it } from "vitest";
import { compositionOf } from "../../kernel-lib/library/src/food/composition/composition-of";
import { readMeasure } from "../../kernel-lib/library/src/food/formula/read-measure";
import type { Sr28Food } from "../../kernel-lib/library/src/food/ingredient/parse-sr28";
import { mixDensity } from "../../kernel-lib/library/src/food/thermal/mix-density";
import { loadFoods } from "../../kernel-lib/library/src/notebook/load-foods";
import { comparison } from "./comparison";
import reference from "./household-density/reference.json";

const density = (what: string) =>
  comparison({
    page: "yield-and-macros",
    what,
    against: "household weights of liquids and pastes",
    source: "USDA National Nutrient Database for Standard Reference, Release 28 (2015); Choi Y., Okos M.R. (1986)",
  });
const each = density("density from composition, food by food");
const together = density("density from composition, mean deviation over those foods");

const byNumber = new Map(loadFoods().map((food) => [food.ndb, food]));

/** Density from the composition over density from the largest household volume, less one (%). */
function deviationPercent({ description, per100G, householdWeights }: Sr28Food): number {
  const volumes = householdWeights
    .map(({ measure, massG }) => ({ massG, measure: readMeasure(measure, description) }))
    .filter(({ measure }) => measure.kind === "volume")
    .map(({ massG, measure }) => ({ massG, volumeMl: measure.amount * measure.size }))
    .sort((a, b) => b.volumeMl - a.volumeMl);
  const householdKgM3 = (1000 * volumes[0].massG) / volumes[0].volumeMl;
  return 100 * (mixDensity(compositionOf(per100G, description), { temperatureC: 20 }) / householdKgM3 - 1);
}

describe("density from composition against household weights", () => {
  it.each(reference.within4)("food %s within 4 %%", (ndb) => {
    each.miss(deviationPercent(byNumber.get(ndb)!), 4, "%");
  });

  it("has a mean deviation below 0.5 % over those foods", () => {
    const deviations = reference.within4.map((ndb) => deviationPercent(byNumber.get(ndb)!));
    const mean = deviations.reduce((sum, one) => sum + one, 0) / deviations.length;
    together.miss(mean, 0.5, "%");
  });

  it.each(reference.exceptions)("$name is off by $low to $high %: $why", ({ ndb, low, high }) => {
    const deviation = deviationPercent(byNumber.get(ndb)!);
    expect(deviation).toBeGreaterThan(low);
    expect(deviation).toBeLessThan(high);
  });
});
