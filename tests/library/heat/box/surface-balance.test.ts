import fc from "fast-check";
import { expect, test } from "vitest";
import { surfaceBalance } from "../../../../kernel-lib/library/src/heat/box/surface-balance";
import { wetSurface } from "../../../../kernel-lib/library/src/heat/coefficient/wet-surface";

const constants = { evaporationC: 100, crustWmK: 0.12, vapourPa: 1200, convectionShare: 1, crustVapourKgMs: 5e-6 };
const emptyFlow = () => ({ heatIn: 0, heatToCore: 0, frontC: 0, vapour: 0, guessC: 0 });

test("heat in is heat on into the core and heat of the vapour, under every law", () => {
  fc.assert(
    fc.property(
      fc.constantFrom("none", "boiling-surface", "receding-front", "wet-front"),
      fc.double({ min: 30, max: 260, noNaN: true }),
      fc.double({ min: 5, max: 150, noNaN: true }),
      fc.double({ min: 0, max: 2e-3, noNaN: true }),
      fc.double({ min: 200, max: 5000, noNaN: true }),
      fc.double({ min: -30, max: 100, noNaN: true }),
      (law, airC, coefficient, crustM, conductance, cellC) => {
        const flow = emptyFlow();
        surfaceBalance(flow, { ...constants, law: law as "none" }, airC, coefficient, crustM, conductance, cellC);
        expect(flow.vapour).toBeGreaterThanOrEqual(0);
        const carried = flow.heatIn - flow.heatToCore;
        // 2.25 to 2.5 MJ/kg
        if (flow.vapour > 1e-9) expect(carried / flow.vapour).toBeGreaterThan(2.2e6);
        if (flow.vapour > 1e-9) expect(carried / flow.vapour).toBeLessThan(2.6e6);
        else expect(Math.abs(carried)).toBeLessThan(1e-2);
        if (law !== "none" && cellC < 100) expect(flow.frontC).toBeLessThanOrEqual(100 + 1e-9);
      },
    ),
  );
});

test("a wet face that passes no heat on sits at its wet-bulb", () => {
  const flow = emptyFlow();
  surfaceBalance(flow, { ...constants, law: "wet-front" }, 204, 40, 0, 1e-6, 20);
  expect(flow.frontC).toBeCloseTo(wetSurface({ airC: 204 }).surfaceC, 3);
});

test("a wet face that is nearly boiling boils, rather than drying no more", () => {
  const flow = emptyFlow();
  surfaceBalance(flow, { ...constants, law: "wet-front" }, 200, 40, 0, 200, 99.95);
  expect(flow.frontC).toBe(100);
  expect(flow.vapour).toBeCloseTo((40 * 100 - 200 * 0.05) / 2.257e6, 9);
});

test("an insulated face passes nothing", () => {
  const flow = emptyFlow();
  surfaceBalance(flow, { ...constants, law: "receding-front" }, 204, 0, 0, 1000, 20);
  expect(flow).toMatchObject({ heatIn: 0, heatToCore: 0, vapour: 0, frontC: 20 });
});
