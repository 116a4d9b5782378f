import type { Decision } from "../../advice/window/decide";
import { minutesText } from "../../crisp/window/window-words";
import { bothLimits } from "../../safety/limit-text";
import { convertUnit } from "../../units/convert-unit";
import { inchFraction } from "../../units/inch-fraction";
import { ownSettingText } from "../../units/setting-text";
import { thicknessWords } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import { cutText, pieceText } from "./cut-text";

const HEADING = (units: KitchenUnits): readonly string[] => [
  "pan",
  units === "us" ? "slab in (mm)" : "slab mm (in)",
  "cut",
  units === "us" ? "piece in" : "piece mm",
  units === "us" ? "oz" : "g",
  "card",
  "crisp min (95 %)",
  "core by",
  "yield",
  "kcal",
  "P / F / C g",
];
const WIDTHS: Readonly<Record<KitchenUnits, readonly number[]>> = {
  metric: [19, 12, 8, 8, 5, 5, 19, 8, 5, 4, 16],
  us: [19, 14, 8, 16, 5, 5, 19, 8, 5, 4, 16],
};

/**
 * The decisions of a kitchen for a terminal about 120 wide (130 in US units): a block a variant with its setting and core limit, two lines
 * a pan, numbers first and the verdict below. A time with * is extrapolated, beyond the thicknesses that were tried.
 *
 * @example
 * decisionText(decide({ kitchen: loadKitchen() })).includes("half sheet"); // → true
 */
export function decisionText(decisions: readonly Decision[]): string {
  const variants = [...new Set(decisions.map((decision) => decision.variantId))];
  const blocks = variants.map((variantId) => block(decisions.filter((decision) => decision.variantId === variantId)));
  const cautions = [...new Set(decisions.map((decision) => decision.core.caution))];
  return [
    ...blocks,
    `* at the edge of what was tried, or outside it. 95 %: for the typical piece. ${decisions[0]?.units === "us" ? "oz" : "g"}: one piece, coated, as it goes in. P / F / C:`,
    "protein, fat and carbohydrate; with kcal, of that piece as eaten, an estimate from a food table. Core by: from then on",
    "every piece of 99 of 100 loads has its core at the limit, calculated from the cores that were logged; never take out",
    "before the card's time, and probe the thickest piece.",
    "",
    ...cautions,
  ].join("\n");
}

function block(decisions: readonly Decision[]): string {
  const [{ variantName, applianceId, setpointC, core, triedMm, units }] = decisions;
  return [
    `${variantName}: ${applianceId} at ${ownSettingText(setpointC, units)}, core at least ${bothLimits(core, units)}, ${triedText(triedMm, units)}`,
    line(HEADING(units), units),
    ...decisions.flatMap((decision) => [line(cells(decision), units), ...wrapped(decision.verdict)]),
    "",
  ].join("\n");
}

/** A sentence in lines of at most 116 characters, indented. */
function wrapped(sentence: string): string[] {
  const lines: string[] = [];
  let now = "   ";
  for (const word of sentence.split(" ")) {
    if (now.length + word.length + 1 > 120) {
      lines.push(now);
      now = "   ";
    }
    now += ` ${word}`;
  }
  return [...lines, now];
}

function triedText(triedMm: Decision["triedMm"], units: KitchenUnits): string {
  return triedMm === null ? "not tried yet" : `tried ${thicknessWords(triedMm, units)}`;
}

function cells({ panName, outcome, units }: Decision): string[] {
  if (outcome === null) return [panName];
  const { slab, pieces, window, coreSafeMin, reheatMin, reheatYield, macros } = outcome;
  const { energyKcal, proteinG, fatG, carbohydrateG } = macros.perPiece;
  const { crisp, standing } = window;
  const [low, high] = crisp.interval95;
  return [
    panName,
    units === "us"
      ? `${inchFraction(slab.thicknessMm, 32).replace(" in", "")} (${slab.thicknessMm.toFixed(1)})`
      : `${slab.thicknessMm.toFixed(1)} (${convertUnit({ value: slab.thicknessMm, from: "mm", to: "in" }).toFixed(2)})`,
    cutText(pieces),
    pieceText(pieces, units),
    units === "us"
      ? convertUnit({ value: macros.coatedG.value, from: "g", to: "oz" }).toFixed(2)
      : macros.coatedG.value.toFixed(1),
    String(reheatMin),
    `${minutesText(crisp.min)} (${minutesText(low)} to ${minutesText(high)})${standing === "tried" ? "" : "*"}`,
    coreSafeMin.toFixed(1),
    `${reheatYield.yieldPercent.toFixed(0)} %`,
    energyKcal.value.toFixed(0),
    `${proteinG.value.toFixed(1)} / ${fatG.value.toFixed(1)} / ${carbohydrateG.value.toFixed(1)}`,
  ];
}

function line(row: readonly string[], units: KitchenUnits): string {
  return `  ${row
    .map((cell, at) => cell.padEnd(WIDTHS[units][at]))
    .join(" ")
    .trimEnd()}`;
}
