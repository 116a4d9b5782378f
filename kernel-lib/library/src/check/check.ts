/**
 * Throws a `RangeError` whose message is one sentence: where, what must hold, what was given.
 *
 * @param where function name, then the input: `"slabThickness: batchG"`
 * @param must what must hold: `"must be > 0 g"`
 * @param given the offending value, shown as JSON where that reads well
 * @example
 * fail("slabThickness: batchG", "must be > 0 g", -12); // throws "slabThickness: batchG must be > 0 g, got -12"
 */
export function fail(where: string, must: string, given: unknown): never {
  throw new RangeError(`${where} ${must}, got ${shown(given)}`);
}

/** Returns `value` when it is a finite number above zero; otherwise throws, naming `where` and `unit`. */
export function positive(value: number, where: string, unit: string): number {
  if (!(Number.isFinite(value) && value > 0)) fail(where, `must be > 0 ${unit}`.trimEnd(), value);
  return value;
}

/** Returns `value` when it is a finite number, zero or above; otherwise throws, naming `where` and `unit`. */
export function notNegative(value: number, where: string, unit: string): number {
  if (!(Number.isFinite(value) && value >= 0)) fail(where, `must be >= 0 ${unit}`.trimEnd(), value);
  return value;
}

/** Returns `value` when it is a finite number with `low <= value <= high`; otherwise throws. */
export function within(value: number, low: number, high: number, where: string, unit: string): number {
  if (!(value >= low && value <= high)) fail(where, `must be between ${low} and ${high} ${unit}`.trimEnd(), value);
  return value;
}

/** Returns `value` when it is a finite number; otherwise throws. */
export function finite(value: number, where: string, unit: string): number {
  if (!Number.isFinite(value)) fail(where, `must be a finite number${unit ? ` in ${unit}` : ""}`, value);
  return value;
}

function shown(given: unknown): string {
  if (typeof given === "number" || given === undefined) return String(given);
  return clipped(JSON.stringify(given) ?? String(given));
}

/** Text for a message: as it is, or its beginning where it is longer than a few lines. */
export function clipped(text: string): string {
  return text.length > 400 ? `${text.slice(0, 400)}… (${text.length} characters)` : text;
}
