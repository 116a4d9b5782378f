/** Air and coefficient of one face over time, in SI; `airC` runs in straight lines between the points. */
export interface FaceAir {
  readonly timeS: readonly number[];
  readonly airC: readonly number[];
  readonly coefficientWm2K: number;
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
