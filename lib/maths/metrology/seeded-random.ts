import { MathsInputError } from '../check';

/** Gives the next number of a sequence, above 0 and below 1. */
export type Random = () => number;

/**
 * A repeatable sequence of rectangular random numbers: the same seed, the same sequence, anywhere.
 *
 * xoshiro128** with its 128 bits filled from the seed by splitmix; two of its 32-bit words make the
 * 53 bits of a double, never 0 and never 1. Period 2^128 - 1. Not for secrets.
 * Cost: O(1) a number. Source: [blackman-vigna-2021].
 *
 * @throws {MathsInputError} `seeded-random/seed`
 *
 * @example
 * const next = seededRandom(1);
 * next(); // always the same number
 */
export function seededRandom(seed: number): Random {
  if (!(Number.isInteger(seed) && seed >= 0 && seed <= 0xffffffff)) {
    throw new MathsInputError(
      'seeded-random/seed',
      `seededRandom requires a whole seed from 0 to 4294967295, got ${seed}`,
    );
  }
  const state = filled(seed);
  const ready = new Float64Array(256);
  let at = ready.length;
  return () => {
    if (at === ready.length) {
      refill(ready, state);
      at = 0;
    }
    const next = ready[at]!;
    at += 1;
    return next;
  };
}

/** Four words from a seed by splitmix; never all zero. */
function filled(seed: number): Int32Array {
  const state = new Int32Array(4);
  for (let i = 0; i < 4; i += 1) {
    let z = (seed + Math.imul(0x9e3779b9, i + 1)) | 0;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    state[i] = z ^ (z >>> 16);
  }
  return state;
}

/** The next numbers of the sequence, many at a time: the state then stays out of memory. */
function refill(into: Float64Array, state: Int32Array): void {
  let [a, b, c, d] = [state[0]!, state[1]!, state[2]!, state[3]!];
  let high = 0;
  for (let k = 0; k < 2 * into.length; k += 1) {
    const mixed = Math.imul(b, 5);
    const word = Math.imul((mixed << 7) | (mixed >>> 25), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = (d << 11) | (d >>> 21);
    if ((k & 1) === 0) high = word >>> 6;
    else into[k >> 1] = (high * 67108864 + (word >>> 6) + 0.5) / 4503599627370496;
  }
  state.set([a, b, c, d]);
}
