import type { Decision } from "../../advice/window/decide";
import { minutesText } from "../../crisp/window/window-words";
import { limitText } from "../../safety/limit-text";
import { convertUnit } from "../../units/convert-unit";
import { inchFraction } from "../../units/inch-fraction";
import type { Column, Table } from "../table/table";
import { cutText, pieceText } from "./cut-text";

/**
 * The decisions of a kitchen as one table, a row for each variant and pan; the core limit stands beside every time.
 *
 * @example
 * decisionTable(decide({ kitchen: loadKitchen() })).rows.length; // → 30
 */
export function decisionTable(decisions: readonly Decision[]): Table {
  const us = decisions.some((decision) => decision.units === "us");
  const thickness: readonly Column[] = us
    ? [{ heading: "thickness (in)" }, { heading: "(mm)", decimals: 1 }]
    : [
        { heading: "thickness (mm)", decimals: 1 },
        { heading: "(in)", decimals: 2 },
      ];
  return {
    kind: "table",
    title: "Every variant's batch on every pan",
    columns: [
      { heading: "variant" },
      { heading: "pan" },
      { heading: "verdict" },
      ...thickness,
      { heading: "cut" },
      { heading: us ? "piece (in)" : "piece (mm)" },
      us ? { heading: "coated piece (oz)", decimals: 2 } : { heading: "coated piece (g)", decimals: 1 },
      { heading: "card (min)" },
      { heading: "crisp (min)", decimals: 1 },
      { heading: "95 %" },
      { heading: "rests on" },
      { heading: "core" },
      { heading: "core by (min)", decimals: 1 },
      { heading: "yield (%)", decimals: 0 },
      { heading: "kcal", decimals: 0 },
      { heading: "protein (g)", decimals: 1 },
      { heading: "fat (g)", decimals: 1 },
      { heading: "carb (g)", decimals: 1 },
    ],
    rows: decisions.map(rowOf),
    notes: notesOf(decisions),
  };
}

function rowOf(decision: Decision): (string | number | null)[] {
  const { variantName, panName, verdict, outcome, core, units } = decision;
  const us = units === "us";
  const limit = `≥ ${limitText(core, units)}`;
  if (outcome === null)
    return [
      variantName,
      panName,
      verdict,
      ...Array.from({ length: 9 }, () => null),
      limit,
      ...Array.from({ length: 6 }, () => null),
    ];
  const { slab, pieces, window, coreSafeMin, reheatMin, reheatYield, macros } = outcome;
  const { crisp, standing } = window;
  const { energyKcal, proteinG, fatG, carbohydrateG } = macros.perPiece;
  return [
    variantName,
    panName,
    verdict,
    us ? inchFraction(slab.thicknessMm, 32).replace(" in", "") : slab.thicknessMm,
    us ? slab.thicknessMm : convertUnit({ value: slab.thicknessMm, from: "mm", to: "in" }),
    cutText(pieces),
    pieceText(pieces, units),
    us ? convertUnit({ value: macros.coatedG.value, from: "g", to: "oz" }) : macros.coatedG.value,
    reheatMin,
    crisp.min < 1e4 ? crisp.min : null,
    `${minutesText(crisp.interval95[0])} to ${minutesText(crisp.interval95[1])}`,
    standing,
    limit,
    coreSafeMin,
    reheatYield.yieldPercent,
    energyKcal.value,
    proteinG.value,
    fatG.value,
    carbohydrateG.value,
  ];
}

function notesOf(decisions: readonly Decision[]): string[] {
  const named = new Map<string, string[]>();
  for (const { core, variantName } of decisions) {
    const names = named.get(core.caution) ?? [];
    if (!names.includes(variantName)) named.set(core.caution, [...names, variantName]);
  }
  return [
    "Card: the time to print, never before the core is safe. Crisp: when the typical piece is, on the variant's own appliance and setpoint, with its 95 % interval. Coated piece: one as it goes in. Macros: of that piece as eaten at the card's time, an estimate from a food table.",
    "Core by: the time from which every piece of 99 of 100 loads has its core at the limit, calculated from the core temperatures that were logged. Never take out before that, and probe the thickest piece.",
    ...[...named].map(([caution, names]) => `${names.join(", ")}: ${caution}`),
  ];
}
