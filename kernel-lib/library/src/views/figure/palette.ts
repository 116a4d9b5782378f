/**
 * Eight colours that stay apart in the common kinds of colour blindness, after Okabe & Ito (2008), "Color universal
 * design", values from memory; black is left for text and yellow for the end, as it is weak on white.
 */
export const PALETTE: readonly string[] = [
  "#0072b2", // blue
  "#d55e00", // vermilion
  "#009e73", // bluish green
  "#cc79a7", // reddish purple
  "#e69f00", // orange
  "#56b4e9", // sky blue
  "#000000", // black
  "#f0e442", // yellow
];

/** One marker a series, so that colour is never the only thing that tells two series apart. */
export const MARKERS: readonly string[] = [
  "circle",
  "square",
  "diamond",
  "triangle-up",
  "cross",
  "x",
  "star",
  "hexagon",
];

/** A palette colour (`#rrggbb`) with an opacity, as a CSS colour for bands. */
export function translucent(colour: string, opacity: number): string {
  const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
  return `rgba(${red},${green},${blue},${opacity})`;
}
