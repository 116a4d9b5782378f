/** The space between a number and its unit. */
const IN_QUANTITY = /(?<=\d) (?=(?:%|°[CF]|mm|min|kg|g|oz|lb|in)(?![\p{L}\p{N}]))/gu;

/** A space that no line ends at. */
export const HARD_SPACE = "\u00a0";

/**
 * Text whose numbers stay beside their units wherever its lines end.
 *
 * @example
 * keepQuantities("at 200 °C").split(" "); // → ["at", "200\u00a0°C"]
 */
export function keepQuantities(text: string): string {
  return text.replace(IN_QUANTITY, HARD_SPACE);
}
