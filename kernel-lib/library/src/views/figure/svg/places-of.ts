import type { Place, Trace } from "./trace";

/** Every place that a scale must hold: points, ends of error bars, both ends of bars. */
export function placesOf(traces: readonly Trace[], axis: "x" | "y"): Place[] {
  const places: Place[] = [];
  for (const trace of traces) {
    const own = trace[axis] ?? (trace.z ? indices(axis === "x" ? (trace.z[0]?.length ?? 0) : trace.z.length) : []);
    const bars = axis === "x" ? trace.error_x : trace.error_y;
    const isLength =
      (trace.type === "bar" && (trace.orientation === "h") === (axis === "x")) || trace.type === "waterfall";
    let level = 0;
    for (const [at, place] of own.entries()) {
      if (typeof place !== "number") {
        places.push(place);
        continue;
      }
      const base =
        !isLength || trace.base === undefined ? 0 : typeof trace.base === "number" ? trace.base : (trace.base[at] ?? 0);
      if (trace.type === "waterfall" && axis === "y") {
        level = trace.measure?.[at] === "absolute" ? place : trace.measure?.[at] === "total" ? level : level + place;
        places.push(level);
        continue;
      }
      const up = bars?.array?.[at] ?? 0;
      const down = bars?.symmetric === false ? (bars.arrayminus?.[at] ?? 0) : up;
      if (isLength) places.push(base);
      places.push(base + place + up, base + place - down);
    }
  }
  return places;
}

function indices(count: number): number[] {
  return Array.from({ length: count }, (_, at) => at);
}
