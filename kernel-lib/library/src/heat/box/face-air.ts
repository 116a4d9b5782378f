import { fail, notNegative, within } from "../../check/check";

/** Air at a time; between two points it runs in a straight line, and two points at one time are a jump. */
export interface AirPoint {
  readonly timeMin: number;
  readonly airC: number;
}

/** Air and coefficient of one face over time, in SI; `airC` runs in straight lines between the points. */
export interface FaceAir {
  readonly timeS: readonly number[];
  readonly airC: readonly number[];
  readonly coefficientWm2K: number;
}

/** Checks one face and brings it to SI. */
export function faceAir(
  airC: number | readonly AirPoint[],
  coefficientWm2K: number,
  where: string,
  name: string,
): FaceAir {
  within(
    notNegative(coefficientWm2K, `${where}: coefficient${name}`, "W/(m²·K)"),
    0,
    1e6,
    `${where}: coefficient${name}`,
    "W/(m²·K)",
  );
  const points = typeof airC === "number" ? [{ timeMin: 0, airC }] : airC;
  if (points.length === 0) fail(`${where}: air${name}`, "must hold at least one point", points);
  points.forEach((point, at) => {
    within(point.airC, -200, 450, `${where}: air${name}${points.length > 1 ? `[${at}]` : ""}`, "°C");
    notNegative(point.timeMin, `${where}: air${name}[${at}].timeMin`, "min");
    if (at > 0 && point.timeMin < points[at - 1].timeMin)
      fail(`${where}: air${name}[${at}].timeMin`, "must not be before the point above it", point.timeMin);
  });
  return {
    timeS: points.map((point) => point.timeMin * 60),
    airC: points.map((point) => point.airC),
    coefficientWm2K,
  };
}

/** Air at a time; `within` is a time inside the stretch at hand, which settles what a jump means. */
export function airAt(face: FaceAir, t: number, within: number): number {
  const { timeS, airC } = face;
  if (timeS.length === 1) return airC[0];
  let at = timeS.length - 1;
  while (at >= 0 && timeS[at] > within) at--;
  if (at < 0) return airC[0];
  if (at === timeS.length - 1) return airC[at];
  const share = (t - timeS[at]) / (timeS[at + 1] - timeS[at]);
  return airC[at] + share * (airC[at + 1] - airC[at]);
}

/** Whether both faces meet the same air with the same coefficient at all times. */
export function sameFaces(above: FaceAir, below: FaceAir): boolean {
  return (
    above.coefficientWm2K === below.coefficientWm2K &&
    above.timeS.length === below.timeS.length &&
    above.airC.every((airC, at) => airC === below.airC[at] && above.timeS[at] === below.timeS[at])
  );
}

/** Times at which the surroundings jump or bend [s], with the start and the end of the run. */
export function breakTimes(faces: readonly FaceAir[], flipsS: readonly number[], endS: number): number[] {
  const inner = [...faces.flatMap((face) => face.timeS), ...flipsS].filter((t) => t > 0 && t < endS);
  return [...new Set([0, ...inner, endS])].sort((one, other) => one - other);
}
