/** Freezes plain data all the way down and returns it. */
export function freezeDeep<T>(value: T): T {
  if (typeof value !== "object" || value === null || Object.isFrozen(value)) return value;
  if (Array.isArray(value)) {
    if (typeof value[0] === "object") for (const inner of value) freezeDeep(inner);
  } else {
    for (const key in value) {
      const inner = value[key];
      if (typeof inner === "object" && inner !== null) freezeDeep(inner);
    }
  }
  return Object.freeze(value);
}
