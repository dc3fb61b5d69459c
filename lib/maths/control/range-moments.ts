import { normalCdf } from '../distributions/normal-cdf';
import { requireWhole } from './guards';

export type RangeMoments = {
  /** Mean of the range of n standard normal values. */
  d2: number;
  /** Standard deviation of that range. */
  d3: number;
};

/**
 * Mean and standard deviation of the range of n values from a standard normal population.
 *
 *     P(R <= w) = n integral phi(x) (PHI(x + w) - PHI(x))^(n-1) dx
 *     d2 = E R = integral P(R > w) dw,  E R^2 = 2 integral w P(R > w) dw,  d3^2 = E R^2 - d2^2
 *
 * Both integrals by the trapezoidal rule, which converges geometrically here: x runs over the whole
 * axis, and w = exp(v - exp(-v)) turns the half axis into one too. Good to about 1e-13; printed
 * tables differ in their last digit because they came from three-digit values.
 *
 * Limits: n from 2 to 100; independent normal values. Cost: about a millisecond the first time for
 * each n, then a look-up. Sources: [iso-7870-2], [astm-e2587] for the factors; the definition.
 *
 * @throws {MathsInputError} `range-moments/not-whole`
 *
 * @example
 * rangeMoments(2); // d2 = 2 / sqrt(pi), d3 = sqrt(2 - 4 / pi)
 */
export function rangeMoments(n: number): RangeMoments {
  requireWhole('rangeMoments', 'number of values', n, 2, 100);
  let moments = known.get(n);
  if (moments === undefined) {
    moments = integrate(n);
    known.set(n, moments);
  }
  return { ...moments };
}

const known = new Map<number, RangeMoments>();

/** Steps that are exact in binary; halving either moves the result by less than 3e-13. */
const stepX = 1 / 8;
const stepV = 1 / 16;

function integrate(n: number): RangeMoments {
  let first = 0;
  let second = 0;
  // w from 3e-18 to 15.5; a range of 100 values beyond that has a chance below 1e-20.
  for (let v = -3.75; v <= 2.8125; v += stepV) {
    const shrink = Math.exp(-v);
    const w = Math.exp(v - shrink);
    const weight = stepV * w * (1 + shrink);
    const above = 1 - rangeCdf(n, w);
    first += weight * above;
    second += weight * 2 * w * above;
  }
  return { d2: first, d3: Math.sqrt(second - first * first) };
}

/** P(R <= w), with x the smallest of the n values. */
function rangeCdf(n: number, w: number): number {
  let sum = 0;
  for (let x = -9; x <= 9; x += stepX) {
    sum += Math.exp(-(x * x) / 2) * (normalCdf(x + w) - normalCdf(x)) ** (n - 1);
  }
  return (n * stepX * sum) / Math.sqrt(2 * Math.PI);
}
