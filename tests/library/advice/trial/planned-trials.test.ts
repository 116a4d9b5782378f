import { describe, expect, it } from "vitest";
import { benchSheet } from "../../../../kernel-lib/library/src/advice/trial/bench-sheet";
import { plannedTrials } from "../../../../kernel-lib/library/src/advice/trial/planned-trials";
import { whatNext } from "../../../../kernel-lib/library/src/advice/trial/what-next";
import { loadKitchen } from "../../../../kernel-lib/library/src/notebook/load-kitchen";

const kitchen = loadKitchen();
const variantId = "beet-lentil";

describe("plannedTrials", () => {
  it("plans every load of a first morning, and says which are not to be eaten", () => {
    const next = whatNext({ kitchen: { ...kitchen, trials: [] }, variantId });
    const planned = plannedTrials(next);
    expect(planned).toHaveLength(next.morning?.loads.length as number);
    next.morning?.loads.forEach((load, at) => {
      expect(planned[at].timeMin).toBe(load.takeOutMin);
      expect(/not to be eaten/.test(planned[at].purpose ?? "")).toBe(load.purpose === "early");
    });
    const sheet = benchSheet({ kitchen: { ...kitchen, trials: [] }, trials: planned });
    expect(sheet.rows.at(-1)?.cells.map(({ plan }) => plan)).toEqual(planned.map(({ purpose }) => purpose));
  });

  it("plans the best candidate where there are trials", () => {
    const next = whatNext({ kitchen, variantId });
    const [planned, ...more] = plannedTrials(next);
    expect(more).toEqual([]);
    expect(planned).toMatchObject({
      batchG: next.next?.candidates[0].batchG,
      timeMin: next.next?.candidates[0].timeMin,
    });
    expect(planned.applianceId).toBe("small-basket");
  });
});
