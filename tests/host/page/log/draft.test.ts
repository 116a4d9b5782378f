/// <reference lib="dom" />
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { freeId, newDraft, pointed, typedCells, withVariant } from "../../../../kernel-lib/host/page/log/draft";
import { trialForm } from "../../../../kernel-lib/library/src/notebook/form/trial-form";

const form = trialForm("data");
const [first, second] = form.variants;
const begun = () => newDraft({ form, variant: first, others: [], initials: ["AB"] });

describe("pointed", () => {
  it("reads a decimal comma, and leaves alone what may be a thousand or is no number", () => {
    expect(["9,1", "-18,5", " 0,375", "1,150", "9.1", "1,2,3", "nine", ""].map(pointed)).toEqual([
      "9.1",
      "-18.5",
      "0.375",
      "1,150",
      "9.1",
      "1,2,3",
      "nine",
      "",
    ]);
  });

  it("changes nothing but a comma, whatever is typed", () => {
    const typed = fc.oneof(fc.string(), fc.stringMatching(/^-?\d{0,5},?\d{0,4}$/));
    const commas = (text: string): string => text.replaceAll(".", ",");
    fc.assert(
      fc.property(typed, (text) => {
        expect(commas(pointed(text))).toBe(commas(text.trim()));
      }),
    );
  });
});

describe("a draft", () => {
  it("begins as its variant, with the next name that no other draft has", () => {
    const one = begun();
    const other = newDraft({ form, variant: first, others: [one], initials: [] });
    expect(typedCells(form, one)).toMatchObject({ ...first.cells, trial: first.nextId });
    expect(other.cells.trial).not.toEqual(one.cells.trial);
    expect(freeId(form, first, [one, other])).not.toBe(other.cells.trial[0]);
  });

  it("says scores with the initials of those who gave one", () => {
    const tasters = [
      { initials: "AB", crisp: "7", brown: "3" },
      { initials: "CD", crisp: "6,5", brown: "" },
      { initials: "EF", crisp: "", brown: "" },
    ];
    expect(typedCells(form, { ...begun(), tasters })).toMatchObject({
      crisp_scores: "AB:7; CD:6.5",
      brown_scores: "AB:3",
    });
    expect(typedCells(form, begun())).not.toHaveProperty("crisp_scores");
  });

  it("takes over another variant's settings where nothing else was typed, and its name unless it was sent", () => {
    const typed = { ...begun(), cells: { ...begun().cells, setpoint_c: ["188"], thickness_mm: ["9", "", "9,5"] } };
    const changed = withVariant(typed, { form, from: first, to: second, others: [] });
    expect(typedCells(form, changed)).toMatchObject({
      variant: second.variantId,
      appliance: second.cells.appliance,
      setpoint_c: "188",
      thickness_mm: "9; 9.5",
      trial: second.nextId,
    });
    const sent = withVariant({ ...typed, wasSent: true }, { form, from: first, to: second, others: [] });
    expect(sent.cells.trial).toEqual([first.nextId]);
  });
});
