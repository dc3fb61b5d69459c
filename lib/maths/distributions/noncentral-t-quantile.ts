import { requireChance } from './guards';
import { noncentralTCdf } from './noncentral-t-cdf';
import { noncentralTPdf } from './noncentral-t-pdf';
import { normalQuantile } from './normal-quantile';

/**
 * The value noncentral t stays below with probability p.
 *
 * Newton's step kept inside a bracket; relative error about 1e-11. Cost: about ten evaluations of the
 * distribution, a few milliseconds. Source: [johnson-welch-1940].
 *
 * @throws {MathsInputError} `noncentral-t-quantile/chance`, `noncentral-t-cdf/degrees`,
 *   `noncentral-t-cdf/shift`
 *
 * @example
 * noncentralTQuantile(0.95, 9, 4.0526); // 7.446, 1.281552 sqrt(10) shifted
 */
export function noncentralTQuantile(p: number, degrees: number, shift: number): number {
  requireChance('noncentralTQuantile', 'noncentral-t-quantile', p);
  const cdf = (t: number) => noncentralTCdf(t, degrees, shift);
  const start = shift + normalQuantile(p);
  let [low, high] = [start - 1, start + 1];
  for (let step = 1; cdf(low) > p; step *= 2) low -= step * (1 + Math.abs(shift));
  for (let step = 1; cdf(high) < p; step *= 2) high += step * (1 + Math.abs(shift));
  let t = (low + high) / 2;
  for (let step = 0; step < 100; step += 1) {
    const miss = cdf(t) - p;
    if (miss > 0) high = t;
    else low = t;
    const newton = t - miss / noncentralTPdf(t, degrees, shift);
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    const move = Math.abs(next - t);
    t = next;
    if (move <= 1e-13 * (1 + Math.abs(t))) break;
  }
  return t;
}
