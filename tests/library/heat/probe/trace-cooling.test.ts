import { readProbeTrace, traceCooling } from "slabwright/heat";
import { describe, expect, test } from "vitest";

const of = (text: string, from?: "cooked" | "ambient") =>
  traceCooling(readProbeTrace(text, { file: "monday.csv" }), from);

describe("traceCooling", () => {
  test("the warmest piece counts, and the air does not", () => {
    const fast = "time_min,core_c,air_c\n0,62,2\n30,40,90\n80,20,2\n200,4,2\n";
    expect(of(fast).verdict).toBe("passes");
    const two = "time_min,thin_c,thick_c\n0,62,66\n30,40,60\n80,20,45\n230,4,24\n";
    expect(of(two).verdict).toBe("fails");
  });

  test("in °F and in seconds it is the same food", () => {
    expect(of("time_s,core_f\n0,143.6\n1800,104\n4800,68\n12000,39.2\n").verdict).toBe("passes");
  });

  test("a log that ends too soon does not tell, and one of air alone is refused", () => {
    expect(of("time_min,core_c\n0,62\n30,40\n").verdict).toBe("not enough data");
    expect(of("time_min,core_c\n0,20\n60,12\n200,4\n", "ambient").verdict).toBe("passes");
    expect(() => of("time_min,freezer_c\n0,-18\n30,-17\n")).toThrow(
      /must have a channel of the food, such as core_c, got "freezer"/,
    );
  });
});
