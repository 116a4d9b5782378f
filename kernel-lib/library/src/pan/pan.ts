import { fail } from "../check/check";

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

/** A size of a pan that cannot be. */
export interface PanFault {
  /** name of the field: `"depthMm"` */
  readonly field: string;
  /** `"must be > 0 mm"` */
  readonly must: string;
  readonly given: number;
}

/** The sizes of a pan that cannot be; none when it can. */
export function panFaults(pan: Pan): readonly PanFault[] {
  const faults: PanFault[] = [];
  const hold = (field: string, given: number, holds: boolean, must: string): void => {
    if (!holds) faults.push({ field, must: `must be ${must}`, given });
  };
  const size = (field: string, given: number, mostMm: number): void => {
    const isAbove0 = Number.isFinite(given) && given > 0;
    hold(field, given, isAbove0, "> 0 mm");
    if (isAbove0) hold(field, given, given >= 1 && given <= mostMm, `between 1 and ${mostMm} mm`);
  };
  const counted = (field: string, given: number): void => {
    const isWhole = Number.isInteger(given) && given >= 1;
    hold(field, given, isWhole, "a whole number >= 1");
    if (isWhole) hold(field, given, given <= MOST, `between 1 and ${MOST}`);
  };
  size("depthMm", pan.depthMm, DEEPEST_MM);
  hold("wallTaperDeg", pan.wallTaperDeg, pan.wallTaperDeg >= 0 && pan.wallTaperDeg <= 60, "between 0 and 60 degrees");
  counted("count", pan.count);
  if (pan.shape === "rectangle") {
    size("bottomLengthMm", pan.bottomLengthMm, WIDEST_MM);
    size("bottomWidthMm", pan.bottomWidthMm, WIDEST_MM);
    const { cornerRadiusMm: radiusMm } = pan;
    const mostMm = Math.min(pan.bottomLengthMm, pan.bottomWidthMm) / 2;
    hold("cornerRadiusMm", radiusMm, Number.isFinite(radiusMm) && radiusMm >= 0, ">= 0 mm");
    hold(
      "cornerRadiusMm",
      radiusMm,
      !(radiusMm > mostMm && mostMm > 0),
      `at most half the shorter side (${mostMm} mm)`,
    );
  } else {
    size("bottomDiameterMm", pan.bottomDiameterMm, WIDEST_MM);
    if (pan.shape === "wells") counted("wells", pan.wells);
  }
  return faults;
}

/**
 * Returns the pan unchanged when its sizes are possible; otherwise throws, naming the pan and the size.
 *
 * @example
 * checkPan({ ...panPreset("half sheet"), depthMm: -1 }, "pans.csv row 2"); // throws "pans.csv row 2: depthMm must be > 0 mm, got -1"
 */
export function checkPan(pan: Pan, where: string): Pan {
  for (const { field, must, given } of panFaults(pan)) fail(`${where}: ${field}`, must, given);
  return pan;
}
