import { expect, test } from "vitest";
import { radiationCoefficient } from "../../../../kernel-lib/library/src/heat/coefficient/radiation-coefficient";

test("nothing from a perfect mirror, an impossible emissivity is refused", () => {
  expect(radiationCoefficient({ wallC: 200, surfaceC: 20, emissivity: 0 })).toBe(0);
  expect(() => radiationCoefficient({ wallC: 200, surfaceC: 20, emissivity: 1.2 })).toThrow(
    "emissivity must be between 0 and 1, got 1.2",
  );
});
