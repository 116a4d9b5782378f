import type { Notebook } from "../notebook/notebook";
import { cellDigests, type Provenance } from "./provenance";

/**
 * What has changed between two runs of a notebook that could make them differ, a sentence each: files, parameters, seeds,
 * versions, the library's code, cells that were edited, and stored outputs that are not those of the run. Empty when nothing
 * of it has: a difference is then the notebook's own, such as a clock or a draw without a seed.
 *
 * @param then what the stored run rested on
 * @param now what the new run rested on
 * @param stored the notebook as it is stored
 */
export function changedCauses(then: Provenance, now: Provenance, stored: Notebook): readonly string[] {
  const causes: string[] = [];
  for (const [index, cell] of stored.cells.entries()) {
    if (cell.cell_type !== "code" || !Object.hasOwn(then.cells, cell.id)) continue;
    const was = then.cells[cell.id];
    const is = cellDigests(cell);
    if (is.source !== was.source) causes.push(`cell ${index + 1} was edited after it ran`);
    if (is.outputs !== was.outputs) causes.push(`the stored output of cell ${index + 1} was changed after the run`);
  }
  for (const name of namesOf(then.files, now.files)) {
    const [was, is] = [held(then.files, name), held(now.files, name)];
    if (was === is) continue;
    if (was === undefined) causes.push(`${name} is read now and was not`);
    else if (is === undefined) causes.push(`${name} was read and is not any more`);
    else causes.push(`${name} has changed (SHA-256 ${was.slice(0, 8)}… then, ${is.slice(0, 8)}… now)`);
  }
  for (const name of namesOf(then.parameters, now.parameters)) {
    const [was, is] = [then.parameters, now.parameters].map((parameters) => JSON.stringify(held(parameters, name)));
    if (was === is) continue;
    const what = name === "seed" ? "the seed" : `the ${/seed/i.test(name) ? "seed" : "parameter"} ${name}`;
    causes.push(`${what} was ${was ?? "not set"}, is ${is ?? "not set"}`);
  }
  if (then.node !== now.node) causes.push(`Node was ${then.node}, is ${now.node}`);
  for (const name of namesOf(then.packages, now.packages)) {
    const [was, is] = [held(then.packages, name), held(now.packages, name)];
    if (was !== is) causes.push(`${name} was ${was ?? "not there"}, is ${is ?? "not there"}`);
  }
  if (then.lock !== now.lock) causes.push("package-lock.json has changed: versions of other packages may have");
  if (then.code !== now.code) causes.push("the library's code has changed");
  return causes;
}

function namesOf(one: object, other: object): readonly string[] {
  return [...new Set([...Object.keys(one), ...Object.keys(other)])];
}

function held<T>(record: Readonly<Record<string, T>>, name: string): T | undefined {
  return Object.hasOwn(record, name) ? record[name] : undefined;
}
