import { fail, notNegative, positive, within } from "../check/check";

/** What every pan has. Lengths are of the inside, where the mix lies. */
export interface PanBase {
  /** short name that variants and logs use: `"half-sheet"` */
  readonly id: string;
  readonly name: string;
  /** inside depth, bottom to rim (mm) */
  readonly depthMm: number;
  /** lean of the wall from vertical (degrees, 0 to 60): the pan widens upwards */
  readonly wallTaperDeg: number;
  /** how many of this pan the kitchen has */
  readonly count: number;
  /** where the sizes come from: `"measured"` with a rule, or `"nominal"` from a preset */
  readonly standing: "measured" | "nominal";
}

/** A rectangular pan: sheet pan, gastronorm pan, baking pan. */
export interface RectanglePan extends PanBase {
  readonly shape: "rectangle";
  /** inside bottom, longer side (mm) */
  readonly bottomLengthMm: number;
  /** inside bottom, shorter side (mm) */
  readonly bottomWidthMm: number;
  /** radius of the four corners, seen from above, at the bottom (mm) */
  readonly cornerRadiusMm: number;
}

/** A round pan. */
export interface RoundPan extends PanBase {
  readonly shape: "round";
  /** inside bottom (mm) */
  readonly bottomDiameterMm: number;
}

/** A pan of equal round wells. Depth and taper are those of one well. */
export interface WellPan extends PanBase {
  readonly shape: "wells";
  readonly wells: number;
  /** bottom of one well (mm) */
  readonly bottomDiameterMm: number;
}

export type Pan = RectanglePan | RoundPan | WellPan;

/** The deepest, widest pan and the most wells or pans that a kitchen has: our judgement, several times what is sold. */
const DEEPEST_MM = 500;
const WIDEST_MM = 3000;
const MOST = 10_000;

/**
 * Returns the pan unchanged when its sizes are possible; otherwise throws, naming the pan and the size.
 *
 * @example
 * checkPan({ ...panPreset("half sheet"), depthMm: -1 }, "pans.csv row 2"); // throws "pans.csv row 2: depthMm must be > 0 mm, got -1"
 */
export function checkPan(pan: Pan, where: string): Pan {
  size(pan.depthMm, DEEPEST_MM, `${where}: depthMm`);
  within(pan.wallTaperDeg, 0, 60, `${where}: wallTaperDeg`, "degrees");
  count(pan.count, `${where}: count`);
  if (pan.shape === "rectangle") {
    size(pan.bottomLengthMm, WIDEST_MM, `${where}: bottomLengthMm`);
    size(pan.bottomWidthMm, WIDEST_MM, `${where}: bottomWidthMm`);
    notNegative(pan.cornerRadiusMm, `${where}: cornerRadiusMm`, "mm");
    const shorter = Math.min(pan.bottomLengthMm, pan.bottomWidthMm);
    if (pan.cornerRadiusMm > shorter / 2)
      fail(`${where}: cornerRadiusMm`, `must be at most half the shorter side (${shorter / 2} mm)`, pan.cornerRadiusMm);
  } else {
    size(pan.bottomDiameterMm, WIDEST_MM, `${where}: bottomDiameterMm`);
    if (pan.shape === "wells") count(pan.wells, `${where}: wells`);
  }
  return pan;
}

function size(lengthMm: number, mostMm: number, where: string): void {
  within(positive(lengthMm, where, "mm"), 1, mostMm, where, "mm");
}

function count(pieces: number, where: string): void {
  if (!(Number.isInteger(pieces) && pieces >= 1)) fail(where, "must be a whole number >= 1", pieces);
  within(pieces, 1, MOST, where, "");
}
