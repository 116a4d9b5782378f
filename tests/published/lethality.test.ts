import { describe, expect, it } from "vitest";
import { lethality } from "../../kernel-lib/library/src/safety/lethality";
import { comparison } from "./comparison";
import reference from "./lethality/reference.json";

const closedForm = comparison({
  page: "safe-core-and-lethality",
  what: "equivalent minutes of `lethality` over ramps, holds and traces of several lines",
  against: "the integral in closed form, evaluated apart from the library",
  source: "Bigelow W.D. (1921), Journal of Infectious Diseases 29:528-536",
});

describe("lethality against the integral in closed form", () => {
  it.each(reference.cases)("$name", ({ timesMin, temperaturesC, equivalentMin }) => {
    const found = lethality({ timesMin, temperaturesC, referenceC: reference.referenceC, zK: reference.zK });
    closedForm.relative(found.equivalentMin, equivalentMin, reference.tolerance);
  });

  it("is nearer than the trapezoid rule at steps of a minute", () => {
    const minutes = Array.from({ length: 16 }, (_, minute) => minute);
    const rates = minutes.map((minute) => 10 ** ((60 + minute - reference.referenceC) / reference.zK));
    const trapezoid = rates.reduce((sum, rate, at) => sum + (at === 0 ? 0 : (rate + rates[at - 1]) / 2), 0);
    expect(trapezoid).toBeCloseTo(reference.trapezoid1Min, 8);
    const ramp = reference.cases.find((each) => each.name.startsWith("ramp"))!;
    const fine = lethality({
      timesMin: minutes,
      temperaturesC: minutes.map((minute) => 60 + minute),
      referenceC: reference.referenceC,
      zK: reference.zK,
    });
    expect(Math.abs(fine.equivalentMin - ramp.equivalentMin)).toBeLessThan(1e-9 * trapezoid);
  });
});
