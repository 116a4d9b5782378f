import { type NumberRules, readNumber } from "../../../units/typed/read-number";
import type { ProgrammeStep } from "../../trial";
import { partsOf } from "./parts-of";

/** A programme as read, or what was expected in its place. */
export type ReadProgramme = { readonly steps: readonly ProgrammeStep[] } | { readonly expected: string };

/** Reads settings one after the other with their minutes: `180x6; 205x4`. */
export function readProgramme(cell: string, rules: NumberRules): ReadProgramme {
  const expected = "settings and minutes such as 180x6; 205x4";
  const steps: ProgrammeStep[] = [];
  for (const part of partsOf(cell, { hasFractions: false, sign: rules.sign })) {
    const match = /^([^x×*@]{1,40})[x×*]([^x×*@]{1,40})$/i.exec(part);
    if (match === null) return { expected };
    const setpoint = readNumber(match[1].trim(), rules);
    const time = readNumber(match[2].trim(), { sign: rules.sign, kind: "time", base: "min", unit: "min" });
    if ("expected" in setpoint || "expected" in time) return { expected };
    steps.push(Object.freeze({ setpointC: setpoint.value, timeMin: time.value }));
  }
  return { steps };
}
