import { batchDay } from "slabwright/advice";
import { loadKitchen } from "slabwright/notebook";
import { coolingFigure, dayLimitsTable, dayNote } from "slabwright/views";
import { describe, expect, test } from "vitest";
import { dayLimits } from "../../../../kernel-lib/library/src/advice/day/day-limits";

const kitchen = loadKitchen();
const plan = batchDay({ kitchen, batches: [{ variantId: "turkey-sage" }, { variantId: "corn-puff" }], tries: 40 });

describe("dayLimits", () => {
  test("out of the cold is the sum of the plan's own steps", () => {
    const [turkey] = plan.limits;
    const of = (kind: string) => plan.steps.filter((step) => step.variantId === "turkey-sage" && step.kind === kind);
    const [mix] = of("mix");
    const [spread] = of("spread");
    const [freeze] = of("freeze");
    const [cut] = of("cut");
    const coatMin = Math.max(...of("cook").map((step) => step.coatMin));
    const least =
      mix.endMin - mix.startMin + (freeze.startMin - spread.startMin) + (cut.endMin - cut.startMin) + coatMin;
    expect(turkey.pieces.minutes?.[0]).toBe(least);
    const loads = of("cook");
    const wash =
      Math.max(...loads.map((step) => step.startMin + step.coatMin)) - Math.min(...loads.map((step) => step.startMin));
    expect(turkey.wash?.minutes).toEqual([wash, wash]);
  });

  test("a batter has no slab to cool, and what has no wash has none to watch", () => {
    const puff = plan.limits.find(({ variantId }) => variantId === "corn-puff");
    expect(puff?.ambient).toBeNull();
    expect(puff?.wash).toBeNull();
    expect(puff?.cooked?.verdict).toBe("passes");
  });

  test("a load that lies out too long fails, and the page says so first", () => {
    const late = plan.steps.map((step) =>
      step.kind === "freeze pieces" && step.variantId === "turkey-sage"
        ? { ...step, startMin: step.startMin + 240, endMin: step.endMin + 240 }
        : step,
    );
    const limits = dayLimits(late, plan.curves);
    expect(limits[0].cooked?.verdict).toBe("fails");
    const note = dayNote({ ...plan, limits });
    expect(note.mark).toBe("does not fit");
    expect(JSON.stringify(note.parts[1])).toMatch(/Not cooled in time.*Throw it away/);
    expect(dayLimitsTable({ limits }).rows.flat()).toContain("fails");
  });

  test("a slab that waits on its pan for hours fails the 4 h of warm ingredients", () => {
    const late = plan.steps.map((step) =>
      step.kind === "freeze" ? { ...step, startMin: step.startMin + 240, endMin: step.endMin + 240 } : step,
    );
    const [turkey] = dayLimits(late, plan.curves);
    expect(turkey.ambient?.verdict).toBe("fails");
    expect(turkey.pieces.verdict).toBe("fails");
  });

  test("the figure shows cores that fall, with the marks of the limits, in the kitchen's units", () => {
    const { data, layout, summary } = coolingFigure({ ...plan, units: "us" });
    const lines = data as readonly { mode: string; y: readonly number[]; x: readonly number[] }[];
    const [cooked] = lines;
    expect(cooked.y[0]).toBeGreaterThan(135);
    expect(cooked.y[cooked.y.length - 1]).toBeLessThan(41);
    for (const [at, min] of cooked.x.entries()) if (at > 0) expect(min).toBeGreaterThan(cooked.x[at - 1]);
    expect(JSON.stringify(layout)).toContain("core (°F)");
    expect(lines.find(({ mode }) => mode === "markers")?.x).toEqual([120, 360]);
    expect(summary).toMatch(/turkey and sage sticks: Cooled in time/);
  });
});
