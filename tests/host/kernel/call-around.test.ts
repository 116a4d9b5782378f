import * as ts from "@tslab/typescript-for-tslab";
import { expect, it } from "vitest";
import { callAround } from "../../../kernel-lib/host/src/kernel/call-around";

/** Around the `|`: the word, and the call with the text that stands at its place. */
function around(marked: string): string {
  const code = marked.replace("|", "");
  const { word, call } = callAround(ts, code, marked.indexOf("|"));
  if (call) expect(code.slice(call.at, call.at + call.name.length)).toBe(call.name);
  return `${word ?? "-"} in ${call?.name ?? "-"}`;
}

it.each([
  ["bake({ |", "- in bake"],
  ["bake({ pan: |", "- in bake"],
  ["bake(|", "- in bake"],
  ["bake(|)", "- in bake"],
  ["bake({ pa|n })", "pan in bake"],
  ["bake(cut(|", "- in cut"],
  ["bake(cut(1), |)", "- in bake"],
  ["oven.bake(1, |", "- in bake"],
  ["ba|ke(1)", "bake in -"],
  ["bake(1)|", "- in -"],
  ["bake(1); |", "- in -"],
  ["bake(1)\n\nrest|", "rest in -"],
  ["const a = { b: [bake({ pan, \n  air| ", "air in bake"],
  ["bake<Pan>(|", "- in bake"],
  ["(1 + |", "- in -"],
  ["|", "- in -"],
])("%s", (marked, due) => {
  expect(around(marked)).toBe(due);
});
