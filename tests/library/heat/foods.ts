import type { ThermalModel } from "../../../kernel-lib/library/src/food/thermal/thermal-properties";

/** The lean-meat-like food of the numerical reference cases, and two plainer ones. */
export const foods: Readonly<Record<"reference" | "withoutIce", ThermalModel>> = {
  reference: {
    densityKgM3: 1050,
    waterFraction: 0.735,
    freezingPointC: -1,
    latentKJkg: (0.735 - 0.087) * 333.6,
    thawedSpecificHeatKJkgK: 3.5,
    frozenSpecificHeatKJkgK: 2,
    thawedConductivityWmK: 0.49,
    frozenConductivityWmK: 1.5,
  },
  withoutIce: {
    densityKgM3: 1050,
    waterFraction: 0,
    freezingPointC: -1,
    latentKJkg: 0,
    thawedSpecificHeatKJkgK: 3.4,
    frozenSpecificHeatKJkgK: 3.4,
    thawedConductivityWmK: 0.45,
    frozenConductivityWmK: 0.45,
  },
};
