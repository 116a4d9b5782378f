import type { DayStepKind } from "../../advice/day/day-problem";
import type { DayStep } from "../../advice/day/day-step";

const WORDS: Readonly<Record<DayStepKind, string>> = {
  mix: "mix",
  spread: "spread",
  freeze: "freeze until it cuts",
  temper: "temper on the counter",
  cut: "cut",
  coat: "coat",
  cook: "cook",
  "freeze pieces": "freeze the pieces through",
  pack: "pack",
};

/** A step in words: `"coat beet bites, pan 2, load 1 of 3"`. */
export function stepText({
  coatMin,
  kind,
  variantName,
  pan,
  part,
}: Pick<DayStep, "coatMin" | "kind" | "variantName" | "pan" | "part">): string {
  const of = pan === null ? "" : `, pan ${pan}`;
  const load =
    part === null ? "" : `, ${kind === "freeze pieces" || kind === "pack" ? "tray" : "load"} ${part[0]} of ${part[1]}`;
  return `${coatMin > 0 ? "coat and cook" : WORDS[kind]}: ${variantName}${of}${load}`;
}
