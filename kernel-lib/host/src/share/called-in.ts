import { sep } from "node:path";

/** What a file is called in a record that holds on every machine: `kitchen/trials/week.csv`; null outside all places. */
export function calledIn(places: Readonly<Record<string, string>>, path: string): string | null {
  const place = Object.entries(places).find(([, folder]) => path.startsWith(folder + sep));
  if (place === undefined) return null;
  const [called, folder] = place;
  return [called, ...path.slice(folder.length + 1).split(sep)].join("/");
}
