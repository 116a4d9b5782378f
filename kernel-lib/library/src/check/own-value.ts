/**
 * What a table holds under a name that comes from outside; undefined when it holds none. `table[name]` alone finds
 * `constructor` and `toString` in every object.
 */
export function ownValue<T>(table: Readonly<Record<string, T>>, name: string): T | undefined {
  return Object.hasOwn(table, name) ? table[name] : undefined;
}
