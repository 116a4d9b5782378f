import type { Decision } from "../../advice/window/decide";
import { minutesText } from "../../crisp/window/window-words";
import { bothLimits } from "../../safety/limit-text";
import { convertUnit } from "../../units/convert-unit";
import { inchFraction } from "../../units/inch-fraction";
import { ownSettingText } from "../../units/setting-text";
import { thicknessWords } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import { wrapText } from "../note/wrap-text";
import { cutText, pieceText } from "./cut-text";

/** As wide as a terminal. */
const WIDE = 80;
const SLAB: Readonly<Record<KitchenUnits, Row>> = {
  metric: ["pan", "slab mm (in)", "cut", "piece mm", "g"],
  us: ["pan", "slab in (mm)", "cut", "piece in", "oz"],
};
const SLAB_WIDTHS = [22, 14, 9, 17, 6];
const REHEAT: Row = ["card", "crisp min (95 %)", "core by", "yield", "kcal", "P / F / C g"];
const REHEAT_WIDTHS = [6, 21, 8, 6, 5, 18];

type Row = readonly string[];

/**
 * The decisions of a kitchen for a terminal, at most 80 wide: a block a variant with its setting and core limit; a pan has a line
 * about its slab, one about the reheat, and the verdict below. A time with * is extrapolated, beyond the thicknesses that were
 * tried.
 *
 * @example
 * decisionText(decide({ kitchen: loadKitchen() })).includes("half sheet"); // → true
 */
export function decisionText(decisions: readonly Decision[]): string {
  const variants = [...new Set(decisions.map((decision) => decision.variantId))];
  const blocks = variants.map((variantId) => block(decisions.filter((decision) => decision.variantId === variantId)));
  const cautions = [...new Set(decisions.map((decision) => decision.core.caution))];
  const mass = decisions[0]?.units === "us" ? "oz" : "g";
  const notes = `* at the edge of what was tried, or outside it. 95 %: for the typical piece. ${mass}: one piece, coated, as it goes in. P / F / C: protein, fat and carbohydrate; with kcal, of that piece as eaten, an estimate from a food table. Core by: from then on every piece of 99 of 100 loads has its core at the limit, calculated from the cores that were logged; never take out before the card's time, and probe the thickest piece.`;
  return [...blocks, ...wrapText(notes, WIDE), "", ...cautions.flatMap((caution) => wrapText(caution, WIDE))].join(
    "\n",
  );
}

function block(decisions: readonly Decision[]): string {
  const [{ variantName, applianceId, setpointC, core, triedMm, units }] = decisions;
  const heading = `${variantName}: ${applianceId} at ${ownSettingText(setpointC, units)}, core at least ${bothLimits(core, units)}, ${triedText(triedMm, units)}`;
  return [
    ...wrapText(heading, WIDE),
    line(SLAB[units], SLAB_WIDTHS, 2),
    line(REHEAT, REHEAT_WIDTHS, 4),
    ...decisions.flatMap((decision) => [
      ...rows(decision),
      ...wrapText(decision.verdict, WIDE - 4).map((text) => `    ${text}`),
    ]),
    "",
  ].join("\n");
}

function triedText(triedMm: Decision["triedMm"], units: KitchenUnits): string {
  return triedMm === null ? "not tried yet" : `tried ${thicknessWords(triedMm, units)}`;
}

function rows({ panName, outcome, units }: Decision): string[] {
  if (outcome === null) return wrapText(panName, WIDE - 2).map((text) => `  ${text}`);
  const { slab, pieces, window, coreSafeMin, reheatMin, reheatYield, macros } = outcome;
  const { energyKcal, proteinG, fatG, carbohydrateG } = macros.perPiece;
  const { crisp, standing } = window;
  const [low, high] = crisp.interval95;
  const [name, ...more] = wrapText(panName, SLAB_WIDTHS[0]).reverse();
  const slabRow = [
    name,
    units === "us"
      ? `${inchFraction(slab.thicknessMm, 32).replace(" in", "")} (${slab.thicknessMm.toFixed(1)})`
      : `${slab.thicknessMm.toFixed(1)} (${convertUnit({ value: slab.thicknessMm, from: "mm", to: "in" }).toFixed(2)})`,
    cutText(pieces),
    pieceText(pieces, units),
    units === "us"
      ? convertUnit({ value: macros.coatedG.value, from: "g", to: "oz" }).toFixed(2)
      : macros.coatedG.value.toFixed(1),
  ];
  const reheatRow = [
    String(reheatMin),
    `${minutesText(crisp.min)} (${minutesText(low)} to ${minutesText(high)})${standing === "tried" ? "" : "*"}`,
    coreSafeMin.toFixed(1),
    `${reheatYield.yieldPercent.toFixed(0)} %`,
    energyKcal.value.toFixed(0),
    `${proteinG.value.toFixed(1)} / ${fatG.value.toFixed(1)} / ${carbohydrateG.value.toFixed(1)}`,
  ];
  return [
    ...more.reverse().map((text) => `  ${text}`),
    line(slabRow, SLAB_WIDTHS, 2),
    line(reheatRow, REHEAT_WIDTHS, 4),
  ];
}

function line(row: Row, widths: readonly number[], indent: number): string {
  const cells = row.map((cell, at) => cell.padEnd(widths[at]));
  return `${" ".repeat(indent)}${cells.join(" ").trimEnd()}`;
}
