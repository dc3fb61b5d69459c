import { deviance } from './deviance';
import { stirlingError } from './stirling-error';

/**
 * x^a y^b / B(a, b) with y = 1 - x given beside x, all above zero: the saddle-point form
 * sqrt(ab/(2 pi n)) exp(delta(n) - delta(a) - delta(b) - D(a, nx) - D(b, ny)), n = a + b.
 *
 * Source: [loader-2000].
 */
export function betaPrefix(a: number, b: number, x: number, y: number): number {
  const n = a + b;
  const exponent =
    stirlingError(n) -
    stirlingError(a) -
    stirlingError(b) -
    deviance(a, n * x) -
    deviance(b, n * y);
  return Math.sqrt((a / n) * (b / (2 * Math.PI))) * Math.exp(exponent);
}
