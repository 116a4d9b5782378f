import { fail } from "../../check/check";

/** A stream of random numbers that a seed repeats exactly. */
export interface SeededRandom {
  /** a value in [0, 1), 53 random bits */
  readonly uniform: () => number;
  /** a normal value; mean 0 and sd 1 unless given */
  readonly normal: (mean?: number, sd?: number) => number;
  /** a whole number from 0 up to, not including, `below` */
  readonly integer: (below: number) => number;
}

/**
 * A random generator that the same seed repeats on every machine: Doty-Humphrey's sfc32 (small fast counter, from
 * PractRand; constants from memory), its state filled by splitmix32. Normal draws by Marsaglia's polar method (1964).
 *
 * @param seed any whole number, 0 to 2^32 − 1
 * @example
 * const random = seededRandom(7);
 * random.uniform(); // → 0.454767
 */
export function seededRandom(seed: number): SeededRandom {
  if (!(Number.isInteger(seed) && seed >= 0 && seed <= 0xffffffff)) {
    fail("seededRandom: seed", "must be a whole number from 0 to 4294967295", seed);
  }
  let mixed = seed >>> 0;
  const word = (): number => {
    mixed = (mixed + 0x9e3779b9) >>> 0;
    let z = mixed;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return (z ^ (z >>> 15)) | 0;
  };
  let a = word();
  let b = word();
  let c = word();
  let counter = 1;
  const bits = (): number => {
    const out = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + out;
    c |= 0;
    return out >>> 0;
  };
  for (let skip = 0; skip < 12; skip++) bits();

  const uniform = (): number => ((bits() >>> 5) * 67108864 + (bits() >>> 6)) / 9007199254740992;
  let spare = Number.NaN;
  const standardNormal = (): number => {
    if (!Number.isNaN(spare)) {
      const value = spare;
      spare = Number.NaN;
      return value;
    }
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const square = u * u + v * v;
      if (square > 0 && square < 1) {
        const scale = Math.sqrt((-2 * Math.log(square)) / square);
        spare = v * scale;
        return u * scale;
      }
    }
  };
  return Object.freeze({
    uniform,
    normal: (mean = 0, sd = 1): number => mean + sd * standardNormal(),
    integer: (below: number): number => Math.floor(uniform() * below),
  });
}
