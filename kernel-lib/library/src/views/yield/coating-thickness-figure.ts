import { fail, positive } from "../../check/check";
import type { Formula } from "../../food/formula/formula";
import { pieceOf } from "../../pan/piece";
import { ownLengthText } from "../../units/length-text";
import { thicknessWords } from "../../units/thickness-text";
import type { KitchenUnits } from "../../units/unit-table";
import { type CoatedPiece, coatPiece } from "../../yield/coat-piece";
import type { Figure } from "../figure/figure";
import { figureIn } from "../figure/figure-in";
import { houseLayout } from "../figure/layout";
import { PALETTE, translucent } from "../figure/palette";

/** What `coatingThicknessFigure` draws. */
export interface CoatingThicknessFigureOptions {
  readonly formula: Formula;
  /** the cut (mm) */
  readonly pieceLengthMm: number;
  readonly pieceWidthMm: number;
  /** density of the mix, air included (kg/m³) */
  readonly densityKgM3: number;
  /** thinnest and thickest slab to show (mm) */
  readonly fromMm: number;
  readonly toMm: number;
  /** the kitchen's own; default metric */
  readonly units?: KitchenUnits;
}

const POINTS = 41;

/**
 * All coating on the coated weight against slab thickness, for one cut: thin slabs carry more coating for each gram. The
 * band is ± two standard uncertainties of the pickups; the point is the slab on which the first layer's pickup was seen.
 */
export function coatingThicknessFigure(options: CoatingThicknessFigureOptions): Figure {
  const { formula, pieceLengthMm, pieceWidthMm, densityKgM3, units = "metric" } = options;
  const fromMm = positive(options.fromMm, "coatingThicknessFigure: fromMm", "mm");
  if (!(options.toMm > fromMm)) fail("coatingThicknessFigure: toMm", `must be above fromMm ${fromMm} mm`, options.toMm);
  const seenAt = formula.coating[0]?.atSurfaceCm2PerG;
  if (seenAt === undefined) {
    fail(
      "coatingThicknessFigure: formula",
      "must have a coating whose first layer says on what surface it was seen",
      formula.id,
    );
  }
  const coatAt = (thicknessMm: number): CoatedPiece => {
    const piece = pieceOf({ lengthMm: pieceLengthMm, widthMm: pieceWidthMm, thicknessMm, densityKgM3 });
    return coatPiece({ layers: formula.coating, pieceG: piece.massG, surfaceMm2: piece.surfaceMm2 });
  };
  const curve = Array.from({ length: POINTS }, (_, at) => {
    const thicknessMm = fromMm + (at * (options.toMm - fromMm)) / (POINTS - 1);
    const coated = coatAt(thicknessMm);
    return { thicknessMm, percent: coated.coatingPercent, half: 2 * doubtPercent(coated) };
  });
  const seenMm = seenThickness(seenAt, pieceLengthMm, pieceWidthMm, densityKgM3);
  const seen = seenMm !== null && seenMm >= fromMm && seenMm <= options.toMm ? coatAt(seenMm).coatingPercent : null;
  const ends = [curve[0], curve[POINTS - 1]];
  const figure: Figure = {
    kind: "figure",
    data: [
      {
        type: "scatter",
        mode: "lines",
        name: "± 2 standard uncertainties",
        x: [...curve.map((point) => point.thicknessMm), ...curve.map((point) => point.thicknessMm).reverse()],
        y: [
          ...curve.map((point) => point.percent + point.half),
          ...curve.map((point) => point.percent - point.half).reverse(),
        ],
        fill: "toself",
        fillcolor: translucent(PALETTE[0], 0.2),
        line: { width: 0 },
        hoverinfo: "skip",
      },
      {
        type: "scatter",
        mode: "lines",
        name: "all layers",
        x: curve.map((point) => point.thicknessMm),
        y: curve.map((point) => point.percent),
        line: { color: PALETTE[0], width: 2.5 },
        hovertemplate: "%{x:.1f} mm: %{y:.1f} %<extra></extra>",
      },
      {
        type: "scatter",
        mode: "markers",
        name: "where the pickups were seen",
        x: seen === null ? [] : [seenMm],
        y: seen === null ? [] : [seen],
        marker: { color: PALETTE[1], symbol: "square", size: 10 },
        hovertemplate: "%{x:.1f} mm: %{y:.1f} %<extra></extra>",
      },
    ],
    layout: houseLayout({
      title: "Coating against slab thickness",
      xTitle: "slab thickness (mm)",
      yTitle: "coating on the coated weight (%)",
    }),
    summary: `Coating of ${formula.name} cut ${ownLengthText([pieceLengthMm, pieceWidthMm], units)}: ${ends
      .map(
        (end) =>
          `${end.percent.toFixed(0)} ± ${(end.half / 2).toFixed(0)} % of the coated weight at ${thicknessWords(end.thicknessMm, units)}`,
      )
      .join(", ")}.`,
  };
  return figureIn(figure, units);
}

/** Standard uncertainty of the coating share (% points): layers in quadrature. */
function doubtPercent({ layers, pieceG, coatedG }: CoatedPiece): number {
  const relative = Math.sqrt(layers.reduce((sum, layer) => sum + (layer.layerSeG / layer.afterG) ** 2, 0));
  return (100 * pieceG * relative) / coatedG;
}

/** Thickness at which a piece of this cut has a surface over mass (cm²/g); `null` when the cut's sides alone have more. */
function seenThickness(surfaceCm2PerG: number, lengthMm: number, widthMm: number, densityKgM3: number): number | null {
  const perMm = (surfaceCm2PerG * 100 * densityKgM3) / 1e6;
  const faces = perMm / 2 - 1 / lengthMm - 1 / widthMm;
  return faces > 0 ? 1 / faces : null;
}
