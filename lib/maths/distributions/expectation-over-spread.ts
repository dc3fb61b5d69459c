import { gammaPrefix } from './gamma-prefix';
import { integral } from './integral';

/**
 * Expectation of g(s) where s^2 is chi-square over its degrees of freedom nu: the spread of a sample
 * whose population has sigma 1.
 *
 * The density of s is (2/s) x^a e^-x / Gamma(a) with a = nu/2, x = a s^2. Integrated over fourteen
 * standard deviations about 1, in panels. g must be bounded and smooth.
 */
export function expectationOverSpread(g: (s: number) => number, degrees: number): number {
  const a = degrees / 2;
  const reach = 14 / Math.sqrt(2 * degrees);
  const low = Math.max(0, 1 - reach);
  const high = 1 + reach;
  const curve = (s: number) => (s <= 0 ? 0 : (2 / s) * gammaPrefix(a, a * s * s) * g(s));
  const panels = 8;
  const width = (high - low) / panels;
  let sum = 0;
  for (let i = 0; i < panels; i += 1) {
    sum += integral(curve, low + i * width, low + (i + 1) * width, 1e-13);
  }
  return sum;
}
