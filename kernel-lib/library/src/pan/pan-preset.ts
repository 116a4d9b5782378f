import { fail } from "../check/check";
import type { Pan } from "./pan";

const taperOfDepth = (bottomMm: number, topMm: number, depthMm: number): number =>
  (Math.atan2((topMm - bottomMm) / 2, depthMm) * 180) / Math.PI;

function sheet(name: string, bottomLengthMm: number, bottomWidthMm: number): Pan {
  return {
    shape: "rectangle",
    id: name.replaceAll(" ", "-"),
    name,
    bottomLengthMm,
    bottomWidthMm,
    depthMm: 25,
    cornerRadiusMm: 15,
    wallTaperDeg: 6,
    count: 1,
    standing: "nominal",
  };
}

function gastronorm(size: string, bottomLengthMm: number, bottomWidthMm: number, depthMm: number): Pan {
  return {
    ...sheet(`GN ${size}-${depthMm}`, bottomLengthMm, bottomWidthMm),
    id: `gn-${size.replace("/", "-")}-${depthMm}`,
    depthMm,
    cornerRadiusMm: 50,
    wallTaperDeg: 5,
  } as Pan;
}

/** A baking pan is named by its top; the bottom is smaller by the lean of the wall. */
function baking(name: string, topLengthMm: number, topWidthMm: number, depthMm: number, cornerRadiusMm: number): Pan {
  const wallTaperDeg = 8;
  const lean = 2 * depthMm * Math.tan((wallTaperDeg * Math.PI) / 180);
  return {
    ...sheet(name, topLengthMm - lean, topWidthMm - lean),
    id: name.replaceAll(" ", "-"),
    depthMm,
    cornerRadiusMm,
    wallTaperDeg,
  } as Pan;
}

function wells(name: string, count: number, bottomDiameterMm: number, topDiameterMm: number, depthMm: number): Pan {
  return {
    shape: "wells",
    id: name.replaceAll(" ", "-"),
    name,
    wells: count,
    bottomDiameterMm,
    depthMm,
    wallTaperDeg: taperOfDepth(bottomDiameterMm, topDiameterMm, depthMm),
    count: 1,
    standing: "nominal",
  };
}

/**
 * Nominal pans to start from. Sheet pans are sold by their outer size and no standard fixes the inside; EN 631 fixes
 * the outer size of gastronorm pans only. Half sheet: inside read from size lists of the trade; the other sheets:
 * inside derived from the outer size, 19 to 20 mm less at each edge; eighth sheet, gastronorm insides, corner radii
 * (15 mm sheet, 50 mm gastronorm) and wall tapers (5 to 8 degrees): from memory. Baking pans are named by their top; wells: top and depth read, bottom from
 * memory. Measure your own inside bottom: it wins over all of these.
 */
export const PAN_PRESETS: readonly Pan[] = [
  sheet("full sheet", 620, 417),
  sheet("three-quarter sheet", 493, 341),
  sheet("half sheet", 419, 292),
  sheet("quarter sheet", 292, 203),
  sheet("eighth sheet", 203, 127),
  ...[20, 40, 65, 100].map((depthMm) => gastronorm("1/1", 480, 275, depthMm)),
  ...[20, 40, 65, 100].map((depthMm) => gastronorm("1/2", 275, 215, depthMm)),
  baking("baking pan 13 x 9 in", 330, 229, 51, 30),
  baking("baking pan 9 x 9 in", 229, 229, 51, 25),
  baking("baking pan 8 x 8 in", 203, 203, 51, 25),
  baking("jelly-roll pan 15 x 10 in", 381, 254, 25, 25),
  wells("mini wells", 24, 32, 44.5, 19),
  wells("standard wells", 12, 51, 70, 32),
];

/**
 * The nominal pan of that name; throws when there is none, listing the names.
 *
 * @example
 * panPreset("quarter sheet").depthMm; // → 25
 * panPreset("half moon"); // throws "no preset has that name"
 */
export function panPreset(name: string): Pan {
  const found = PAN_PRESETS.find((pan) => pan.name === name);
  if (found === undefined)
    fail(
      "panPreset: name",
      `must be one of ${PAN_PRESETS.map((pan) => pan.name).join(", ")} (no preset has that name)`,
      name,
    );
  return found;
}
