import { readFileSync } from "node:fs";
import { Instrumenter } from "@stryker-mutator/instrumenter";
import config from "./stryker.config.mjs";

/** Files with line and column of the changes that `choose` keeps of all that Stryker would make, as its `mutate` takes them. */
export async function sampledRanges(files, choose) {
  const quiet = { debug() {}, info() {}, warn() {}, isDebugEnabled: () => false };
  const { mutants } = await new Instrumenter(quiet).instrument(
    files.map((name) => ({ name, mutate: true, content: readFileSync(name, "utf8") })),
    { plugins: null, ignorers: [], excludedMutations: config.mutator.excludedMutations },
  );
  // a change of many lines would draw all that lies inside it along
  const small = mutants.filter(
    ({ status, location }) => status !== "Ignored" && location.start.line === location.end.line,
  );
  return choose(small).map(({ fileName, location: { start, end } }) => {
    const place = ({ line, column }) => `${line + 1}:${column}`;
    return `${fileName}:${place(start)}-${place(end)}`;
  });
}
