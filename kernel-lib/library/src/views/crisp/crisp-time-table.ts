import type { SlabTimeFit } from "../../fit/curve/fit-slab-time";
import { predictSlabTime } from "../../fit/curve/predict-slab-time";
import type { CrispTimes } from "../../trials/crisp-times";
import type { Table } from "../table/table";
import { tableIn } from "../table/table-in";

/**
 * The trials behind a crisp-time curve, thinnest first: what was seen, what the curve says there, and the difference.
 *
 * @param crisp from `crispTimes`
 * @param fit from `fitSlabTime`
 *
 * @example
 * const { times, fit } = variantCrispTime({ kitchen: loadKitchen(), variantId: "beet-lentil" });
 * crispTimeTable(times, fit).rows.length; // → 21
 */
export function crispTimeTable(crisp: CrispTimes, fit: SlabTimeFit): Table {
  const table: Table = {
    kind: "table",
    title: `Crisp times and the curve ${fit.equation}`,
    columns: [
      { heading: "trial" },
      { heading: "thickness (mm)", decimals: 1 },
      { heading: "not crisp at (min)", decimals: 1 },
      { heading: "crisp at (min)", decimals: 1 },
      { heading: "curve (min)", decimals: 1 },
      { heading: "off by (min)", decimals: 1 },
    ],
    rows: crisp.times.map(({ trialId, thicknessMm, lowerMin, upperMin, timeMin }) => {
      const curveMin = predictSlabTime(fit, thicknessMm).timeMin;
      return [trialId, thicknessMm, lowerMin, upperMin, curveMin, timeMin === null ? null : timeMin - curveMin];
    }),
    notes: [
      `Scatter about the curve: ${scatterText(fit)} (standard deviation, ${fit.degreesOfFreedom} degrees of freedom).`,
      ...crisp.notices,
      ...fit.notices,
    ],
  };
  return tableIn(table, crisp.units);
}

function scatterText({ scatter, residualSd }: SlabTimeFit): string {
  return scatter === "proportional" ? `${(100 * residualSd).toFixed(1)} % of the time` : `${residualSd.toFixed(2)} min`;
}
