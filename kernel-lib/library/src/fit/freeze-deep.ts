/** Freezes plain data all the way down and returns it. */
export function freezeDeep<T>(value: T): T {
  if (typeof value !== "object" || value === null || Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const inner of Object.values(value)) freezeDeep(inner);
  return value;
}
